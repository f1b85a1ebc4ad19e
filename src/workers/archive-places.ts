import type { Destination, Written } from './archive-messages.ts';

/** A file being written. Nothing is left of it unless it is closed. */
export interface OpenFile {
  write(chunk: Uint8Array<ArrayBuffer>): Promise<void> | void;
  close(): Promise<Written>;
  abort(): Promise<void>;
}

/** Opens an empty file; what lay there under its name is gone. */
export type OpenPlace = (name: string) => Promise<OpenFile>;

/** Folder of the browser's private files that finished volumes lie in until they are sent. */
export const PRIVATE_FOLDER = 'archives';

export async function privateFolder(): Promise<FileSystemDirectoryHandle> {
  const root = await navigator.storage.getDirectory();
  return root.getDirectoryHandle(PRIVATE_FOLDER, { create: true });
}

/** Takes a private file away, if it is there; one still held by a worker being ended is tried again for a moment. */
export async function removePrivate(name: string): Promise<void> {
  const folder = await privateFolder();
  for (let tries = 0; tries < 10; tries++) {
    try {
      await folder.removeEntry(name);
      return;
    } catch (error) {
      if (error instanceof DOMException && error.name === 'NotFoundError') return;
      await new Promise((resolve) => setTimeout(resolve, 20));
    }
  }
}

const typeOf = (name: string): string => (name.endsWith('.zip') ? 'application/zip' : 'application/octet-stream');

/** Handed back under its name and type: a private file has none, and share sheets go by them. */
const named = (file: Blob, name: string): File => new File([file], name, { type: typeOf(name) });

type SyncCapable = FileSystemFileHandle & {
  createSyncAccessHandle?: () => Promise<{
    truncate(size: number): void;
    write(data: Uint8Array<ArrayBuffer>): number;
    flush(): void;
    close(): void;
  }>;
};

/** The browser's private files. In a worker by a direct handle, which iPhones have had longest; else by a stream. */
const openPrivate: OpenPlace = async (name) => {
  const folder = await privateFolder();
  const handle: SyncCapable = await folder.getFileHandle(name, { create: true });
  const gone = () => folder.removeEntry(name).catch(() => undefined);
  const finished = async (bytes: number): Promise<Written> => ({ bytes, file: named(await handle.getFile(), name) });
  let bytes = 0;
  // Only dedicated workers may: on the page the method is there in some browsers and refuses.
  const direct = typeof document === 'undefined' ? await handle.createSyncAccessHandle?.() : undefined;
  if (direct) {
    direct.truncate(0);
    return {
      write(chunk) {
        const written = direct.write(chunk);
        if (written < chunk.length) throw new DOMException('Not all was written.', 'QuotaExceededError');
        bytes += written;
      },
      async close() {
        direct.flush();
        direct.close();
        return finished(bytes);
      },
      async abort() {
        direct.close();
        await gone();
      },
    };
  }
  return streamed(handle, finished, gone);
};

async function streamed(
  handle: FileSystemFileHandle,
  finished: (bytes: number) => Promise<Written>,
  gone: () => Promise<unknown>,
): Promise<OpenFile> {
  const stream = await handle.createWritable();
  let bytes = 0;
  return {
    async write(chunk) {
      await stream.write(chunk);
      bytes += chunk.length;
    },
    async close() {
      await stream.close();
      return finished(bytes);
    },
    async abort() {
      await stream.abort().catch(() => undefined);
      await gone();
    },
  };
}

/** A file the person picked: written beside it and put in its place at the end. */
const openPicked =
  (handle: FileSystemFileHandle & { remove?: () => Promise<void> }): OpenPlace =>
  () =>
    streamed(
      handle,
      async (bytes) => ({ bytes, file: null }),
      // Picking made an empty file.
      async () => ((await handle.getFile()).size === 0 ? handle.remove?.().catch(() => undefined) : undefined),
    );

/** Bytes that are gathered before they become a Blob, which the browser may keep on disk. */
const PIECE = 4 * 1024 * 1024;

/** Where nothing may be stored: kept as a Blob, in pieces so that the script's own memory stays small. */
export const openMemory: OpenPlace = async (name) => {
  let pieces: Blob[] = [];
  let loose: Uint8Array<ArrayBuffer>[] = [];
  let size = 0;
  let bytes = 0;
  const gather = (): void => {
    pieces.push(new Blob(loose));
    loose = [];
    size = 0;
  };
  return {
    write(chunk) {
      loose.push(chunk);
      size += chunk.length;
      bytes += chunk.length;
      if (size >= PIECE) gather();
    },
    async close() {
      gather();
      return { bytes, file: named(new Blob(pieces), name) };
    },
    async abort() {
      pieces = [];
      loose = [];
    },
  };
};

export function placeFor(destination: Destination): OpenPlace {
  if (destination.to === 'private') return openPrivate;
  return destination.to === 'picked' ? openPicked(destination.handle) : openMemory;
}
