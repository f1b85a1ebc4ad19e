import { useState } from 'preact/hooks';
import { nearest, type Spot } from '../../core/mark-geometry.ts';
import { refusal } from '../../text/measured.ts';
import { Button } from '../../ui/button.tsx';
import type { Desk, Drawn } from './desk.ts';
import css from './measure.module.css';
import type { Pixels } from './use-pixels.ts';

/** How near a finger must come to a suggested line to mean it, in screen px. */
const REACH_PX = 28;

export interface Suggestions {
  readonly drawn: readonly Drawn[];
  readonly lines: readonly (readonly Spot[])[] | null;
  /** Ends and middle of the line a tap means: what following it starts from. */
  readonly takenBy: (spot: Spot) => readonly Spot[] | null;
  readonly look: () => Promise<void>;
  readonly clear: () => void;
  readonly why: string | null;
}

/** Lines on the photograph that may be cracks, for the person to choose from; none is measured unasked. */
export function useSuggestions({ stage, size }: Desk, pixels: Pixels): Suggestions {
  const [lines, setLines] = useState<Suggestions['lines']>(null);
  const [why, setWhy] = useState<string | null>(null);
  return {
    lines,
    why,
    drawn: (lines ?? []).map(
      (points, i): Drawn => ({ key: `maybe ${i}`, shape: 'polyline', points, look: 'unsure', label: `${i + 1}` }),
    ),
    takenBy(spot) {
      const reach = REACH_PX / (stage.view.value?.zoom ?? 1);
      const near = (lines ?? [])
        .map((line) => ({ line, px: nearest(line, spot, size)?.px ?? Number.POSITIVE_INFINITY }))
        .sort((a, b) => a.px - b.px)[0];
      if (!near || near.px > reach) return null;
      const { line } = near;
      const [first, last] = [line[0] as Spot, line.at(-1) as Spot];
      return line.length > 2 ? [first, line[line.length >> 1] as Spot, last] : [first, last];
    },
    async look() {
      const found = await pixels.ask('suggestCracks', null);
      if (!found) return;
      setLines(found.ok ? found.lines : null);
      setWhy(found.ok ? null : refusal(found.why));
      stage.said.value = found.ok ? `${found.lines.length} lines that may be cracks.` : refusal(found.why);
    },
    clear() {
      setLines(null);
      setWhy(null);
    },
  };
}

/** Offers to look, and says how little a suggestion is worth. */
export function SuggestionsView({ suggestions }: { readonly suggestions: Suggestions }) {
  const { lines, look, why } = suggestions;
  return (
    <>
      {!lines && <Button onPress={look}>Show lines that may be cracks</Button>}
      {why && (
        <p class={css.refused} role="alert">
          {why} Tap both ends instead.
        </p>
      )}
      {lines && (
        <p class={css.warn} role="note">
          {lines.length === 0
            ? 'No line stands out. That is no proof that there is no crack: look in raking light.'
            : 'Tap a line to follow and measure it. About half of such lines are grain, joints or tool marks, and half the cracks are not among them.'}
        </p>
      )}
    </>
  );
}
