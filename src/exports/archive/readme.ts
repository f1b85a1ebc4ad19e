import type { ArchiveIndex } from '../../core/archive-layout.ts';
import { FOLDERS, INDEX_PATH } from '../../core/archive-layout.ts';
import type { CsvTable } from '../csv-maker.ts';

const count = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`;

const SCOPES = {
  shelf: 'everything that was on the shelf',
  blocks: 'the hat blocks that were chosen',
  sale: 'one sale and the hat blocks seen there',
} as const;

/**
 * What everything in a volume is, for somebody who has never heard of the app: no word here needs it.
 * @param tables those in the archive
 */
export function readme(index: ArchiveIndex, tables: readonly Pick<CsvTable, 'name' | 'about'>[]): string {
  const { made, scope, isWhole, volume, volumes, counts, photographs, originals } = index;
  const records = Object.values(counts).reduce((sum, n) => sum + n, 0);
  const parts =
    volumes === 1
      ? 'This folder is the whole of it.'
      : `This folder is volume ${volume} of ${volumes}. Each can be read alone: all records are in every volume; each\nphotograph is in one of them. Unpacked beside each other, the reports find the pictures of the other volumes.`;
  return `HAT BLOCKS: RECORDS AND PHOTOGRAPHS

Hat blocks are the wooden, and sometimes metal or woven, forms that hats are made on. This folder holds
${SCOPES[scope.kind]}: what was seen of them, measured, photographed and done to them.
Written on ${made.slice(0, 10)} at ${made.slice(11, 16)} UTC by Blockworth, a program that ran on the owner's own phone.

${count(counts.block ?? 0, 'hat block')}, ${count(records, 'record')}, ${count(photographs.length, 'photograph')}${originals.length > 0 ? `, ${count(originals.length, 'camera file')}` : ''}.
${parts}
${
  isWhole
    ? 'It holds everything, private names, places and prices too. Do not hand it on without looking through it.'
    : 'It was made to be handed on: private names and places, prices and camera files were left out.'
}

HOW TO READ IT
Nothing but common programs is needed.
  ${FOLDERS.reports}     One page for each hat block. Start here: open index.html with any web browser.
  ${FOLDERS.photographs} The photographs (JPEG). The name of each is the SHA-256 sum of its bytes, so anyone can
                    check that it was never changed. Nothing is drawn into them.
  ${FOLDERS.originals}   Files as they came from the camera, where the owner kept them.
  ${FOLDERS.tables}      The same facts as tables (CSV, RFC 4180, UTF-8) for any spreadsheet:
${tables.map(({ name, about }) => `                      ${name}.csv: ${about}`).join('\n')}
                    Text that a spreadsheet might run as a formula has an apostrophe put before it.
                    In no table, only among the records: how photographs before and after were lined up, what was
                    last written to a calendar, the owner's settings.
  ${FOLDERS.marks}       What was drawn over each photograph: W3C Web Annotations (JSON-LD).
  ${FOLDERS.objects}     Each hat block for museum systems: Linked Art (JSON-LD, CIDOC CRM).
  ${FOLDERS.records}     The records themselves (JSON), from which all the rest was made, one record a line.
                    Places in a photograph are shares of its width and height, from the upper left corner.
                    Lengths are millimetres, money is in the smallest unit of its currency, times are UTC.
                    "stamps" says when each field was last written: 12 hexadecimal digits of milliseconds since
                    1 January 1970, 4 of a counter, and the device. A record with "deleted" was removed.
  ${INDEX_PATH}  What is in this archive and which volume holds what (JSON).

HOW TO CHECK IT
The folder is a BagIt bag, version 1.0 (RFC 8493). In it, "sha256sum -c manifest-sha256.txt" or any BagIt program
says whether every file is as it was written.

TO BRING IT BACK
Blockworth reads the packed volumes, in any order, as often as you like. It never overwrites what is newer.
`;
}
