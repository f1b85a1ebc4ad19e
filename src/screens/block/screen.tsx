import { useState } from 'preact/hooks';
import { entry } from '../../core/catalogue.ts';
import { pathOf } from '../../core/path.ts';
import { marksOf } from '../../core/report-marks.ts';
import { BlockFigure } from '../../drawings/block-figure.tsx';
import { reportMarks } from '../../drawings/report-marks.ts';
import { useActions } from '../../parts/actions.ts';
import { AnswerCard } from '../../parts/answer.tsx';
import { Arrival } from '../../parts/arrival.tsx';
import { blockName } from '../../parts/block-name.ts';
import { CopyPlan, PathChoice } from '../../parts/copy-path.tsx';
import { drawingOf } from '../../parts/drawing-of.ts';
import { FindingSheet } from '../../parts/finding-sheet.tsx';
import { Gone } from '../../parts/gone.tsx';
import { MoneySpent } from '../../parts/money-spent.tsx';
import { OtherWords } from '../../parts/other-words.tsx';
import { PhotoStrip } from '../../parts/photo-strip.tsx';
import { PlaceField } from '../../parts/place-field.tsx';
import { PlanList } from '../../parts/plan-list.tsx';
import { PriceFields } from '../../parts/price-fields.tsx';
import { ReadyChecks } from '../../parts/ready-checks.tsx';
import { type BlockCase, useCase } from '../../parts/use-case.ts';
import { small } from '../../text/conditions.ts';
import { list } from '../../text/format.ts';
import { useApp } from '../../ui/app.ts';
import { ActionRow, Button } from '../../ui/button.tsx';
import { TextField } from '../../ui/field.tsx';
import { Page, Section } from '../../ui/page.tsx';
import { type Params, to } from '../../ui/route.ts';
import { go } from '../../ui/router.tsx';
import css from './block.module.css';
import { Findings } from './findings.tsx';

export default function BlockScreen({ params }: { params: Params }) {
  const of = useCase(params.id ?? '');
  return of ? <BlockPage of={of} /> : <Gone blockId={params.id} />;
}

function BlockPage({ of }: { readonly of: BlockCase }) {
  const { catalogue } = useApp();
  const actions = useActions();
  const { block, sale } = of;
  const [openFinding, setOpenFinding] = useState<string>();
  const at = (path: string): string => to(`/block/:id${path}`, { id: block.id });
  const type = entry(catalogue.types, block.blockType);
  const materials = block.materials.map((id) => small(entry(catalogue.materials, id)?.term ?? id));
  const copies = pathOf(block, of.assessment).path === 'copy';
  const isHome = block.place !== 'lookingAt';
  return (
    <Page
      title={blockName(block, catalogue)}
      under={
        <>
          {[type?.term ?? 'Type not said', list(materials) || 'material not said'].join(', ')}
          {sale && (
            <>
              {' · '}
              <a href={to('/sale/:id', { id: sale.id })}>{sale.title || 'Unnamed sale'}</a>
              {!isHome && (
                <>
                  {' · '}
                  <a href={to('/haggle/:id', { id: block.id })}>Haggle</a>
                </>
              )}
            </>
          )}
        </>
      }
      back={{ href: '#/', label: 'Shelf' }}
      dock={
        <ActionRow>
          <Button look="main" wide href={at('/walk')}>
            Walk round it
          </Button>
          <Button href={at('/report')}>Report</Button>
        </ActionRow>
      }
      lead={
        <Section title="The answer">
          <Arrival of={of} />
          <AnswerCard of={of} onWalk={at('/walk')} />
        </Section>
      }
      aside={
        <>
          {(isHome || of.offers.some(({ what }) => what === 'paid')) && (
            <Section title="Money spent">
              <MoneySpent of={of} />
            </Section>
          )}
          <Section title="Prices">
            <PriceFields of={of} />
          </Section>
          <Section title="About it" aside={<a href={at('/look')}>Type, wood, parts</a>}>
            <TextField
              label="Name"
              value={block.name}
              placeholder={type?.term}
              onChange={(name) => actions.setBlock(block, { name }, 'the name')}
            />
            <OtherWords record={block} path="name" />
            <TextField
              label="Number"
              hint="Your own, or the lot’s"
              value={block.objectNumber}
              onChange={(objectNumber) => actions.setBlock(block, { objectNumber }, 'the number')}
            />
            <OtherWords record={block} path="objectNumber" />
            <PlaceField of={of} />
            <TextField
              label="Note"
              lines={3}
              value={block.note}
              onChange={(note) => actions.setBlock(block, { note }, 'a note')}
            />
            <OtherWords record={block} path="note" />
            <RemoveBlock of={of} />
          </Section>
        </>
      }
    >
      <Section>
        <BlockFigure
          drawing={drawingOf(block, catalogue)}
          marks={reportMarks(marksOf(of.assessment, catalogue))}
          zoneName={(id) => entry(catalogue.zones, id)?.term ?? id}
          label="Damage map"
        />
        <Findings of={of} onOpen={setOpenFinding} />
      </Section>
      <Section title="Photographs">
        <PhotoStrip of={of} />
      </Section>
      <Section title="Story and marks" aside={<a href={at('/story')}>Write</a>}>
        <Story of={of} />
      </Section>
      <Section title="What it would take">
        <PathChoice of={of} />
        {copies ? <CopyPlan of={of} /> : <PlanList of={of} />}
      </Section>
      {isHome && (
        <Section title="Before first use">
          <ReadyChecks of={of} />
        </Section>
      )}
      {openFinding && <FindingSheet of={of} findingId={openFinding} onClose={() => setOpenFinding(undefined)} />}
    </Page>
  );
}

function Story({ of }: { readonly of: BlockCase }) {
  const { catalogue } = useApp();
  return (
    <>
      {of.marks.length === 0 && of.statements.length === 0 && (
        <p class={css.counts}>No marks or story written down yet.</p>
      )}
      <ul class={css.story}>
        {of.marks.map((mark) => (
          <li key={mark.id}>
            {entry(catalogue.marks, mark.kind)?.term ?? mark.kind}: <b>{mark.text || '(not read)'}</b>
          </li>
        ))}
      </ul>
      {of.statements.length > 0 && (
        <p>
          {of.statements.length} {of.statements.length === 1 ? 'step' : 'steps'} of its history written down.
        </p>
      )}
    </>
  );
}

/** The one thing asked twice about: a block with photographs. Undo brings it back all the same. */
function RemoveBlock({ of }: { readonly of: BlockCase }) {
  const actions = useActions();
  const [asking, setAsking] = useState(false);
  const remove = (): void => {
    actions.removeBlock(of.block);
    go('#/', { replace: true });
  };
  if (of.photos.length === 0 || asking) {
    return (
      <p>
        {asking && <>It has {of.photos.length} photographs. </>}
        <Button look="quiet" onPress={remove}>
          {asking ? 'Yes, remove it' : 'Remove this block'}
        </Button>
        {asking && (
          <Button look="quiet" onPress={() => setAsking(false)}>
            Keep it
          </Button>
        )}
      </p>
    );
  }
  return (
    <p>
      <Button look="quiet" onPress={() => setAsking(true)}>
        Remove this block
      </Button>
    </p>
  );
}
