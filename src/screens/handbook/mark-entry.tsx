import { entry } from '../../core/catalogue.ts';
import { SourceLine } from '../../parts/source-line.tsx';
import { useApp } from '../../ui/app.ts';
import { Section } from '../../ui/page.tsx';
import { to } from '../../ui/route.ts';
import css from './handbook.module.css';
import { Cautions, Facts } from './handbook-parts.tsx';

/** A kind of mark: what it looks like, what it tells, how far to trust it. */
export function MarkEntry({ id }: { readonly id: string }) {
  const { catalogue } = useApp();
  const mark = entry(catalogue.marks, id);
  if (!mark) return null;
  return (
    <>
      <Cautions lines={['Photograph it before anything else. Never sand, oil or wax over a mark.']} />
      <Section>
        <p class={css.lead}>{mark.tells}</p>
        <Facts
          rows={[
            ['Looks like', mark.pattern],
            ['As evidence', mark.weight],
            ['Personal', mark.mayBePersonal && 'History if the person is dead, personal data if they may be living.'],
          ]}
        />
        {mark.isSize && (
          <p>
            A stamp alone is ambiguous:{' '}
            <a href={to('/handbook/calculators/:calculator', { calculator: 'stamp' })}>read it against the tape</a>.
          </p>
        )}
        <SourceLine source={mark.source} />
      </Section>
    </>
  );
}
