import { CAUTIONS, type CautionId } from '../core/physics/cautions.ts';
import css from './cautions.module.css';

/** What can hurt, who knows better, before anything else is said. Nothing is drawn for an empty list. */
export function Cautions({ ids }: { readonly ids: readonly CautionId[] }) {
  if (ids.length === 0) return null;
  return (
    <ul class={css.cautions} aria-label="Cautions">
      {ids.map((id) => {
        const { line, deferTo } = CAUTIONS[id];
        return (
          <li key={id}>
            {line} <span>Before this app: {deferTo}.</span>
          </li>
        );
      })}
    </ul>
  );
}
