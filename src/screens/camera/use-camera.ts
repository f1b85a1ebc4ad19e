import { useEffect, useState } from 'preact/hooks';
import { type Abilities, abilitiesOf, openCamera, type Refusal, refusalOf, stopAll } from './camera-track.ts';

export type CameraState =
  | { readonly at: 'starting' }
  | {
      readonly at: 'live';
      readonly stream: MediaStream;
      readonly track: MediaStreamTrack;
      readonly abilities: Abilities;
    }
  /** Page out of sight, or the system took the camera away; comes back by itself. */
  | { readonly at: 'resting' }
  | { readonly at: 'refused'; readonly why: Refusal };

const STARTING: CameraState = { at: 'starting' };

/**
 * The phone's main camera for as long as this screen is seen: opened once, stopped when the page is hidden, opened again
 * when it is back. Three events tell of a return, since each browser leaves some of them out; together they open one.
 */
export function useCamera(): { readonly state: CameraState; readonly tryAgain: () => void } {
  const [state, setState] = useState<CameraState>(STARTING);
  const [tries, setTries] = useState(0);
  useEffect(() => {
    let stream: MediaStream | undefined;
    let isOpening = false;
    let isRefused = false;
    let isOver = false;

    function rest(): void {
      stopAll(stream);
      stream = undefined;
      if (!isOver && !isRefused) setState({ at: 'resting' });
    }

    async function open(): Promise<void> {
      if (isOpening || stream || isRefused || isOver || document.hidden) return;
      isOpening = true;
      setState(STARTING);
      try {
        const opened = await openCamera();
        const [track] = opened.getVideoTracks();
        if (isOver || document.hidden || !track) {
          stopAll(opened);
          if (!isOver) setState({ at: 'resting' });
          return;
        }
        stream = opened;
        // Taken away by the system, for a call or another app: the next return opens it again.
        track.addEventListener('ended', () => {
          if (stream === opened) rest();
        });
        setState({ at: 'live', stream: opened, track, abilities: abilitiesOf(track) });
      } catch (error) {
        isRefused = true;
        if (!isOver) setState({ at: 'refused', why: refusalOf(error) });
      } finally {
        isOpening = false;
      }
    }

    const onVisibility = (): void => {
      if (document.hidden) rest();
      else void open();
    };
    const onReturn = (): void => void open();
    document.addEventListener('visibilitychange', onVisibility);
    addEventListener('pageshow', onReturn);
    addEventListener('focus', onReturn);
    addEventListener('pagehide', rest);
    void open();
    return () => {
      isOver = true;
      document.removeEventListener('visibilitychange', onVisibility);
      removeEventListener('pageshow', onReturn);
      removeEventListener('focus', onReturn);
      removeEventListener('pagehide', rest);
      rest();
    };
  }, [tries]);
  return { state, tryAgain: () => setTries((now) => now + 1) };
}
