import type { ArchiveIndex, ArchiveScope } from '../../core/archive-layout.ts';
import { privateFolder, removePrivate } from '../../workers/archive-places.ts';

export interface KeptVolume {
  readonly volume: number;
  readonly name: string;
  readonly bytes: number;
}

/** What an archive in the making was to be; of its passphrase only whether there is one. */
export interface KeptWish {
  readonly scope: ArchiveScope;
  readonly isWhole: boolean;
  readonly isLocked: boolean;
  /** Written into files the person picked. */
  readonly isPicked: boolean;
}

/** What is known of an archive in the making, so that it goes on where it stopped. */
export interface KeptState {
  readonly wish: KeptWish;
  /** Of its contents: with other contents it is another archive. */
  readonly fingerprint: string;
  /** Of what lies in which volume. */
  readonly layout: string;
  readonly group: string;
  /** RFC 3339, UTC. */
  readonly made: string;
  readonly volumes: number;
  /** Whole, and waiting to be sent. */
  readonly finished: readonly KeptVolume[];
  /** Handed over and taken away. */
  readonly sent: readonly KeptVolume[];
  /** Ended before its last volume for want of room; otherwise it was cut off. */
  readonly isFull: boolean;
  /** Photographs that could not be put into the volumes made so far. */
  readonly missing: ArchiveIndex['missing'];
}

/** Where finished volumes wait, and what is remembered of them. */
export interface Keep {
  /** Whether volumes written by one run of the page are there in the next. */
  readonly lasts: boolean;
  /** Of archives in the making, by group: known as long as the page is open, and never stored. */
  readonly passphrases: Map<string, string | null>;
  read(): Promise<KeptState | null>;
  /** Resolves once it is on the disk: what a phone that drops dead would forget is not known. */
  write(state: KeptState): Promise<void>;
  /** A finished volume; null when it is gone. */
  file(volume: KeptVolume): Promise<File | null>;
  /** Takes in the file of a volume that was written; only memory has to hold it. */
  hold(name: string, file: File): void;
  remove(name: string): Promise<void>;
  /** Takes away every file but those named: what was half done when a page was ended, and what is of no use. */
  tidy(names: readonly string[]): Promise<void>;
  forget(): Promise<void>;
}

/** Where a device keeps lines for itself; the repository is one. */
export interface Notes {
  note(name: string): Promise<string | null>;
  setNote(name: string, text: string | null): Promise<void>;
}

const NOTE = 'archive';

function parsed(text: string | null): KeptState | null {
  try {
    const state = JSON.parse(text ?? 'null') as KeptState | null;
    return state?.wish && Array.isArray(state.finished) && Array.isArray(state.sent) && Array.isArray(state.missing)
      ? state
      : null;
  } catch {
    return null;
  }
}

/** In the browser's private files, what is known of them beside the records: local storage is written seconds late. */
const privateKeep = ({ note, setNote }: Notes): Keep => ({
  lasts: true,
  passphrases: new Map(),
  read: async () => parsed(await note(NOTE)),
  write: (state) => setNote(NOTE, JSON.stringify(state)),
  async file({ name, bytes }) {
    try {
      const handle = await (await privateFolder()).getFileHandle(name);
      const file = await handle.getFile();
      return file.size === bytes ? new File([file], name, { type: 'application/zip' }) : null;
    } catch {
      return null;
    }
  },
  hold: () => undefined,
  remove: removePrivate,
  async tidy(names) {
    const folder = (await privateFolder()) as FileSystemDirectoryHandle & { keys(): AsyncIterable<string> };
    const found: string[] = [];
    for await (const name of folder.keys()) if (!names.includes(name)) found.push(name);
    await Promise.all(found.map(removePrivate));
  },
  forget: () => setNote(NOTE, null),
});

/** For a window that may not store files: one volume at a time, gone with the page. */
export function memoryKeep(): Keep {
  let state: KeptState | null = null;
  const files = new Map<string, File>();
  return {
    lasts: false,
    passphrases: new Map(),
    read: async () => state,
    async write(next) {
      state = next;
    },
    file: async ({ name }) => files.get(name) ?? null,
    hold: (name, file) => void files.set(name, file),
    remove: async (name) => void files.delete(name),
    async tidy(names) {
      for (const name of files.keys()) if (!names.includes(name)) files.delete(name);
    },
    async forget() {
      state = null;
    },
  };
}

let inMemory: Keep | undefined;

/** The best there is on this device. Private windows of some browsers have no private files. */
export async function keepHere(notes: Notes): Promise<Keep> {
  try {
    await privateFolder();
    return privateKeep(notes);
  } catch {
    inMemory ??= memoryKeep();
    return inMemory;
  }
}
