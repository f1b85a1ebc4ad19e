import type { ComponentType } from 'preact';
import type { SectionId } from '../../text/glossary.ts';
import { glossaryOf } from '../../text/glossary.ts';
import { useApp } from '../../ui/app.ts';
import { Page, Section } from '../../ui/page.tsx';
import { type Params, to } from '../../ui/route.ts';
import { DamageEntry } from './damage-entry.tsx';
import { MarkEntry } from './mark-entry.tsx';
import { MaterialEntry } from './material-entry.tsx';
import { NotThere } from './not-there.tsx';
import { PlainEntry } from './plain-entry.tsx';
import { TreatmentEntry } from './treatment-entry.tsx';
import { TypeEntry } from './type-entry.tsx';

const pages: Partial<Record<SectionId, ComponentType<{ id: string }>>> = {
  damage: DamageEntry,
  treatments: TreatmentEntry,
  materials: MaterialEntry,
  types: TypeEntry,
  marks: MarkEntry,
};

export default function EntryScreen({ params }: { params: Params }) {
  const { catalogue } = useApp();
  const sections = glossaryOf(catalogue, { retired: true });
  const section = sections.find(({ id }) => id === params.section);
  const entry = section?.entries.find(({ id }) => id === params.entry);
  if (!section || !entry) return <NotThere />;
  const Entry = pages[section.id];
  return (
    <Page
      title={entry.term}
      back={{ href: to('/handbook/:section', { section: section.id }), label: section.title }}
      under={entry.aliases.length > 0 && `Also ${entry.aliases.join(', ')}`}
    >
      {Entry ? (
        <Entry id={entry.id} />
      ) : (
        <Section>
          <PlainEntry entry={entry} />
        </Section>
      )}
    </Page>
  );
}
