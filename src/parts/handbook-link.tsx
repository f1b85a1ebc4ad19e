import type { ComponentChildren } from 'preact';
import type { SectionId } from '../text/glossary.ts';
import { to } from '../ui/route.ts';
import css from './handbook-link.module.css';

/** Address of a handbook entry. */
export const handbookAddress = (section: SectionId, entry: string): string =>
  to('/handbook/:section/:entry', { section, entry });

/** “What is this?”: from a word to its entry in the handbook. */
export function HandbookLink({
  section,
  entry,
  children = 'What is this?',
}: {
  readonly section: SectionId;
  readonly entry: string;
  readonly children?: ComponentChildren;
}) {
  return (
    <a class={css.link} href={handbookAddress(section, entry)}>
      {children}
    </a>
  );
}
