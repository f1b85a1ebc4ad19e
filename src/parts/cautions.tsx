import { CAUTIONS, type CautionId } from '../core/physics/cautions.ts';
import { opening } from '../text/format.ts';
import css from './cautions.module.css';

/** What the table says of a caution that needs no occasion. */
const ALWAYS: readonly string[] = ['always', 'any'];

/** What can hurt and when, what to do, and whose word goes before ours. Nothing is drawn for an empty list. */
export function Cautions({ ids }: { readonly ids: readonly CautionId[] }) {
  if (ids.length === 0) return null;
  return (
    <ul class={css.cautions} aria-label="Cautions">
      {ids.map((id) => {
        const { hazard, when, line, deferTo } = CAUTIONS[id];
        return (
          <li key={id}>
            <b>{opening(hazard)}</b>
            {ALWAYS.includes(when) ? '' : ` (${when})`}: {line} <span>Final word: {deferTo}.</span>
          </li>
        );
      })}
    </ul>
  );
}
