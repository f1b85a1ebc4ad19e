import { Arrival } from '../../parts/arrival.tsx';
import { blockName } from '../../parts/block-name.ts';
import { DiligenceCard } from '../../parts/diligence-fields.tsx';
import { Gone } from '../../parts/gone.tsx';
import { MarksEditor } from '../../parts/marks-editor.tsx';
import { type BlockCase, useCase } from '../../parts/use-case.ts';
import { useApp } from '../../ui/app.ts';
import { Page, Section } from '../../ui/page.tsx';
import { type Params, to } from '../../ui/route.ts';
import { Chain } from './chain.tsx';
import { MadeFields } from './made-fields.tsx';
import { Offers } from './offers.tsx';
import { Steps } from './steps.tsx';
import css from './story.module.css';

export default function StoryScreen({ params }: { params: Params }) {
  const of = useCase(params.id ?? '');
  return of ? <Story of={of} /> : <Gone />;
}

function Story({ of }: { readonly of: BlockCase }) {
  const { catalogue } = useApp();
  const { sale } = of;
  return (
    <Page
      title="Story and marks"
      under={blockName(of.block, catalogue)}
      back={{ href: to('/block/:id', { id: of.block.id }), label: 'The block' }}
      aside={
        <>
          <Section title="Marks">
            <MarksEditor of={of} />
          </Section>
          <Section title="Offers and prices">
            <Arrival of={of} />
            <Offers of={of} />
          </Section>
          <Section title="Before you paid">
            {sale ? (
              <>
                <p class={css.sale}>
                  <a href={to('/sale/:id', { id: sale.id })}>{sale.title.trim() || 'the unnamed sale'}</a>
                </p>
                <DiligenceCard sale={sale} />
              </>
            ) : (
              <p class={css.hint}>
                No sale is named for this block, so there is no card. <a href={to('/sales')}>Write one down</a>.
              </p>
            )}
          </Section>
        </>
      }
    >
      <Section title="Where it has been">
        <Chain of={of} />
        <Steps of={of} />
      </Section>
      <Section title="Maker and date">
        <MadeFields of={of} />
      </Section>
    </Page>
  );
}
