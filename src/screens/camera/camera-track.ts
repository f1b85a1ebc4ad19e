/** What a camera can do beyond its picture; read from the track itself, since browsers claim everything in general. */
export interface Abilities {
  readonly torch: boolean;
  readonly zoom: { readonly min: number; readonly max: number; readonly step: number } | null;
}

/** Why there is no picture: each has its sentence on the screen. */
export type Refusal = 'denied' | 'none' | 'busy' | 'unable';

/** Four by three like the sensor, as large as it goes: the still from it should show what the finder showed. */
const WISHES: MediaStreamConstraints = {
  audio: false,
  video: { facingMode: { ideal: 'environment' }, width: { ideal: 4096 }, height: { ideal: 3072 } },
};

/** @throws DOMException as `getUserMedia` does; `refusalOf` says what it means */
export async function openCamera(): Promise<MediaStream> {
  const devices = navigator.mediaDevices as MediaDevices | undefined;
  // Absent on addresses that are not secure, and in some in-app browsers.
  if (!devices?.getUserMedia) throw new DOMException('No camera interface here.', 'NotSupportedError');
  return devices.getUserMedia(WISHES);
}

export function refusalOf(error: unknown): Refusal {
  const name = error instanceof DOMException ? error.name : '';
  if (name === 'NotAllowedError' || name === 'SecurityError') return 'denied';
  if (name === 'NotFoundError' || name === 'OverconstrainedError') return 'none';
  return name === 'NotReadableError' || name === 'AbortError' ? 'busy' : 'unable';
}

export const stopAll = (stream: MediaStream | undefined): void => {
  for (const track of stream?.getTracks() ?? []) track.stop();
};

interface CameraCapabilities extends MediaTrackCapabilities {
  readonly torch?: boolean;
  readonly zoom?: { readonly min?: number; readonly max?: number; readonly step?: number };
}

export function abilitiesOf(track: MediaStreamTrack): Abilities {
  const can: CameraCapabilities = track.getCapabilities?.() ?? {};
  const { min = 1, max = 1, step = 0.1 } = can.zoom ?? {};
  return { torch: can.torch === true, zoom: max > min ? { min, max, step: step || 0.1 } : null };
}

/** Torch or zoom as wished; a camera that thinks better of it keeps what it has. */
export async function adjust(track: MediaStreamTrack, wish: { torch?: boolean; zoom?: number }): Promise<boolean> {
  try {
    await track.applyConstraints({ advanced: [wish as MediaTrackConstraintSet] });
    return true;
  } catch {
    return false;
  }
}

interface StillCamera {
  takePhoto(): Promise<Blob>;
}
type StillCameras = { readonly ImageCapture?: new (track: MediaStreamTrack) => StillCamera };

/** Some phones never answer when asked for a still; the frame on screen is better than waiting. */
const STILL_WITHIN_MS = 4000;

/**
 * A photograph from a live camera: a still of the whole sensor where the browser has one, else the frame the finder shows.
 * @returns an encoded picture with the time of its taking. @throws when the browser gives neither
 */
export async function takeStill(track: MediaStreamTrack, video: HTMLVideoElement, name: string): Promise<File> {
  const blob = (await still(track)) ?? (await frame(video));
  return new File([blob], name, { type: blob.type });
}

async function still(track: MediaStreamTrack): Promise<Blob | undefined> {
  const { ImageCapture } = globalThis as StillCameras;
  if (!ImageCapture || track.readyState !== 'live') return undefined;
  try {
    const late = new Promise<undefined>((resolve) => setTimeout(() => resolve(undefined), STILL_WITHIN_MS));
    const blob = await Promise.race([new ImageCapture(track).takePhoto(), late]);
    return blob && blob.size > 0 ? blob : undefined;
  } catch {
    return undefined;
  }
}

function frame(video: HTMLVideoElement): Promise<Blob> {
  const { videoWidth: width, videoHeight: height } = video;
  if (width * height === 0) return Promise.reject(new Error('The camera shows no picture yet.'));
  const canvas = Object.assign(document.createElement('canvas'), { width, height });
  canvas.getContext('2d')?.drawImage(video, 0, 0);
  return new Promise((resolve, reject) => {
    canvas.toBlob(
      (blob) => {
        // Phones do not wait for the collector.
        Object.assign(canvas, { width: 0, height: 0 });
        if (blob) resolve(blob);
        else reject(new Error('The canvas gave no picture.'));
      },
      'image/jpeg',
      0.95,
    );
  });
}
