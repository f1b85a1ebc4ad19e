import type { Alignment } from '../../core/records.ts';
import { Button } from '../../ui/button.tsx';
import { RangeField } from '../../ui/range-field.tsx';
import css from './compare.module.css';
import { FEWEST_PAIRS, type Places, pairsIn } from './place-pairs.tsx';
import type { LiningUp } from './use-line-up.ts';
import type { Way } from './viewer.tsx';

/** What the thumb does here: line up, stop it, confirm tapped places, or move the slider. */
export function LineUpDock({
  lining,
  alignment,
  way,
  position,
  onMove,
  places,
  onPlaces,
}: {
  readonly lining: LiningUp;
  readonly alignment: Alignment | undefined;
  readonly way: Way;
  readonly position: number;
  readonly onMove: (position: number) => void;
  readonly places: Places | undefined;
  readonly onPlaces: (places: Places | undefined) => void;
}) {
  const { state } = lining;
  if (state.at === 'work') {
    return (
      <div class={css.dock}>
        <p role="status" class="figures">
          Lining up…
        </p>
        <progress value={state.share} max={1} aria-label="Lining up" />
        <Button wide onPress={lining.stop}>
          Stop
        </Button>
      </div>
    );
  }
  if (places) return <PlacesDock lining={lining} places={places} onPlaces={onPlaces} />;
  if (!alignment) {
    return (
      <Button look="main" wide onPress={() => void lining.start()}>
        Line them up
      </Button>
    );
  }
  return <Slider way={way} position={position} onMove={onMove} />;
}

function PlacesDock({
  lining,
  places,
  onPlaces,
}: {
  readonly lining: LiningUp;
  readonly places: Places;
  readonly onPlaces: (places: Places | undefined) => void;
}) {
  const pairs = pairsIn(places);
  const missing = FEWEST_PAIRS - pairs.length;
  const { state } = lining;
  const hasFailed = missing <= 0 && (state.at === 'unlike' || state.at === 'failed');
  return (
    <div class={css.dock}>
      {hasFailed && (
        <p role="alert">
          {state.at === 'failed'
            ? state.sentence
            : 'Laid so, the two do not look alike. Move the places, or take them as they are.'}
        </p>
      )}
      <div class={css.pair}>
        <Button
          onPress={() => {
            lining.rest();
            onPlaces(undefined);
          }}
        >
          Leave it
        </Button>
        <Button
          look="main"
          disabled={missing > 0}
          onPress={() => {
            void lining.start(pairs).then((done) => {
              if (done) onPlaces(undefined);
            });
          }}
        >
          {missing > 0 ? `${missing} more ${missing === 1 ? 'place' : 'places'}` : 'Line up by these'}
        </Button>
      </div>
      {hasFailed && (
        <Button
          wide
          onPress={() => {
            if (lining.takeTaps(pairs)) onPlaces(undefined);
          }}
        >
          Take the places as they are
        </Button>
      )}
    </div>
  );
}

function Slider({
  way,
  position,
  onMove,
}: {
  readonly way: Way;
  readonly position: number;
  readonly onMove: (position: number) => void;
}) {
  const percent = Math.round(position * 100);
  return (
    <RangeField
      label={way === 'wipe' ? 'Where before ends and after begins' : 'From after to before'}
      said={`${percent} % before`}
      min={0}
      max={100}
      step={1}
      value={percent}
      onChange={(value) => onMove(value / 100)}
    />
  );
}
