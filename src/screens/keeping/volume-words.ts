import { list } from '../../text/format.ts';

/** `File 2 of 3`, `Files 2 and 4 of 5`. */
export const filesNamed = (volumes: readonly number[], of: number): string =>
  `${volumes.length === 1 ? 'File' : 'Files'} ${list(volumes.map(String))} of ${of}`;
