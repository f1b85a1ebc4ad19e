import { AppError } from '../core/errors.ts';
import type { Bytes } from './bytes.ts';
import { type CameraFacts, noFacts, readCameraFacts } from './camera-facts.ts';
import type { Container, Size } from './containers/container.ts';
import { containerOf, mayNotDecode } from './containers/index.ts';
import { keepOriginal } from './original.ts';
import {
  MOST_BYTES,
  MOST_PIXELS,
  type PhotoStage,
  type PreparedPhoto,
  type StoredPicture,
  THUMBNAIL,
  WORKING_COPY,
} from './prepared-photo.ts';
import { firstLook, type Target } from './reduce.ts';
import { sha256 } from './sha256.ts';
import type { MakeSurface } from './surface.ts';

export interface Wishes {
  readonly keepOriginal: boolean;
  readonly keepPosition: boolean;
  /** False on the second try, after reading EXIF took too long. */
  readonly readCameraFacts: boolean;
}

/** What the realm offers: its canvas, and the way a working copy is made there. */
export interface Means {
  readonly makeSurface: MakeSurface;
  readonly workingCopy: (source: Blob, upright: Size, target: Target) => Promise<Blob>;
}

/** Refuses what no decoder should see. */
async function check(file: Blob): Promise<{ bytes: Bytes; container: Container; coded: Size }> {
  if (file.size === 0) throw new AppError('photo-empty');
  const start = new Uint8Array(await file.slice(0, 4096).arrayBuffer());
  const container = containerOf(start);
  if (!container) throw new AppError('photo-not-an-image');
  if (file.size > MOST_BYTES) throw new AppError('photo-too-large');
  const bytes = new Uint8Array(await file.arrayBuffer());
  const coded = container.size(bytes);
  if (coded && coded.width * coded.height > MOST_PIXELS) throw new AppError('photo-too-large');
  if (!coded || coded.width * coded.height === 0 || !container.isWhole(bytes)) throw new AppError(broken(container));
  return { bytes, container, coded };
}

const broken = (container: Container) => (mayNotDecode(container) ? 'photo-heic' : 'photo-not-an-image');

async function stored(blob: Blob): Promise<StoredPicture> {
  if (blob.type !== 'image/jpeg') throw new Error(`A copy should be image/jpeg, the browser made ${blob.type}.`);
  const bytes = await blob.arrayBuffer();
  const size = containerOf(new Uint8Array(bytes))?.size(new Uint8Array(bytes));
  if (!size) throw new Error('The browser made a copy without a size.');
  return { bytes, sha256: await sha256(bytes), ...size };
}

/**
 * One photograph from file to what is stored, in whichever realm this runs; `preparePhoto` says what comes out.
 * Throws `AppError` for a file that is no usable photograph.
 */
export async function prepare(
  file: Blob,
  name: string,
  wishes: Wishes,
  means: Means,
  onStage: (stage: PhotoStage) => void,
): Promise<PreparedPhoto> {
  onStage('checking');
  const { bytes, container, coded } = await check(file);
  onStage('cameraFacts');
  const block = wishes.readCameraFacts ? container.cameraBlock(bytes) : null;
  const facts: CameraFacts = block ? await readCameraFacts(block, wishes.keepPosition) : noFacts;
  const source = new Blob([bytes], { type: container.mime });

  // The thumbnail comes first: it is also the proof that this browser can decode the file.
  onStage('thumbnail');
  const { jpeg: thumbnail, upright } = await firstLook(
    source,
    coded,
    facts.orientation ?? 1,
    THUMBNAIL,
    means.makeSurface,
  ).catch((cause) => {
    throw new AppError(broken(container), { cause });
  });
  onStage('workingCopy');
  const copy = await means.workingCopy(source, upright, WORKING_COPY);
  onStage('original');
  return {
    ...(await stored(copy)),
    mime: 'image/jpeg',
    thumbnail: await stored(thumbnail),
    ...facts,
    ...(await keepOriginal(bytes, name, container, facts, wishes)),
  };
}
