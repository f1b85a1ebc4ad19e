import { AppError, type ErrorCode } from '../core/errors.ts';

/** How the refusal of an archive ends. */
const REFUSED = 'Nothing of it was taken in: choose another copy, or make a new one on the phone it came from.';

/** Code → sentence. Each says what happened in the owner's words and what to do next, `{fact}` filled from
 * the error; a code without one does not compile. */
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
  'send-refused': 'The phone did not take this file to send. Save it instead, and send it from where it was saved.',
  'archive-not-ours': 'This is no Blockworth archive. Choose a file that Blockworth made; it ends in .zip or .zip.age.',
  'archive-too-new':
    'This archive was made by a newer Blockworth. Update the app, then take it in; nothing was changed.',
  'archive-cut-off':
    'This archive is cut off or damaged, so it was not opened. Fetch or copy it again and choose that.',
  'archive-strange-name': `In this archive “{entry}” has a name no Blockworth archive has. ${REFUSED}`,
  'archive-doubled': `In this archive “{entry}” stands twice, so nobody can say which counts. ${REFUSED}`,
  'archive-two-readings': `This archive can be read in two ways, as no Blockworth archive can. ${REFUSED}`,
  'archive-link': `In this archive “{entry}” is no file but a pointer to another place. ${REFUSED}`,
  'archive-overlap': `In this archive “{entry}” lies over another file. ${REFUSED}`,
  'archive-unknown-way': `In this archive “{entry}” is locked or packed in a way Blockworth does not use. ${REFUSED}`,
  'archive-wrong-size': `In this archive “{entry}” is not as long as the archive says. ${REFUSED}`,
  'archive-too-large': `In this archive “{entry}” would unpack to more than a phone should hold. ${REFUSED}`,
  'archive-too-many': `This archive holds more files than any Blockworth archive. ${REFUSED}`,
  'archive-incomplete': `This archive lacks “{entry}”. ${REFUSED}`,
  'archive-damaged': `In this archive “{entry}” is not what was put in: it was damaged or changed. ${REFUSED}`,
  'archive-bad-text': `In this archive “{entry}” cannot be read as what it should be. ${REFUSED}`,
  'archive-bad-picture': `In this archive “{entry}” is no whole photograph. ${REFUSED}`,
  'archive-picture-too-large': `In this archive “{entry}” has more pixels than a phone can open. ${REFUSED}`,
  'archive-mixed': 'These files are not of one archive. Choose the volumes of one, or one file.',
  'archive-passphrase': 'This passphrase does not open the archive. Try again; nothing was changed.',
  'archive-no-room':
    'There is no room on this device for the photographs in it. Nothing of it was taken in: free some space and choose the file again, or take in chosen blocks only.',
  'archive-passphrase-work':
    'Opening this archive would take more memory than a phone has. Open it with an age tool elsewhere and choose the .zip from it.',
  'schedule-too-long':
    'All this work would take more than a hundred years. Set more hours or evenings for the bench, or look for an amount in the plans that cannot be right.',
  'schedule-failed':
    'The schedule could not be worked out; the plan of each block stands. Reload this page to try again.',
} as const satisfies Record<ErrorCode, string>;

/** The sentence for whatever was thrown. A fault of ours has one too, without pretending to know what broke. */
export function sentenceOf(error: unknown): string {
  if (error instanceof AppError) {
    return ERROR_SENTENCES[error.code].replace(/\{(\w+)\}/g, (_, fact: string) =>
      String(error.facts[fact] ?? 'A file'),
    );
  }
  return 'Something in Blockworth itself went wrong. What was saved is safe: reload this page, and make a backup if it happens again.';
}
