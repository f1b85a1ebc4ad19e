import type { GlossaryEntry, GlossarySection } from '../../text/glossary.ts';
import { to } from '../../ui/route.ts';
import css from './handbook.module.css';

/** Entries as links: term, other names, what it is; with `sections`, where each stands. */
export function EntryList({
  entries,
  sections,
}: {
  readonly entries: readonly GlossaryEntry[];
  readonly sections?: readonly GlossarySection[];
}) {
  const titleOf = (section: string): string | undefined => sections?.find(({ id }) => id === section)?.title;
  return (
    <ul class={css.list}>
      {entries.map((entry) => (
        <li key={`${entry.section} ${entry.id}`}>
          <a href={to('/handbook/:section/:entry', { section: entry.section, entry: entry.id })}>
            <b>{entry.term}</b>
            {sections && <i> {titleOf(entry.section)}</i>}
            {entry.aliases.length > 0 && <small>Also {entry.aliases.join(', ')}</small>}
            <small>{entry.text}</small>
          </a>
        </li>
      ))}
    </ul>
  );
}
