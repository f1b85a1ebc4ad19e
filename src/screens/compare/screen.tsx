import { useState } from 'preact/hooks';
import { type BeforeAfter, pairsOf } from '../../core/before-after.ts';
import { entry } from '../../core/catalogue.ts';
import { useActions } from '../../parts/actions.ts';
import { Gone } from '../../parts/gone.tsx';
import { type BlockCase, useCase } from '../../parts/use-case.ts';
import { useNames } from '../../parts/use-names.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import { ChoiceField, SelectField } from '../../ui/field.tsx';
import { Page, Section } from '../../ui/page.tsx';
import { type Params, to } from '../../ui/route.ts';
import { Agreement } from './agreement.tsx';
import css from './compare.module.css';
import { LineUpDock } from './line-up-dock.tsx';
import { NO_PLACES, PlacePairs, type Places } from './place-pairs.tsx';
import { useLineUp } from './use-line-up.ts';
import { Viewer, type Way } from './viewer.tsx';

export default function CompareScreen({ params }: { params: Params }) {
  const of = useCase(params.id ?? '');
  const { catalogue } = useApp();
  const [chosen, setChosen] = useState<string>();
  if (!of) return <Gone />;
  const pairs = pairsOf(of.photos, of.alignments, Object.keys(catalogue.views));
  const pair = pairs.find((one) => keyOf(one) === chosen) ?? pairs[0];
  return pair ? (
    <Compare key={keyOf(pair)} of={of} pair={pair} pairs={pairs} onChoose={setChosen} />
  ) : (
    <NoPairs blockId={of.block.id} />
  );
}

const keyOf = ({ before, after }: BeforeAfter): string => `${before.id} ${after.id}`;

function NoPairs({ blockId }: { readonly blockId: string }) {
  return (
    <Page title="Before and after" back={{ href: to('/block/:id', { id: blockId }), label: 'The block' }}>
      <p>
        Nothing to compare yet: photograph a view before the work and the same view after it, and they stand beside each
        other here.
      </p>
      <p>
        <Button href={to('/block/:id/camera', { id: blockId })}>Camera in the page</Button>
      </p>
    </Page>
  );
}

const ways: readonly { readonly id: Way; readonly label: string }[] = [
  { id: 'wipe', label: 'Wipe' },
  { id: 'fade', label: 'Fade' },
  { id: 'sides', label: 'Side by side' },
];

/** One view before and after: laid over each other by the pictures themselves or by tapped places, then wiped or faded. */
function Compare({
  of,
  pair,
  pairs,
  onChoose,
}: {
  readonly of: BlockCase;
  readonly pair: BeforeAfter;
  readonly pairs: readonly BeforeAfter[];
  readonly onChoose: (key: string) => void;
}) {
  const { catalogue } = useApp();
  const actions = useActions();
  const { findingName } = useNames(of);
  const lining = useLineUp(pair);
  const [way, setWay] = useState<Way>('wipe');
  const [position, setPosition] = useState(0.5);
  const [places, setPlaces] = useState<Places>();
  const nameOf = ({ view, findingId }: BeforeAfter): string =>
    [entry(catalogue.views, view)?.term ?? view, findingId && findingName(findingId)].filter(Boolean).join(', ');
  const { alignment } = pair;
  const needsDock = lining.state.at === 'work' || places || !alignment || way !== 'sides';
  /** Begins with those tapped last time: mostly one of them was off. */
  const tapPlaces = (): void => {
    lining.rest();
    setPlaces({
      before: alignment?.taps.map(([spot]) => spot) ?? NO_PLACES.before,
      after: alignment?.taps.map(([, spot]) => spot) ?? NO_PLACES.after,
    });
  };
  return (
    <Page
      title="Before and after"
      under={nameOf(pair)}
      back={{ href: to('/block/:id', { id: of.block.id }), label: 'The block' }}
      quiet
      aside={
        !places && (
          <Section>
            {pairs.length > 1 && (
              <SelectField
                label="View"
                value={keyOf(pair)}
                options={pairs.map((one) => ({ id: keyOf(one), label: nameOf(one) }))}
                onChange={onChoose}
              />
            )}
            {alignment && (
              <ChoiceField
                label="Show as"
                value={way}
                options={ways}
                onChange={(next) => {
                  if (next) setWay(next);
                }}
              />
            )}
            <Agreement pair={pair} state={lining.state} />
            <p class={css.ways}>
              {alignment && <Button onPress={() => void lining.start()}>Line up anew</Button>}
              <Button onPress={tapPlaces}>Tap four places</Button>
              {alignment && (
                <Button look="quiet" onPress={() => actions.forgetLineUp(alignment)}>
                  Not lined up
                </Button>
              )}
            </p>
          </Section>
        )
      }
      dock={
        needsDock && (
          <LineUpDock {...{ lining, alignment, way, position, places }} onMove={setPosition} onPlaces={setPlaces} />
        )
      }
    >
      {places ? (
        <PlacePairs pair={pair} places={places} onChange={setPlaces} />
      ) : (
        <Viewer pair={pair} way={way} position={position} onMove={setPosition} />
      )}
    </Page>
  );
}
