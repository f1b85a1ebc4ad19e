type Picker = (options: { readonly suggestedName: string }) => Promise<FileSystemFileHandle>;

const picker = (): Picker | undefined =>
  (globalThis as { readonly showSaveFilePicker?: Picker }).showSaveFilePicker?.bind(globalThis);

/** Whether the browser lets a person pick a file to be written into. No iPhone does. */
export const canPickFile = (): boolean => picker() !== undefined;

/** Opens the picker; must be called from a fresh tap. Null when the person closed it. */
export async function pickFile(name: string): Promise<FileSystemFileHandle | null> {
  try {
    return (await picker()?.({ suggestedName: name })) ?? null;
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return null;
    throw error;
  }
}
