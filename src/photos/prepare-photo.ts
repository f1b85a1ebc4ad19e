import type { Photo } from '../core/records.ts';
import type { PhotoStage, PreparedPhoto } from './prepared-photo.ts';
import { createPreparer } from './preparer.ts';

export interface PhotoOptions {
  /** Also hand back the file itself. */
  readonly keepOriginal: boolean;
  /** Also hand back where it was taken, and leave it in the original. */
  readonly keepPosition: boolean;
  /** True for the camera button: only then does the file's own time say when the photograph was taken. */
  readonly fromCamera?: boolean;
  readonly signal?: AbortSignal | undefined;
  readonly onStage?: (stage: PhotoStage) => void;
}

/** A camera hands its file over at once; anything older was lying somewhere. Trade estimate. */
const FRESH_MS = 15 * 60_000;
const CLOCK_SLACK_MS = 60_000;

const two = (n: number): string => String(n).padStart(2, '0');

/**
 * When a photograph without EXIF date was taken, by this phone's clock: for a fresh file from the camera button the
 * file's own time, otherwise null. A saved chat picture or screenshot carries the time of saving, and a date of
 * capture that may be wrong by years is worse in a provenance record than none.
 */
export function takenByThisPhone(file: File | Blob, fromCamera: boolean, nowMs: number): Photo['taken'] {
  if (!fromCamera || !(file instanceof File)) return null;
  const age = nowMs - file.lastModified;
  if (age > FRESH_MS || age < -CLOCK_SLACK_MS) return null;
  const at = new Date(file.lastModified);
  const ahead = -at.getTimezoneOffset();
  const day = `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
  return {
    local: `${day}T${two(at.getHours())}:${two(at.getMinutes())}:${two(at.getSeconds())}`,
    offset: `${ahead < 0 ? '-' : '+'}${two(Math.floor(Math.abs(ahead) / 60))}:${two(Math.abs(ahead) % 60)}`,
    from: 'thisPhone',
  };
}

const preparer = createPreparer({
  startWorker: () => new Worker(new URL('./compress.worker.ts', import.meta.url), { type: 'module', name: 'photos' }),
  prepareInPage: async (...job) => (await import('./in-page.ts')).prepareInPage(...job),
  patience: { photo: 30_000, cameraFacts: 3_000, idle: 10_000 },
});

/**
 * Makes of a file from camera or gallery what is stored: a working copy of at most 2048 px and a thumbnail of at most
 * 320 px, both upright JPEG without any metadata, and, if wished, the file itself; each with the SHA-256 of its bytes.
 * Camera time, 35 mm focal length and (with `keepPosition`) position are read from EXIF; none of them is required.
 * Without `keepPosition` a kept original is freed of all metadata, see `keepOriginal`.
 *
 * One photograph at a time, in a worker; calls queue. Rejects with the signal's reason when aborted, and with AppError
 * `photo-empty`, `photo-not-an-image` (also cut off or damaged), `photo-heic` (a format this browser cannot decode),
 * `photo-too-large` (over 60 megapixels or 40 MiB) or `photo-timeout`.
 */
export async function preparePhoto(file: File | Blob, options: PhotoOptions): Promise<PreparedPhoto> {
  const { keepOriginal, keepPosition, fromCamera = false, signal, onStage = () => {} } = options;
  const photo = await preparer({
    file,
    name: file instanceof File ? file.name : '',
    wishes: { keepOriginal, keepPosition, readCameraFacts: true },
    signal,
    onStage,
  });
  return photo.taken ? photo : { ...photo, taken: takenByThisPhone(file, fromCamera, Date.now()) };
}
