export function serve(
  folder: string,
  options?: { port?: number; base?: string },
): Promise<{ url: string; close: () => Promise<void> }>;
export const distFolder: string;
