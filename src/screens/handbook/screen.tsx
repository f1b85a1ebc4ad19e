import { signal } from '@preact/signals';
import { findInGlossary } from '../../text/glossary.ts';
import { TextField } from '../../ui/field.tsx';
import { Page, Section } from '../../ui/page.tsx';
import { to } from '../../ui/route.ts';
import { calculators } from './all-calculators.ts';
import { EntryList } from './entry-list.tsx';
import css from './handbook.module.css';
import { useGlossary } from './use-glossary.ts';

/** Kept while the app is open: one comes back from an entry to the same list. */
const query = signal('');
const MOST = 60;

export default function HandbookScreen() {
  const sections = useGlossary();
  const found = findInGlossary(sections, query.value);
  const asked = query.value.trim() !== '';
  return (
    <Page
      title="Handbook"
      aside={
        <Section
          title="Calculators"
          aside={
            <a class={css.more} href={to('/handbook/calculators')}>
              All on one page
            </a>
          }
        >
          <ul class={css.list}>
            {calculators.map(({ id, title, about }) => (
              <li key={id}>
                <a href={to('/handbook/calculators/:calculator', { calculator: id })}>
                  <b>{title}</b>
                  <small>{about}</small>
                </a>
              </li>
            ))}
          </ul>
        </Section>
      }
    >
      <TextField
        label="Look up a word"
        hint="Also by another name for it: worm holes, sinamay, linden."
        value={query.value}
        onChange={(words) => {
          query.value = words;
        }}
      />
      <p role="status" class={css.count}>
        {asked && (found.length === 0 ? 'Nothing under that word.' : `${found.length} found`)}
      </p>
      {asked ? (
        <EntryList entries={found.slice(0, MOST)} sections={sections} />
      ) : (
        <ul class={css.list}>
          {sections.map(({ id, title, about, entries }) => (
            <li key={id}>
              <a href={to('/handbook/:section', { section: id })}>
                <b>
                  {title} <span class="figures">{entries.length}</span>
                </b>
                <small>{about}</small>
              </a>
            </li>
          ))}
        </ul>
      )}
    </Page>
  );
}
