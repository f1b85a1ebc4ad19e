/** Hands a file to the platform’s downloads under a name. */
export function saveFile(file: Blob, name: string): void {
  const address = URL.createObjectURL(file);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // Long enough for the slowest phone to begin reading; freed at once, some never begin.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
