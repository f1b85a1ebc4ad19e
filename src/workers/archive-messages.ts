/** One file of a volume: where it goes inside the bag, and what is in it. */
export interface VolumeFile {
  /** With `/`: `data/records/block-001.json`. */
  readonly path: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** What a volume says of itself. */
export interface VolumeHeading {
  /** Of the file, with its ending; the folder in it is the same without. */
  readonly name: string;
  readonly folder: string;
  /** RFC 3339, UTC; every file in the volume bears this time, so that equal contents give equal bytes. */
  readonly made: string;
  /** Of `bag-info.txt`, but for what is only known at the end: `Payload-Oxum` and `Bag-Size`. */
  readonly info: readonly (readonly [label: string, value: string])[];
  readonly readme: string;
}

/**
 * Where a volume is written: the browser's private files, a file the person picked, or memory. Private files live under
 * this name until they are sent or made anew.
 */
export type Destination =
  | { readonly to: 'private' }
  | { readonly to: 'picked'; readonly handle: FileSystemFileHandle }
  | { readonly to: 'memory' };

export interface VolumeOrder {
  readonly heading: VolumeHeading;
  readonly destination: Destination;
  /** Encrypts the whole volume; null leaves it open. */
  readonly passphrase: string | null;
}

/** Bytes written, and the file where it can be had: a picked one is already where it belongs. */
export interface Written {
  readonly bytes: number;
  readonly file: File | null;
}

/** What stood in the way, as far as it can cross to the page. */
export type Failure = 'full' | 'other';

export type ToArchiveWorker =
  | { readonly what: 'begin'; readonly order: VolumeOrder }
  | { readonly what: 'file'; readonly file: VolumeFile }
  | { readonly what: 'end' }
  | { readonly what: 'stop' };

export type FromArchiveWorker =
  /** The next file may be sent. */
  | { readonly what: 'more' }
  | { readonly what: 'written'; readonly written: Written }
  | { readonly what: 'stopped' }
  | { readonly what: 'failed'; readonly failure: Failure; readonly reason: string };
