/** Whether the program is on the path. */
export function hasTool(program: string): boolean;
/** True in CI, where a missing tool fails a test instead of skipping it. */
export const toolsRequired: boolean;
