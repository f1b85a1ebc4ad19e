import { signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { preparePhoto } from '../photos/prepare-photo.ts';
import { sha256 } from '../photos/sha256.ts';
import type { Store } from '../store/store.ts';
import { sentenceOf } from '../text/errors.ts';
import { useApp } from '../ui/app.ts';
import { Button } from '../ui/button.tsx';

/** How far the photographs of the example are. `waiting`: not to be had now. `failed`: could not be stored. */
export type ExampleState =
  | { readonly is: 'idle' }
  | { readonly is: 'coming'; readonly here: number; readonly of: number }
  | { readonly is: 'waiting'; readonly left: number }
  | { readonly is: 'failed'; readonly error: unknown };

export const examplePicturesAre = signal<ExampleState>({ is: 'idle' });

/** Apart from the app's own files, and filled only when the example is opened: so it opens again without signal. */
const CACHE = 'blockworth-example';
/** Noted while pictures are still wanted, so that a photograph the owner took away does not come back. */
const WANTED = 'blockworth-example-pictures';

let running: AbortController | undefined;

function note(wanted?: boolean): boolean {
  try {
    if (wanted === true) localStorage.setItem(WANTED, '1');
    if (wanted === false) localStorage.removeItem(WANTED);
    return localStorage.getItem(WANTED) !== null;
  } catch {
    // Without local storage what did not come at the first opening does not come later; nothing else depends on it.
    return false;
  }
}

/**
 * One picture, from the device if it is there, else from the host the app came from; kept for the next time.
 * @throws when neither has it, or the host answers with something else: a login page, half a deploy
 */
export async function examplePicture(file: string, hash: string): Promise<Blob> {
  // The hash in the address: a picture made anew in a later version is another file.
  const url = new URL(`./example/${file}.jpg?r=${hash.slice(0, 16)}`, document.baseURI).href;
  const cache = 'caches' in globalThis ? await caches.open(CACHE).catch(() => undefined) : undefined;
  const kept = await cache?.match(url);
  if (kept) return kept.blob();
  const response = await fetch(url, { cache: 'no-store' });
  const bytes = await response.arrayBuffer();
  if (!response.ok || (await sha256(bytes)) !== hash) throw new Error(`${file}: answered ${response.status}`);
  const picture = new Blob([bytes], { type: 'image/jpeg' });
  await cache?.put(url, new Response(picture)).catch(() => undefined);
  return picture;
}

/** Brings what is missing, beside whatever the owner does; asking twice brings it once. */
export async function bringExamplePictures(store: Store): Promise<void> {
  if (running) return;
  const mine = new AbortController();
  running = mine;
  note(true);
  try {
    const { bringPictures } = await import('../demo/bring-pictures.ts');
    const left = await bringPictures(store, {
      fetch: examplePicture,
      prepare: (file) => preparePhoto(file, { keepOriginal: false, keepPosition: false, signal: mine.signal }),
      signal: mine.signal,
      onProgress: (here, of) => {
        if (running === mine) examplePicturesAre.value = { is: 'coming', here, of };
      },
    });
    if (running !== mine) return;
    if (left === 0) note(false);
    examplePicturesAre.value = left === 0 ? { is: 'idle' } : { is: 'waiting', left };
  } catch (error) {
    if (running === mine) examplePicturesAre.value = { is: 'failed', error };
  } finally {
    if (running === mine) running = undefined;
  }
}

/** The example is going: nothing more is fetched, and what was kept of it is let go. */
export function forgetExamplePictures(): void {
  running?.abort();
  running = undefined;
  note(false);
  examplePicturesAre.value = { is: 'idle' };
  if ('caches' in globalThis) void caches.delete(CACHE).catch(() => undefined);
}

/** Says how far they are, where the example is spoken of; takes up again what an earlier visit could not fetch. */
export function ExamplePictures() {
  const { store } = useApp();
  const state = examplePicturesAre.value;
  const bring = (): void => void bringExamplePictures(store);
  useEffect(() => {
    if (note()) bring();
    addEventListener('online', bringIfWaiting);
    return () => removeEventListener('online', bringIfWaiting);
    function bringIfWaiting(): void {
      if (examplePicturesAre.value.is === 'waiting') bring();
    }
  }, [store]);
  return (
    <span role="status">
      {state.is === 'coming' && `Its photographs are coming: ${state.here} of ${state.of} are here. `}
      {state.is === 'waiting' && (
        <>
          {state.left === 1 ? 'One photograph' : `${state.left} photographs`} could not be fetched now, so they are
          missing. They come by themselves once there is signal.{' '}
          <Button look="quiet" onPress={bring}>
            Fetch them now
          </Button>{' '}
        </>
      )}
      {state.is === 'failed' && (
        <>
          Its photographs did not all come. {sentenceOf(state.error)}{' '}
          <Button look="quiet" onPress={bring}>
            Try again
          </Button>{' '}
        </>
      )}
    </span>
  );
}
