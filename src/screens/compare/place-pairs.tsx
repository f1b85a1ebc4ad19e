import { useEffect, useRef, useState } from 'preact/hooks';
import type { BeforeAfter } from '../../core/before-after.ts';
import { insidePicture, type Spot } from '../../core/mark-geometry.ts';
import type { Photo } from '../../core/records.ts';
import { StoredPicture } from '../../parts/stored-picture.tsx';
import { Button } from '../../ui/button.tsx';
import css from './compare.module.css';
import type { PlacePair } from './use-line-up.ts';

/** So many pairs hold a flat face; more only make it steadier. */
export const FEWEST_PAIRS = 4;

/** Tapped so far: complete pairs, and perhaps a place in the before photograph that waits for its twin. */
export interface Places {
  readonly before: readonly Spot[];
  readonly after: readonly Spot[];
}
export const NO_PLACES: Places = { before: [], after: [] };
export const pairsIn = ({ before, after }: Places): PlacePair[] =>
  after.map((spot, i): PlacePair => [before[i] as Spot, spot]);

type Side = keyof Places;
const SIDES: readonly Side[] = ['before', 'after'];
/** The side the next tap belongs to: a place in the before first, then the same one in the after. */
export const nextSide = ({ before, after }: Places): Side => (before.length > after.length ? 'after' : 'before');

/** Takes the newest place away, whichever side it is on. */
export const withoutLast = (places: Places): Places => {
  const side = nextSide(places) === 'after' ? 'before' : 'after';
  return { ...places, [side]: places[side].slice(0, -1) };
};

/** One step of an arrow key, as a share of the picture; ten times that with Shift. */
const STEP = 0.002;
const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-STEP, 0],
  ArrowRight: [STEP, 0],
  ArrowUp: [0, -STEP],
  ArrowDown: [0, STEP],
};

/** Both photographs to tap the same places in, by turns. Places can be dragged, or picked and nudged by arrow keys. */
export function PlacePairs({
  pair,
  places,
  onChange,
}: {
  readonly pair: BeforeAfter;
  readonly places: Places;
  readonly onChange: (places: Places) => void;
}) {
  const turn = nextSide(places);
  const number = places.after.length + 1;
  const put = (side: Side, spot: Spot): void => {
    if (side === turn) onChange({ ...places, [side]: [...places[side], insidePicture(spot)] });
  };
  const move = (side: Side, index: number, spot: Spot): void =>
    onChange({ ...places, [side]: places[side].map((old, i) => (i === index ? insidePicture(spot) : old)) });
  return (
    <>
      <p role="status" class={css.turn}>
        <b>Place {number}.</b>{' '}
        {turn === 'before'
          ? 'Tap a clear corner or mark in the before photograph, far from the others.'
          : 'Now tap the same place in the after photograph.'}
      </p>
      <div class={css.sides} data-tapped>
        {SIDES.map((side) => (
          <figure key={side}>
            <Tapped
              photo={pair[side]}
              name={side}
              isNext={side === turn}
              spots={places[side]}
              onTap={(spot) => put(side, spot)}
              onMove={(index, spot) => move(side, index, spot)}
            />
            <figcaption>{side === 'before' ? 'Before' : 'After'}</figcaption>
          </figure>
        ))}
      </div>
      <p class={css.ways}>
        <Button look="quiet" onPress={() => put(turn, [0.5, 0.5])}>
          Put place {number} in the middle of the {turn}
        </Button>
        {places.before.length > 0 && (
          <Button look="quiet" onPress={() => onChange(withoutLast(places))}>
            Take the last one away
          </Button>
        )}
      </p>
    </>
  );
}

function Tapped({
  photo,
  name,
  isNext,
  spots,
  onTap,
  onMove,
}: {
  readonly photo: Photo;
  readonly name: Side;
  readonly isNext: boolean;
  readonly spots: readonly Spot[];
  readonly onTap: (spot: Spot) => void;
  readonly onMove: (index: number, spot: Spot) => void;
}) {
  const [dragged, setDragged] = useState<number>();
  const picture = useRef<HTMLDivElement>(null);
  useEffect(() => {
    // On a phone the other one may lie below the edge.
    if (isNext) picture.current?.scrollIntoView?.({ block: 'nearest' });
  }, [isNext]);
  const spotOf = (event: { clientX: number; clientY: number }): Spot => {
    const { left = 0, top = 0, width = 1, height = 1 } = picture.current?.getBoundingClientRect() ?? {};
    return [(event.clientX - left) / width, (event.clientY - top) / height];
  };
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: by key a place is put in the middle by the button below, and nudged
    // biome-ignore lint/a11y/noStaticElementInteractions: the same
    <div
      ref={picture}
      class={css.tapped}
      data-picture={name}
      data-next={isNext || undefined}
      style={{ '--ratio': photo.width / photo.height }}
      onClick={(event) => onTap(spotOf(event))}
    >
      <StoredPicture sha256={photo.sha256} alt={`The ${name} photograph`} />
      {spots.map(([x, y], index) => (
        <button
          // Places have no identity but their number.
          key={index}
          type="button"
          class={css.place}
          style={{ insetInlineStart: `${x * 100}%`, insetBlockStart: `${y * 100}%` }}
          aria-label={`Place ${index + 1} in the ${name}: ${Math.round(x * 100)} % across, ${Math.round(y * 100)} % down. Arrow keys move it.`}
          onClick={(event) => event.stopPropagation()}
          onPointerDown={(event) => {
            event.currentTarget.setPointerCapture(event.pointerId);
            setDragged(index);
          }}
          onPointerMove={(event) => {
            if (dragged === index) onMove(index, spotOf(event));
          }}
          onPointerUp={() => setDragged(undefined)}
          onPointerCancel={() => setDragged(undefined)}
          onKeyDown={(event) => {
            const by = ARROWS[event.key];
            if (!by) return;
            event.preventDefault();
            const far = event.shiftKey ? 10 : 1;
            onMove(index, [x + by[0] * far, y + by[1] * far]);
          }}
        >
          {index + 1}
        </button>
      ))}
    </div>
  );
}
