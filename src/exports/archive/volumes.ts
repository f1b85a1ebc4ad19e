import { MOST_VOLUME_BYTES } from '../../core/archive-layout.ts';

/** A file that is to go into a volume: its path in the bag and its bytes. */
export interface Sized {
  readonly path: string;
  readonly bytes: number;
}

export interface VolumePlan<File extends Sized> {
  /** Files of each volume, shared ones first. */
  readonly volumes: readonly (readonly File[])[];
}

/** Length of the longest folder name a volume has. */
const FOLDER = 48;
/** Tag files but for the lines of the manifests, their own places in the ZIP file, and the index's own growth. */
const FIXED = 40_000;
/** Shared files are repeated in every volume while they are no more than this; else they are spread like the rest. */
const MOST_SHARED = MOST_VOLUME_BYTES / 5;
/** What encryption adds: 16 bytes to 64 kB, and a header. */
const ENCRYPTED = 1 + 16 / 65_536;

/** What a file takes of a volume: its bytes, two headers and a descriptor in the ZIP, a line in two manifests. */
const costOf = ({ path, bytes }: Sized): number => {
  const name = FOLDER + 1 + path.length;
  return bytes + 30 + name + 16 + 46 + name + (64 + 3 + path.length) + (128 + 3 + path.length);
};
const sum = (files: readonly Sized[]): number => files.reduce((total, file) => total + costOf(file), 0);

/**
 * Spreads files over volumes. Groups stay together where they fit: the files of one block are found in one folder. A
 * file larger than a volume gets one of its own.
 * @param shared what is wanted in every volume
 * @param groups in the order they are to come
 */
export function intoVolumes<File extends Sized>(
  shared: readonly File[],
  groups: readonly (readonly File[])[],
  most: number = MOST_VOLUME_BYTES,
): VolumePlan<File> {
  const room = most / ENCRYPTED - FIXED;
  const repeats = sum(shared) <= Math.min(MOST_SHARED, most / 5);
  const capacity = repeats ? room - sum(shared) : room;
  const volumes: File[][] = [];
  let left = 0;
  const put = (files: readonly File[], size: number): void => {
    const last = volumes.at(-1);
    if (last && size <= left) last.push(...files);
    else {
      volumes.push([...files]);
      left = capacity;
    }
    left -= size;
  };
  for (const group of repeats ? groups : [shared, ...groups]) {
    const size = sum(group);
    if (size <= capacity) {
      if (group.length > 0) put(group, size);
    } else for (const file of group) put([file], costOf(file));
  }
  if (volumes.length === 0) volumes.push([]);
  return { volumes: volumes.map((files) => (repeats ? [...shared, ...files] : files)) };
}
