import type { Due } from '../core/due.ts';
import { dueWhen, dueWords } from '../text/due.ts';
import { useApp } from '../ui/app.ts';
import { to } from '../ui/route.ts';
import { blockName } from './block-name.ts';
import css from './due-list.module.css';

/** What falls due, soonest first: what, on which block, when; what was missed says so. Each line leads to where it is answered. */
export function DueList({ dues }: { readonly dues: readonly Due[] }) {
  const { store, catalogue } = useApp();
  return (
    <ol class={css.dues}>
      {dues.map((due) => {
        const block = store.get('block', due.blockId);
        return (
          <li key={due.key} data-late={due.late || undefined}>
            <a href={to(due.kind === 'waitEnds' ? '/block/:id' : '/block/:id/quarantine', { id: due.blockId })}>
              <b>{dueWords(due, '', catalogue).short}</b>
              <span>{block ? blockName(block, catalogue) : 'A block that is gone'}</span>
              <small class="figures">{dueWhen(due)}</small>
            </a>
          </li>
        );
      })}
    </ol>
  );
}
