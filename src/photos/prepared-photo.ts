import type { Photo } from '../core/records.ts';

/** Longer side and JPEG quality of what is kept of every photograph. */
export const WORKING_COPY = { longSidePx: 2048, quality: 0.85 } as const;
export const THUMBNAIL = { longSidePx: 320, quality: 0.8 } as const;

/**
 * Pixels beyond which a file is not even decoded: 60 MP takes 240 MB as RGBA, the most a phone may survive.
 * Source: standards notes D2, from memory.
 */
export const MOST_PIXELS = 60_000_000;
/** Bytes beyond which a file is not read: the most an archive entry may have when it is brought back. */
export const MOST_BYTES = 40 * 1024 * 1024;

/** A JPEG ready to be stored. `ArrayBuffer`, never `Blob`: WebKit loses blobs in its database. */
export interface StoredPicture {
  readonly bytes: ArrayBuffer;
  readonly sha256: string;
  readonly width: number;
  readonly height: number;
}

export interface StoredOriginal {
  readonly bytes: ArrayBuffer;
  readonly sha256: string;
  readonly mime: string;
  readonly name: string;
}

/** What became of the file itself, for a sentence beside the photograph. */
export type OriginalState =
  | 'notAsked'
  /** Byte for byte as the camera or gallery gave it. */
  | 'asDelivered'
  /** Its coded picture, freed of position and everything else about person, place and device. */
  | 'withoutMetadata'
  /** The format cannot be freed of position here, and position is not to be kept. */
  | 'notPossible';

export interface PreparedPhoto extends StoredPicture {
  readonly mime: 'image/jpeg';
  readonly thumbnail: StoredPicture;
  readonly taken: Photo['taken'];
  readonly focal35: number | null;
  readonly position: Photo['position'];
  /** EXIF orientation of the file, already applied to the copies; for looking into faults. */
  readonly orientation: number | null;
  readonly original: StoredOriginal | null;
  readonly originalState: OriginalState;
}

/** Where the work on one photograph is. */
export type PhotoStage = 'waiting' | 'checking' | 'cameraFacts' | 'thumbnail' | 'workingCopy' | 'original';
