import type { SectionId } from '../../text/glossary.ts';
import { Page, Section } from '../../ui/page.tsx';
import { type Params, to } from '../../ui/route.ts';
import { EntryList } from './entry-list.tsx';
import css from './handbook.module.css';
import { NotThere } from './not-there.tsx';
import { PlainEntry } from './plain-entry.tsx';
import { useGlossary } from './use-glossary.ts';

/** Sections whose entries have a page of their own; the others are read through. */
const WITH_PAGES: readonly SectionId[] = ['damage', 'treatments', 'materials', 'types', 'marks'];

export default function SectionScreen({ params }: { params: Params }) {
  const section = useGlossary().find(({ id }) => id === params.section);
  if (!section) return <NotThere />;
  const { id, title, about, entries } = section;
  return (
    <Page title={title} back={{ href: to('/handbook'), label: 'Handbook' }} under={about}>
      <Section>
        {WITH_PAGES.includes(id) ? (
          <EntryList entries={entries} />
        ) : (
          <ul class={css.read}>
            {entries.map((entry) => (
              <li key={entry.id}>
                <PlainEntry entry={entry} heading />
              </li>
            ))}
          </ul>
        )}
      </Section>
    </Page>
  );
}
