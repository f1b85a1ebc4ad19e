import { AppError } from '../core/errors.ts';

/** Whether the platform's share sheet takes this file. */
export const canSend = (file: File): boolean =>
  typeof navigator.canShare === 'function' && navigator.canShare({ files: [file] });

/**
 * Opens the share sheet; must be called from a fresh tap. False when the person closed it.
 * @throws AppError export-failed when the platform refuses
 */
export async function sendFile(file: File): Promise<boolean> {
  try {
    await navigator.share({ files: [file], title: file.name });
    return true;
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return false;
    throw new AppError('export-failed', { cause: error });
  }
}

/** Hands a file to the browser's downloads. The address is freed when the browser has surely begun. */
export function saveFile(file: File): void {
  const url = URL.createObjectURL(file);
  const link = document.createElement('a');
  link.href = url;
  link.download = file.name;
  link.hidden = true;
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}
