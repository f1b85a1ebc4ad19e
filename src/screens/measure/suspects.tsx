import { woodKindOf } from '../../core/advice/wood-of-block.ts';
import { rankBorers } from '../../core/physics/borer-ranking.ts';
import type { BlockCase } from '../../parts/use-case.ts';
import { suspectWords } from '../../text/advice/borers.ts';
import { useApp } from '../../ui/app.ts';
import css from './measure.module.css';

const SHOWN = 4;

/** Who makes holes of this size: an order to look by, never one name. */
export function Suspects({
  of,
  holeMm,
  inLine,
}: {
  readonly of: BlockCase;
  readonly holeMm: number;
  readonly inLine: boolean;
}) {
  const { catalogue } = useApp();
  const wood = woodKindOf({ setting: of.assessment.setting, catalogue });
  const { ranked } = rankBorers({
    holeMm,
    ...(inLine ? { followsPinningLine: true } : {}),
    ...(wood === undefined ? {} : { wood }),
  });
  return (
    <details class={css.more}>
      <summary>Who makes holes of this size</summary>
      <dl>
        {ranked.slice(0, SHOWN).map((suspect) => {
          const [name, words] = suspectWords(suspect);
          return [<dt key={name}>{name}</dt>, <dd key={`${name} words`}>{words}</dd>];
        })}
      </dl>
      <p class={css.small}>
        By size and wood alone. Sizes overlap; dust, shape and wood say more: the finding asks for them.
      </p>
    </details>
  );
}
