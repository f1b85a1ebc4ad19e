import { entry } from '../../core/catalogue.ts';
import { GradeBadge } from '../../parts/grade-badge.tsx';
import type { BlockCase } from '../../parts/use-case.ts';
import { useNames } from '../../parts/use-names.ts';
import { measured } from '../../text/format.ts';
import { useApp } from '../../ui/app.ts';
import css from './block.module.css';

/** What was found, by number, each to be opened; and how much was looked for besides. */
export function Findings({ of, onOpen }: { readonly of: BlockCase; readonly onOpen: (id: string) => void }) {
  const { catalogue } = useApp();
  const { kindTerm, zoneTerm } = useNames(of);
  const { graded, unscored, kinds } = of.assessment;
  const noneSeen = kinds.filter(({ state }) => state === 'noneSeen').length;
  const notLooked = kinds.filter(({ state }) => state === 'notLooked').length;
  return (
    <>
      <ul class={css.findings}>
        {graded.map(({ finding, grade }) => (
          <li key={finding.id}>
            <button type="button" onClick={() => onOpen(finding.id)}>
              <b class="figures">{finding.number}</b>
              <span>
                {kindTerm(finding.kind)}
                <small>
                  {zoneTerm(finding.zone)}
                  {finding.part !== null && `, part ${finding.part}`}
                  {entry(catalogue.damage, finding.kind)
                    ?.asks.flatMap((ask) => {
                      const value = finding.answers[ask.id];
                      return ask.type === 'measure' && ask.unit !== 'level' && typeof value === 'number'
                        ? [
                            ` · ${ask.label.toLocaleLowerCase('en-GB')}: ${measured(value, ask.unit, of.settings.units)}`,
                          ]
                        : [];
                    })
                    .join('')}
                </small>
              </span>
              <GradeBadge grade={grade} />
            </button>
          </li>
        ))}
        {unscored.map((finding) => (
          <li key={finding.id}>
            <p>
              <b class="figures">{finding.number}</b> {kindTerm(finding.kind)}: kept, not scored.
            </p>
          </li>
        ))}
      </ul>
      <p class={css.counts}>
        {graded.length === 0 && 'Nothing found so far. '}
        {noneSeen} {noneSeen === 1 ? 'kind' : 'kinds'} looked for and not seen,{' '}
        {notLooked === 0 ? 'none left to look for' : `${notLooked} not looked for yet`}.
      </p>
    </>
  );
}
