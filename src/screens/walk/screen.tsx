import { useEffect, useMemo, useState } from 'preact/hooks';
import { zonesFor } from '../../core/block.ts';
import { type Catalogue, entry, type Station } from '../../core/catalogue.ts';
import { useActions } from '../../parts/actions.ts';
import { AnswerDock } from '../../parts/answer.tsx';
import { blockName } from '../../parts/block-name.ts';
import { FindingSheet } from '../../parts/finding-sheet.tsx';
import { Gone } from '../../parts/gone.tsx';
import { MarksEditor } from '../../parts/marks-editor.tsx';
import { MeasureFields } from '../../parts/measure-fields.tsx';
import { PartsFields } from '../../parts/parts-fields.tsx';
import { PhotoStrip } from '../../parts/photo-strip.tsx';
import { type BlockCase, useCase } from '../../parts/use-case.ts';
import { useForecast, useForecastCase } from '../../parts/use-forecast.ts';
import { useApp } from '../../ui/app.ts';
import { ActionRow, Button } from '../../ui/button.tsx';
import { ChoiceField } from '../../ui/field.tsx';
import { Page } from '../../ui/page.tsx';
import { type Params, to } from '../../ui/route.ts';
import { go } from '../../ui/router.tsx';
import { KindRow } from './kind-row.tsx';
import css from './walk.module.css';

/** Stations that have something to show on this block, in stall order. */
function stationsOf(
  of: BlockCase,
  catalogue: Catalogue,
): readonly { id: string; station: Station; kinds: readonly string[] }[] {
  const applicable = new Set(of.assessment.kinds.map(({ kind }) => kind));
  const measures = new Set(of.assessment.setting.type?.measures ?? Object.keys(catalogue.measures));
  return Object.entries(catalogue.stations).flatMap(([id, station]) => {
    const kinds = Object.keys(catalogue.damage).filter(
      (kind) => applicable.has(kind) && catalogue.damage[kind]?.stations.includes(id),
    );
    const worth = kinds.length > 0 || station.asksAbout || station.measures.some((measure) => measures.has(measure));
    return worth ? [{ id, station, kinds }] : [];
  });
}

export default function WalkScreen({ params }: { params: Params }) {
  const of = useCase(params.id ?? '');
  if (!of) return <Gone />;
  return <Walk of={of} station={params.station} />;
}

function Walk({ of, station: wanted }: { readonly of: BlockCase; readonly station: string | undefined }) {
  const { catalogue } = useApp();
  const actions = useActions();
  const [openFinding, setOpenFinding] = useState<string>();
  const { forecast, stale } = useForecast(useForecastCase(of), of.block.id);
  const stations = useMemo(() => stationsOf(of, catalogue), [of.assessment.setting, catalogue]);
  const firstOpen = stations.find(({ id }) => !of.survey.stationsDone[id]) ?? stations[0];
  const here = stations.find(({ id }) => id === wanted) ?? firstOpen;
  const address = (id: string): string => to('/block/:id/walk/:station', { id: of.block.id, station: id });
  useEffect(() => {
    if (here && here.id !== wanted) go(address(here.id), { replace: true });
  }, [here?.id, wanted]);
  if (!here) return <Gone />;

  const index = stations.indexOf(here);
  const telling = of.settings.walkOrder === 'telling';
  const todo = (id: string): boolean => id !== here.id && !of.survey.stationsDone[id];
  const mostTelling = forecast?.looks.find(({ station }) => todo(station) && stations.some(({ id }) => id === station));
  const next = telling
    ? (stations.find(({ id }) => id === mostTelling?.station) ?? stations.find(({ id }) => todo(id)))
    : stations[index + 1];
  const before = stations[index - 1];
  const onward = next ? address(next.id) : to('/block/:id', { id: of.block.id });
  const states = new Map(of.assessment.kinds.map(({ kind, state }) => [kind, state]));
  const open = here.kinds.filter((kind) => states.get(kind) === 'notLooked');

  const addFinding = (kind: string): void => {
    const damage = entry(catalogue.damage, kind);
    const zones = damage ? zonesFor(damage, of.assessment.setting, catalogue) : [];
    // Nobody has pointed yet: the whole where the kind allows it, else the first of its zones.
    const zone = zones.length === 0 || zones.includes('whole') ? 'whole' : (zones[0] ?? 'whole');
    setOpenFinding(actions.addFinding(of.block, of.survey, kind, zone));
  };
  const leave = (noneSeen: readonly string[]): void => {
    actions.finishStation(of.survey, here.id, noneSeen);
    go(onward);
  };

  return (
    <Page
      title={here.station.term}
      under={
        <span class="figures">
          {telling
            ? `${stations.filter(({ id }) => of.survey.stationsDone[id]).length} of ${stations.length} done`
            : `${index + 1} of ${stations.length}`}{' '}
          · {blockName(of.block, catalogue)}
        </span>
      }
      back={{ href: to('/block/:id', { id: of.block.id }), label: 'The block' }}
      quiet
      dock={
        <>
          <AnswerDock of={of} forecast={forecast} stale={stale} />
          <ActionRow>
            {before ? (
              <Button href={address(before.id)} label={`Back to ${before.station.term}`}>
                ‹
              </Button>
            ) : null}
            {open.length > 0 ? (
              <Button look="main" wide onPress={() => leave(open)}>
                {open.length === here.kinds.length ? 'None of these seen' : 'None of the rest seen'}
              </Button>
            ) : (
              <Button look="main" wide onPress={() => leave([])}>
                {next ? `On to: ${next.station.term}` : 'Round it: see the block'}
              </Button>
            )}
            {open.length > 0 ? (
              <Button href={onward} label={next ? `Skip to ${next.station.term}` : 'Skip to the block'}>
                Skip
              </Button>
            ) : null}
          </ActionRow>
        </>
      }
    >
      <p class={css.how}>{here.station.how}</p>
      {here.station.needs.length > 0 && <p class={css.needs}>Wants: {here.station.needs.join(', ')}</p>}
      {here.station.caution && (
        <p class={css.caution} role="note">
          {here.station.caution}
        </p>
      )}
      {here.station.asksAbout === 'parts' && <PartsFields of={of} />}
      <MeasureFields of={of} station={here.station} />
      {here.kinds.length > 0 && (
        <ul class={css.kinds}>
          {here.kinds.map((kind) => (
            <KindRow
              key={kind}
              of={of}
              kind={kind}
              state={states.get(kind) ?? 'notLooked'}
              onFound={() => addFinding(kind)}
              onOpen={setOpenFinding}
            />
          ))}
        </ul>
      )}
      {here.station.asksAbout === 'marks' && <MarksEditor of={of} />}
      {here.station.asksAbout === 'photographs' && <PhotoStrip of={of} shotList />}
      {here.station.asksAbout === 'story' && (
        <p>
          <Button href={to('/block/:id/story', { id: of.block.id })}>Write down what the seller says</Button>
        </p>
      )}
      <ChoiceField
        label="Order of the walk"
        value={of.settings.walkOrder}
        options={[
          { id: 'stall', label: 'As at a stall' },
          { id: 'telling', label: 'Most telling first' },
        ]}
        onChange={(walkOrder) => walkOrder && actions.setSettings({ walkOrder })}
      />
      {openFinding && <FindingSheet of={of} findingId={openFinding} onClose={() => setOpenFinding(undefined)} />}
    </Page>
  );
}
