import { entry } from '../../core/catalogue.ts';
import { type ShapeOnShelf, shelfOf } from '../../core/shelf-gaps.ts';
import { useShelfHeld } from '../../parts/use-shelf-held.ts';
import { UsualSizes } from '../../parts/usual-sizes.tsx';
import { list } from '../../text/format.ts';
import { useApp } from '../../ui/app.ts';
import { Page, Section } from '../../ui/page.tsx';
import { to } from '../../ui/route.ts';
import css from './gaps.module.css';

/** Shapes by sizes: what stands on the shelf and what is missing of the sizes one works in. */
export default function GapsScreen() {
  const { catalogue } = useApp();
  const { held, sizes, isSized } = useShelfHeld(false);
  const shelf = shelfOf(held, sizes, isSized);
  const term = (id: string): string => entry(catalogue.types, id)?.term ?? id;
  return (
    <Page title="What the shelf lacks" back={{ href: to('/sales'), label: 'Sales' }}>
      <Section title="Head sizes you work in">
        <UsualSizes hideLabel />
      </Section>
      <Section title="Shapes by sizes">
        {sizes.length === 0 || shelf.length === 0 ? (
          <p class={css.hint}>
            {sizes.length === 0
              ? 'Say which sizes you work in, and the gaps show.'
              : 'No block with a head size stands on your shelf yet. What you only look at does not count.'}
          </p>
        ) : (
          <ul class={css.shapes}>
            {shelf.map((shape) => (
              <Shape key={shape.blockType} shape={shape} sizes={sizes} term={term(shape.blockType)} />
            ))}
          </ul>
        )}
      </Section>
    </Page>
  );
}

function Shape({
  shape,
  sizes,
  term,
}: {
  readonly shape: ShapeOnShelf;
  readonly sizes: readonly number[];
  readonly term: string;
}) {
  const { counts, others, missing } = shape;
  return (
    <li>
      <b>{term}</b>
      <small>
        {missing.length === 0 ? 'complete' : `lacks ${list(missing.map(String))}`}
        {others > 0 && `; ${others} of another size or not measured`}
      </small>
      <ol class={css.counts} aria-label={`${term}, by size`}>
        {sizes.map((size, place) => (
          <li key={size} data-missing={counts[place] === 0 || undefined}>
            <span class="figures">{size}</span>
            <b class="figures">{counts[place] === 0 ? 'none' : counts[place]}</b>
          </li>
        ))}
      </ol>
    </li>
  );
}
