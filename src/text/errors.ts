import { AppError, type ErrorCode } from '../core/errors.ts';

/** Code → sentence. Each says what happened in the owner's words and what to do next; a code without one does not compile. */
export const ERROR_SENTENCES = {
  'storage-full':
    'There is no room left for this. Free some space on this phone, or back up and remove photographs, then tap Try again. What you entered is still here as long as this page stays open.',
  'quota-low':
    'Storage is nearly full, so camera originals are no longer kept; smaller working copies still are. Make a backup, then free some space on this phone.',
  'not-saved':
    'Not saved. Keep this page open and tap Try again; if that does not help, make a backup from here before you close it.',
  'close-other-windows':
    'Blockworth is open in another window that is holding its storage. Close the other windows; this one then carries on by itself.',
  'reload-needed': 'A newer Blockworth is running in another window. Reload this page before you go on.',
  'storage-was-cleared':
    'There were records on this phone, and they are gone: its storage was cleared. Restore your last backup, or start with an empty shelf.',
  'storage-unavailable':
    'This window cannot keep anything, which is usual in private browsing. Open Blockworth in an ordinary window of a current browser.',
  'record-too-new':
    'Some records were written by a newer Blockworth and are kept as they are. Update the app to see them; until then you can export them unread.',
  'record-unreadable':
    'Some records cannot be read and are kept as they are. Export them unread, then restore a backup that has them.',
  'clock-ahead':
    'These records carry dates from the future, so the clock of this phone or of the other one is wrong. Set both clocks and try again; nothing was changed.',
  'photo-damaged':
    'This photograph no longer matches what was saved, so it is not shown. Nothing was deleted: restore it from a backup, or photograph again.',
  'photo-empty': 'The camera handed over an empty file. Take the photograph again.',
  'photo-not-an-image': 'This file is not a photograph Blockworth can read. Choose a JPEG or PNG.',
  'photo-heic':
    'This photograph is in the HEIC format, which this browser cannot open. Set the camera to “most compatible” or choose a JPEG.',
  'photo-too-large': 'This photograph has too many pixels to open on this phone. Choose a smaller size in the camera.',
  'photo-timeout':
    'This photograph took too long to open and was given up. Close other apps and try again, or choose a smaller one.',
  'export-failed': 'The file could not be made. Nothing was changed; free some space and try again.',
  'schedule-too-long':
    'All this work would take more than a hundred years. Set more hours or evenings for the bench, or look for an amount in the plans that cannot be right.',
  'schedule-failed':
    'The schedule could not be worked out; the plan of each block stands. Reload this page to try again.',
} as const satisfies Record<ErrorCode, string>;

/** The sentence for whatever was thrown. A fault of ours has one too, without pretending to know what broke. */
export function sentenceOf(error: unknown): string {
  if (error instanceof AppError) return ERROR_SENTENCES[error.code];
  return 'Something in Blockworth itself went wrong. What was saved is safe: reload this page, and make a backup if it happens again.';
}
