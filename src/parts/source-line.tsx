import { entry, type Source } from '../core/catalogue.ts';
import { useApp } from '../ui/app.ts';
import css from './source-line.module.css';

const kindWords: Record<Source['kind'], string> = {
  published: 'Published',
  estimate: 'Trade estimate',
  practice: 'Common practice, no source',
  memory: 'From memory, not looked up',
  own: 'Our own rule',
};

/** Where a figure or statement comes from, its numbered sources written out. */
export function SourceLine({ source }: { readonly source: Source }) {
  const { catalogue } = useApp();
  const numbered = [...new Set(source.text.match(/\bS\d{2}\b/g) ?? [])].flatMap((id) => {
    const text = entry(catalogue.sources, id);
    return text ? [{ id, text }] : [];
  });
  return (
    <div class={css.source}>
      <p>
        <b>{kindWords[source.kind]}.</b> {source.text}
      </p>
      {numbered.map(({ id, text }) => (
        <p key={id}>
          {id}: {text}
        </p>
      ))}
    </div>
  );
}
