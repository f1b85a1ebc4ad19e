import { SourceLine } from '../../parts/source-line.tsx';
import type { GlossaryEntry } from '../../text/glossary.ts';
import { useApp } from '../../ui/app.ts';

/** An entry that is a sentence or two; law with its source and its warning. A numbered line needs no heading. */
export function PlainEntry({ entry, heading = false }: { readonly entry: GlossaryEntry; readonly heading?: boolean }) {
  const { catalogue } = useApp();
  const law = entry.section === 'law' ? catalogue.law.find(({ topic }) => topic === entry.id) : undefined;
  const isNumbered = /\d$/.test(entry.id) && !/^grade/.test(entry.id);
  return (
    <>
      {heading && !isNumbered && <h2>{entry.term}</h2>}
      <p>{entry.text}</p>
      {law && <SourceLine source={law.source} />}
    </>
  );
}
