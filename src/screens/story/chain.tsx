import { useState } from 'preact/hooks';
import { pricesOf } from '../../parts/purchase.ts';
import type { BlockCase } from '../../parts/use-case.ts';
import { chainOf } from '../../text/provenance.ts';
import { useApp } from '../../ui/app.ts';
import { TickField } from '../../ui/field.tsx';
import css from './story.module.css';

/** The chain written out, as a museum would print it; and as others would see it. */
export function Chain({ of }: { readonly of: BlockCase }) {
  const { catalogue } = useApp();
  const [hidden, setHidden] = useState(false);
  if (of.statements.length === 0) {
    return <p class={css.hint}>Nothing is known yet of where it has been. Write down even what is only a story.</p>;
  }
  const hasPrivate = of.statements.some(({ partyIsPrivate }) => partyIsPrivate);
  const chain = chainOf(of.statements, catalogue, {
    showPrivate: !hidden,
    ...(hidden ? {} : { prices: pricesOf(of) }),
  });
  return (
    <>
      <blockquote class={css.chain}>{chain}</blockquote>
      <p class={css.hint}>
        Oldest first. A semicolon: passed straight on. A full stop: a gap. In brackets: what it rests on.
      </p>
      {hasPrivate && (
        <TickField
          label="Show it as others would see it"
          hint="Without private names and without the price you paid."
          value={hidden}
          onChange={setHidden}
        />
      )}
    </>
  );
}
