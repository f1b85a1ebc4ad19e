import { useMemo, useState } from 'preact/hooks';
import { blockName } from '../../parts/block-name.ts';
import { drawingOf } from '../../parts/drawing-of.ts';
import { Gone } from '../../parts/gone.tsx';
import { type BlockCase, useCase } from '../../parts/use-case.ts';
import { asFoundReport, type ReportWishes, usualWishes } from '../../reports/as-found.ts';
import { pairsInCase } from '../../reports/pairs.ts';
import { useApp } from '../../ui/app.ts';
import { TickField } from '../../ui/field.tsx';
import { Page, Section } from '../../ui/page.tsx';
import { type Params, to } from '../../ui/route.ts';
import { ReportView } from './report-view.tsx';
import { SendOff } from './send-off.tsx';

export default function ReportScreen({ params }: { params: Params }) {
  const of = useCase(params.id ?? '');
  return of ? <Report of={of} /> : <Gone />;
}

const ticks: readonly { id: keyof ReportWishes; label: string; hint?: string }[] = [
  { id: 'photographs', label: 'Photographs with their hashes' },
  { id: 'pairs', label: 'Before and after, side by side' },
  { id: 'plan', label: 'Recommended work and its cautions' },
  { id: 'working', label: 'Working of score and odds' },
  { id: 'prices', label: 'Prices and the limit', hint: 'Leave out what a seller need not see.' },
  { id: 'privateNames', label: 'Private people and places', hint: 'Only if they agree.' },
];

function Report({ of }: { readonly of: BlockCase }) {
  const { catalogue, now } = useApp();
  const [wishes, setWishes] = useState(usualWishes);
  const report = useMemo(
    () => asFoundReport(of, wishes, catalogue, drawingOf(of.block, catalogue).id, new Date(now()).toISOString()),
    [
      of.block,
      of.assessment,
      of.photos,
      of.photoMarks,
      of.alignments,
      of.marks,
      of.statements,
      of.sale,
      of.settings,
      wishes,
      catalogue,
    ],
  );
  return (
    <Page
      title="Report as found"
      under={blockName(of.block, catalogue)}
      back={{ href: to('/block/:id', { id: of.block.id }), label: 'The block' }}
      dock={<SendOff report={report} />}
      aside={
        <Section title="What goes in">
          {ticks
            .filter(({ id }) => id !== 'pairs' || pairsInCase(of, catalogue).length > 0)
            .map(({ id, label, hint }) => (
              <TickField
                key={id}
                label={label}
                hint={hint}
                value={wishes[id]}
                onChange={(yes) => setWishes({ ...wishes, [id]: yes })}
              />
            ))}
        </Section>
      }
    >
      <ReportView report={report} />
    </Page>
  );
}
