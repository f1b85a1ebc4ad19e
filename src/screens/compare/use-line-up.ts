import { useEffect, useRef, useState } from 'preact/hooks';
import type { BeforeAfter } from '../../core/before-after.ts';
import type { Spot } from '../../core/mark-geometry.ts';
import { inShares } from '../../core/plane-map.ts';
import { useActions } from '../../parts/actions.ts';
import { pixelWork, usePicture } from '../../parts/pixel-work.ts';
import { fitHomography } from '../../pixels/index.ts';
import { sentenceOf } from '../../text/errors.ts';
import { METHOD_VERSION } from '../../workers/pixel-jobs.ts';

/** A place in the before photograph and the same one in the after. */
export type PlacePair = readonly [before: Spot, after: Spot];

export type LineUp =
  | { readonly at: 'rest' }
  | { readonly at: 'work'; readonly share: number }
  /** They could not be laid over each other so; with places, those alone still can. */
  | { readonly at: 'unlike'; readonly taps: readonly PlacePair[] }
  | { readonly at: 'failed'; readonly sentence: string };

/** Lays the after photograph of a pair over the before one, in the worker, and keeps what was found. */
export function useLineUp(pair: BeforeAfter) {
  const actions = useActions();
  const pictures = [usePicture(pair.before), usePicture(pair.after)];
  const [state, setState] = useState<LineUp>({ at: 'rest' });
  const work = useRef<AbortController | undefined>(undefined);
  useEffect(() => {
    setState({ at: 'rest' });
    return () => work.current?.abort();
  }, [pair.before.id, pair.after.id]);

  const keep = (h: readonly number[], agreement: number | null, method: string, taps: readonly PlacePair[]): void =>
    actions.lineUp(
      pair.before,
      pair.after,
      {
        h: [...h],
        agreement,
        method,
        taps: taps.map(([[ax, ay], [bx, by]]) => [
          [ax, ay],
          [bx, by],
        ]),
        version: METHOD_VERSION,
      },
      pair.alignment,
    );

  return {
    state,
    /** @param taps four pairs of places or more; none to let it find its own */
    async start(taps: readonly PlacePair[] = []): Promise<boolean> {
      work.current?.abort();
      const control = new AbortController();
      work.current = control;
      setState({ at: 'work', share: 0 });
      try {
        const found = await pixelWork.ask('register', pictures, taps.length > 0 ? taps : null, {
          signal: control.signal,
          onStage: (_, share) => setState({ at: 'work', share }),
        });
        if (!found || control.signal.aborted) {
          if (work.current === control) setState({ at: 'rest' });
          return false;
        }
        if (!found.ok) {
          setState({ at: 'unlike', taps });
          return false;
        }
        keep(inShares(found.H, ...found.sizes), found.agreement, taps.length > 0 ? 'taps' : 'features', taps);
        setState({ at: 'rest' });
        return true;
      } catch (error) {
        setState({ at: 'failed', sentence: sentenceOf(error) });
        return false;
      }
    },
    /** The tapped places as they are, without a look at the pictures; false when they lie in a line. */
    takeTaps(taps: readonly PlacePair[]): boolean {
      const h = fitHomography(
        taps.map(([a]) => a),
        taps.map(([, b]) => b),
      );
      if (!h) return false;
      keep(h, null, 'tapsOnly', taps);
      setState({ at: 'rest' });
      return true;
    },
    stop(): void {
      work.current?.abort();
      setState({ at: 'rest' });
    },
    /** Away with what was said of the last try. */
    rest: (): void => setState({ at: 'rest' }),
  };
}
export type LiningUp = ReturnType<typeof useLineUp>;
