import { useMemo, useState } from 'preact/hooks';
import type { ReportFormat } from '../../exports/report-file.ts';
import { useAdviceCase } from '../../parts/advice.tsx';
import { blockName } from '../../parts/block-name.ts';
import { drawingOf } from '../../parts/drawing-of.ts';
import { Gone } from '../../parts/gone.tsx';
import { type BlockCase, useCase } from '../../parts/use-case.ts';
import type { BenchCase } from '../../reports/case.ts';
import { type ReportKind, type ReportKindId, reportKinds } from '../../reports/index.ts';
import { pairsInCase } from '../../reports/pairs.ts';
import { type ReportWishes, usualWishes } from '../../reports/wishes.ts';
import { dayHere } from '../../text/days.ts';
import { useApp } from '../../ui/app.ts';
import { ChoiceField, TickField } from '../../ui/field.tsx';
import { Page, Section } from '../../ui/page.tsx';
import { type Params, to } from '../../ui/route.ts';
import { ReportView } from './report-view.tsx';
import { SendOff } from './send-off.tsx';

// Every format is a file in exports/formats with a default export; a new one appears here by itself.
const found = import.meta.glob<{ default: ReportFormat }>('../../exports/formats/*.ts', { eager: true });
/** By their file endings. */
const formats: Readonly<Record<string, ReportFormat>> = Object.fromEntries(
  Object.values(found).map(({ default: format }) => [format.extension, format]),
);

export default function ReportScreen({ params }: { params: Params }) {
  const of = useCase(params.id ?? '');
  return of ? <Report of={of} /> : <Gone />;
}

const ticks: readonly { id: keyof ReportWishes; label: string; hint?: string }[] = [
  { id: 'photographs', label: 'Photographs with their hashes' },
  { id: 'pairs', label: 'Before and after, side by side' },
  { id: 'advice', label: 'What the material asks for' },
  { id: 'marks', label: 'Marks and story' },
  { id: 'diligence', label: 'The buyer’s card', hint: 'Your answers in your own words.' },
  { id: 'plan', label: 'Recommended work and its cautions' },
  { id: 'hours', label: 'Hours' },
  { id: 'working', label: 'Working of score and odds' },
  { id: 'prices', label: 'Prices and costs', hint: 'Leave out what a seller need not see.' },
  { id: 'privateNames', label: 'Private people and places', hint: 'Only if they agree.' },
];
/** What a file of photographs alone still hears: names may stand in the words under them. */
const heardByPhotographs: readonly (keyof ReportWishes)[] = ['privateNames'];

/** The block with what was done to it; what the bench wrote down is only asked for here. */
function useBenchCase(of: BlockCase): BenchCase {
  const { store } = useApp();
  const { id } = of.block;
  const [jobs, steps, stints] = [store.jobsOf(id), store.stepsOf(id), store.stintsOf(id)];
  const [repairs, expenses] = [store.repairsOf(id), store.expensesOf(id)];
  const { apart } = useAdviceCase(of);
  return useMemo(
    () => ({ ...of, jobs, steps, stints, repairs, expenses, ...(apart && { apart }) }),
    [...Object.values(of), jobs, steps, stints, repairs, expenses, JSON.stringify(apart)],
  );
}

function Report({ of }: { readonly of: BlockCase }) {
  const { catalogue, now } = useApp();
  const facts = useBenchCase(of);
  const [kindId, setKind] = useState<ReportKindId>('asFound');
  const [extension, setFormat] = useState('pdf');
  const [wishes, setWishes] = useState(usualWishes);
  const kind: ReportKind = reportKinds[kindId];
  const format = formats[extension] ?? Object.values(formats)[0];
  const holds = format?.holds;
  const report = useMemo(() => {
    const moment = now();
    const made = new Date(moment).toISOString();
    const tools = { catalogue, drawing: drawingOf(of.block, catalogue).id, made, today: dayHere(moment) };
    return kind.write(facts, holds ? { ...wishes, photographs: true } : wishes, tools);
  }, [facts, wishes, kind, catalogue, holds]);
  const parts = holds ? report.parts.filter(holds) : report.parts;
  const isEmpty = parts.length === 0;
  const heard = ticks.filter(
    ({ id }) =>
      kind.wishes.includes(id) &&
      (!holds || heardByPhotographs.includes(id)) &&
      (id !== 'pairs' || pairsInCase(of, catalogue).length > 0),
  );
  return (
    <Page
      title="Report"
      under={blockName(of.block, catalogue)}
      back={{ href: to('/block/:id', { id: of.block.id }), label: 'The block' }}
      dock={format && !isEmpty && <SendOff report={report} format={format} />}
      lead={
        <>
          <Section title="Which report">
            <ChoiceField
              label="Report"
              hideLabel
              hint={kind.about}
              options={Object.entries(reportKinds).map(([id, { label }]) => ({ id: id as ReportKindId, label }))}
              value={kindId}
              onChange={(id) => setKind(id ?? kindId)}
            />
            <ChoiceField
              label="File"
              hint={format?.about}
              options={Object.entries(formats).map(([id, { label }]) => ({ id, label }))}
              value={format?.extension ?? null}
              onChange={(id) => setFormat(id ?? extension)}
            />
          </Section>
          {heard.length > 0 && (
            <Section title="What goes in">
              {heard.map(({ id, label, hint }) => (
                <TickField
                  key={id}
                  label={label}
                  hint={hint}
                  value={wishes[id]}
                  onChange={(yes) => setWishes({ ...wishes, [id]: yes })}
                />
              ))}
            </Section>
          )}
        </>
      }
    >
      {isEmpty ? <p>This report has no photographs to hand on.</p> : <ReportView report={{ ...report, parts }} />}
    </Page>
  );
}
