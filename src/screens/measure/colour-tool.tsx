import { useState } from 'preact/hooks';
import type { Spot } from '../../core/mark-geometry.ts';
import { colourDifference, labOf, matchOf, type Rgb } from '../../core/physics/colour.ts';
import { nearestMix } from '../../core/physics/filler-colour.ts';
import { useActions } from '../../parts/actions.ts';
import { Button } from '../../ui/button.tsx';
import { type Answer, METHOD_VERSION } from '../../workers/pixel-jobs.ts';
import { type Desk, type Drawn, useWork } from './desk.ts';
import css from './measure.module.css';
import { Busy, Figure, Nudge } from './panel-parts.tsx';
import { savedMarks } from './saved-marks.ts';
import { SpotChoice } from './spots.tsx';
import { usePixels } from './use-pixels.ts';

const NAMES = {
  wood: 'Wood',
  repair: 'Repair',
  light: 'Light filler',
  dark: 'Dark filler',
  grey: 'Grey card',
} as const;
type Named = keyof typeof NAMES;
const ORDER = Object.keys(NAMES) as Named[];

const SAY: Readonly<Record<Named, string>> = {
  wood: 'Tap the wood to be matched.',
  repair: 'Tap what is compared with it: a filling, a dab of stain.',
  light: 'Tap a dab of the light filler, dry.',
  dark: 'Tap a dab of the dark filler, dry.',
  grey: 'Tap a grey card (18 %) lying beside the wood in the same light.',
};
type GreyCard = Answer<'colours'>['grey'];

const MATCH = {
  unseen: 'not to be told apart',
  good: 'a good match',
  visible: 'visible side by side',
  obvious: 'obvious',
} as const;

/** Two patches of one photograph under the same light differ by about this much when they are the same. Trade estimate. */
const SAME_PATCH_SIGMA = 0.7;
const PATCH = 9 / 1600;

/** Colours of one photograph compared, and the mix of two fillers that comes nearest the wood. */
export function ColourTool({ desk }: { readonly desk: Desk }) {
  const actions = useActions();
  const { stage, photo } = desk;
  const pixels = usePixels(desk);
  const [next, setNext] = useState<Named>('wood');
  const [spots, setSpots] = useState<Partial<Record<Named, Spot>>>({});
  const [colours, setColours] = useState<Partial<Record<Named, Rgb | null>>>({});
  const [grey, setGrey] = useState<GreyCard>('none');

  async function look(placed: Partial<Record<Named, Spot>>): Promise<void> {
    setSpots(placed);
    const ids = ORDER.filter((id) => placed[id]);
    const at = ids.map((id) => placed[id] as Spot);
    const seen = await pixels.ask('colours', { at, grey: placed.grey ?? null });
    if (!seen) return;
    setColours(Object.fromEntries(ids.map((id, i) => [id, seen.colours[i] ?? null])));
    setGrey(seen.grey);
  }

  const ids = ORDER.filter((id) => spots[id]);
  useWork(stage, {
    drawn: [
      ...savedMarks(desk),
      ...ids.map(
        (id): Drawn => ({
          ...{ key: id, shape: 'ring', radius: PATCH, look: 'chosen' },
          ...{ points: [spots[id] as Spot], label: NAMES[id].toLocaleLowerCase('en-GB') },
        }),
      ),
    ],
    handles: ids.map((id) => spots[id] as Spot),
    onTap(spot) {
      const placed = { ...spots, [next]: spot };
      void look(placed);
      stage.said.value = `${NAMES[next]} placed.`;
      setNext(ORDER.find((id) => !placed[id]) ?? next);
    },
    onMove(index, spot, done) {
      const id = ids[index];
      if (!id) return;
      if (done) void look({ ...spots, [id]: spot });
      else setSpots({ ...spots, [id]: spot });
    },
    onRemove(index) {
      const id = ids[index];
      if (!id) return;
      const { [id]: _, ...rest } = spots;
      void look(rest);
    },
  });

  const { wood, repair, light, dark } = colours;
  const difference = wood && repair ? colourDifference(labOf(wood), labOf(repair)) : null;
  const isOff = ids.some((id) => colours[id] === null);

  function keep(): void {
    if (difference === null || !spots.wood || !spots.repair) return;
    const points = [spots.wood, spots.repair].map(([x, y]): [number, number] => [x, y]);
    actions.addPhotoMark(photo, {
      ...{ shape: 'line', points, findingId: photo.findingId, text: `ΔE ${difference.toFixed(1)}` },
      measured: {
        values: [{ what: 'deltaE', value: difference, sigma: SAME_PATCH_SIGMA, unit: 'deltaE' }],
        ...{ method: 'colourDifference', version: METHOD_VERSION },
        inputs: { taps: points, ...(grey === 'used' && spots.grey ? { greyCard: [[...spots.grey]] } : {}) },
      },
    });
    stage.said.value = 'Kept on the photograph.';
  }

  return (
    <div class={css.tool}>
      <SpotChoice label="What the next tap places" names={NAMES} placed={spots} value={next} onChange={setNext} />
      <p class={css.say}>{SAY[next]}</p>
      <Nudge desk={desk} />
      <Busy pixels={pixels} />
      {isOff && (
        <p class={css.refused} role="alert">
          Too near the edge of the picture.
        </p>
      )}
      {grey !== 'none' && grey !== 'used' && (
        <p class={css.refused} role="alert">
          {grey === 'clipped' ? 'The grey card is overexposed here.' : 'The grey card cannot be measured by here.'} The
          colours below are as lit.
        </p>
      )}
      {wood && grey === 'used' && (
        <dl class={css.figures}>
          <Figure
            label="The wood’s colour"
            value={labOf(wood)
              .map((part, i) => `${['L*', 'a*', 'b*'][i]} ${part.toFixed(0)}`)
              .join(', ')}
            by="CIELAB, freed of the light’s colour by the grey card; on phones right to about ΔE 2"
          />
        </dl>
      )}
      {difference !== null && (
        <>
          <dl class={css.figures}>
            <Figure
              label="Difference wood – repair"
              value={`ΔE ${difference.toFixed(1)}`}
              by={`${MATCH[matchOf(difference)]}; CIEDE2000, 1 is just visible${grey === 'used' ? '; by the grey card' : ''}`}
            />
          </dl>
          <Button onPress={keep}>Keep on the photograph</Button>
        </>
      )}
      {wood && light && dark && <Mix wood={wood} light={light} dark={dark} />}
      <p class={css.warn} role="note">
        A phone colours what it photographs. Compare patches of this one picture only, in the same light; a grey card
        beside them takes the light’s colour out. Trust a dried dab on the wood before any number.
      </p>
    </div>
  );
}

function Mix({ wood, light, dark }: { readonly wood: Rgb; readonly light: Rgb; readonly dark: Rgb }) {
  const { darkShare, firstShare, difference } = nearestMix(light, dark, wood);
  const pct = (share: number): string => `${Math.round(share * 100)} %`;
  return (
    <dl class={css.figures}>
      <Figure
        label="Nearest mix"
        value={
          darkShare < 0.005
            ? 'the light filler alone'
            : darkShare > 0.995
              ? 'the dark filler alone'
              : `${pct(darkShare)} dark by volume`
        }
        by={`comes within ΔE ${difference.toFixed(1)}: ${MATCH[matchOf(difference)]}${darkShare < 0.005 ? '' : `; stir in ${pct(firstShare)} first, let a dab dry, look again`}`}
      />
    </dl>
  );
}
