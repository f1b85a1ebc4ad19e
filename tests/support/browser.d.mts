export function findBrowser(): string | undefined;
export function needBrowser(): string;
export function aptInstall(...packages: string[]): boolean;
export const launchArgs: string[];
