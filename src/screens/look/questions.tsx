import { useState } from 'preact/hooks';
import { entry, SHAPE_VALUES } from '../../core/catalogue.ts';
import { BlockFigure } from '../../drawings/block-figure.tsx';
import { useActions } from '../../parts/actions.ts';
import { AnswerDock } from '../../parts/answer.tsx';
import { drawingOf } from '../../parts/drawing-of.ts';
import { Gone } from '../../parts/gone.tsx';
import { PartsFields } from '../../parts/parts-fields.tsx';
import { PhotoNotices } from '../../parts/photo-notice.tsx';
import { type BlockCase, useCase } from '../../parts/use-case.ts';
import { useForecast, useForecastCase } from '../../parts/use-forecast.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import { ChoiceField, MoneyField, SelectField, TextField } from '../../ui/field.tsx';
import { Page, Section } from '../../ui/page.tsx';
import { type Params, to } from '../../ui/route.ts';
import css from './look.module.css';

export default function QuestionsScreen({ params }: { params: Params }) {
  const of = useCase(params.id ?? '');
  return of ? <Questions of={of} /> : <Gone />;
}

/** Four big questions, all optional; each answer narrows the one below at once. */
function Questions({ of }: { readonly of: BlockCase }) {
  const { catalogue, store } = useApp();
  const actions = useActions();
  const { block } = of;
  const answer = useForecast(useForecastCase(of), block.id);
  const sales = store.all('sale').value;
  return (
    <Page
      title="What is it?"
      back={{ href: to('/block/:id', { id: block.id }), label: 'The block' }}
      quiet
      dock={
        <>
          <AnswerDock of={of} {...answer} />
          <Button look="main" wide href={to('/block/:id/walk', { id: block.id })}>
            Walk round it
          </Button>
        </>
      }
      aside={
        <>
          <Section title="What do they ask?">
            <MoneyField
              label="Price asked"
              currency={block.currency}
              value={block.priceAsked}
              onChange={(priceAsked) => actions.setBlock(block, { priceAsked }, 'the price asked')}
            />
            {sales.length > 0 && (
              <SelectField
                label="Where"
                value={block.saleId ?? ''}
                options={[
                  { id: '', label: 'No sale: a ticket price' },
                  ...sales.map(({ id, title }) => ({ id, label: title || 'Unnamed sale' })),
                ]}
                onChange={(saleId) => actions.setBlock(block, { saleId: saleId || null }, 'the sale')}
              />
            )}
            <TextField
              label="Ticket or lot number"
              value={block.objectNumber}
              onChange={(objectNumber) => actions.setBlock(block, { objectNumber }, 'the number')}
            />
          </Section>
          <Section title="Is it all there?">
            <PartsFields of={of} />
            <ChoiceField
              label="How common is the shape?"
              none
              value={block.shapeValue}
              options={SHAPE_VALUES.map((id) => ({
                id,
                label: catalogue.shapeValues[id].term,
                text: catalogue.shapeValues[id].text,
              }))}
              onChange={(shapeValue) => actions.setBlock(block, { shapeValue }, 'how common the shape is')}
            />
          </Section>
        </>
      }
    >
      <PhotoNotices of={of} photos={of.photos} />
      <Section title="Which shape is nearest?">
        <Types of={of} />
      </Section>
      <Section title="What is it made of?">
        <Materials of={of} />
      </Section>
    </Page>
  );
}

/** The type silhouettes, all at once once nothing is chosen; the chosen one alone after. */
function Types({ of }: { readonly of: BlockCase }) {
  const { catalogue } = useApp();
  const actions = useActions();
  const [all, setAll] = useState(of.block.blockType === null);
  const chosen = of.block.blockType;
  const shown = Object.entries(catalogue.types).filter(([id]) => all || id === chosen);
  return (
    <>
      <ul class={css.types}>
        {shown.map(([id, type]) => (
          <li key={id}>
            <button
              type="button"
              aria-pressed={id === chosen}
              onClick={() => {
                actions.setBlock(of.block, { blockType: id === chosen ? null : id }, 'the type');
                setAll(id === chosen);
              }}
            >
              <TypeFigure id={id} />
              {type.term}
            </button>
          </li>
        ))}
      </ul>
      {!all && (
        <Button look="quiet" onPress={() => setAll(true)}>
          Another shape
        </Button>
      )}
      {chosen && <p class={css.hint}>{entry(catalogue.types, chosen)?.purpose}</p>}
    </>
  );
}

function TypeFigure({ id }: { readonly id: string }) {
  const { catalogue } = useApp();
  const drawing = drawingOf({ blockType: id, materials: [] }, catalogue);
  return <BlockFigure drawing={drawing} view={drawing.face} zoneName={(zone) => zone} thumbnail />;
}

/** Woods, which most blocks are of, and a tap away what else there is; more than one may be ticked. */
function Materials({ of }: { readonly of: BlockCase }) {
  const { catalogue } = useApp();
  const actions = useActions();
  const { materials } = of.block;
  const [all, setAll] = useState(false);
  const shown = Object.entries(catalogue.materials).filter(
    ([id, { group }]) => all || group === 'wood' || materials.includes(id),
  );
  return (
    <>
      <ul class={css.materials}>
        {shown.map(([id, material]) => (
          <li key={id}>
            <button
              type="button"
              aria-pressed={materials.includes(id)}
              onClick={() =>
                actions.setBlock(
                  of.block,
                  {
                    materials: materials.includes(id) ? materials.filter((other) => other !== id) : [...materials, id],
                  },
                  'the material',
                )
              }
            >
              {material.term}
            </button>
          </li>
        ))}
      </ul>
      {!all && (
        <Button look="quiet" onPress={() => setAll(true)}>
          Another material
        </Button>
      )}
      {materials.map((id) => (
        <p key={id} class={css.hint}>
          {entry(catalogue.materials, id)?.recognise}
        </p>
      ))}
    </>
  );
}
