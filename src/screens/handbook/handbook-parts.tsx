import type { ComponentChildren } from 'preact';
import { handbookAddress } from '../../parts/handbook-link.tsx';
import type { SectionId } from '../../text/glossary.ts';
import css from './handbook.module.css';

/** What can hurt, before anything else is said. */
export function Cautions({ lines }: { readonly lines: readonly ComponentChildren[] }) {
  if (lines.length === 0) return null;
  return (
    <section class={css.cautions} aria-label="Cautions">
      <ul>
        {lines.map((line, index) => (
          // The lines of an entry never change while it is shown.
          <li key={index}>{line}</li>
        ))}
      </ul>
    </section>
  );
}

/** Facts as term and value; what is empty is left out. */
export function Facts({ rows }: { readonly rows: readonly (readonly [string, ComponentChildren])[] }) {
  return (
    <dl class={css.facts}>
      {rows.flatMap(([term, value]) =>
        value === '' || value === null || value === undefined || value === false
          ? []
          : [<dt key={term}>{term}</dt>, <dd key={`${term} value`}>{value}</dd>],
      )}
    </dl>
  );
}

/** Terms of other entries, each leading there. */
export function Links({
  section,
  entries,
}: {
  readonly section: SectionId;
  readonly entries: readonly { readonly id: string; readonly term: string; readonly why?: ComponentChildren }[];
}) {
  return (
    <ul class={css.links}>
      {entries.map(({ id, term, why }) => (
        <li key={id}>
          <a href={handbookAddress(section, id)}>{term}</a>
          {why && <span>{why}</span>}
        </li>
      ))}
    </ul>
  );
}
