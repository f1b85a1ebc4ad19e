import { Fragment } from 'preact';
import type { Sale } from '../core/records.ts';
import { useApp } from '../ui/app.ts';
import { TextField } from '../ui/field.tsx';
import { useActions } from './actions.ts';
import css from './diligence.module.css';
import { HandbookLink } from './handbook-link.tsx';
import { OtherWords } from './other-words.tsx';

/** The buyer’s card: a few lines, one minute, kept with the sale. */
export function DiligenceFields({ sale }: { readonly sale: Sale }) {
  const { catalogue } = useApp();
  const actions = useActions();
  return (
    <>
      <p class={css.about}>
        One minute before paying. A price far too low, no name, cash only, no receipt: stop.{' '}
        <HandbookLink section="law" entry="Due diligence">
          Why these questions
        </HandbookLink>
      </p>
      {catalogue.dueDiligence.map(({ id, ask }) => (
        <Fragment key={id}>
          <TextField
            label={ask}
            value={sale.diligence[id] ?? ''}
            onChange={(answer) => actions.setSale(sale, { diligence: { [id]: answer === '' ? null : answer } })}
          />
          <OtherWords record={sale} path={`diligence.${id}`} />
        </Fragment>
      ))}
    </>
  );
}

/** The card as it was filled in; an unanswered question says so. */
export function DiligenceCard({ sale }: { readonly sale: Sale }) {
  const { catalogue } = useApp();
  return (
    <dl class={css.card}>
      {catalogue.dueDiligence.flatMap(({ id, ask }) => {
        const answer = sale.diligence[id]?.trim();
        return [
          <dt key={id}>{ask}</dt>,
          <dd key={`${id} answer`} data-open={answer ? undefined : true}>
            {answer || 'not answered'}
          </dd>,
        ];
      })}
    </dl>
  );
}
