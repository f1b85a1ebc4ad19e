import { soonestOf } from '../../core/due.ts';
import { BlockRow } from '../../parts/block-row.tsx';
import { CalendarFile } from '../../parts/calendar-file.tsx';
import { DueList } from '../../parts/due-list.tsx';
import { runningView } from '../../parts/quarantine-facts.ts';
import { useDues } from '../../parts/use-dues.ts';
import { standingWords } from '../../text/quarantine.ts';
import { useApp } from '../../ui/app.ts';
import { Page, Section } from '../../ui/page.tsx';
import { to } from '../../ui/route.ts';
import css from './quarantine.module.css';

/** All blocks kept apart, what falls due on any block, and the calendar file for all of it. */
export default function QuarantineList() {
  const app = useApp();
  const dues = useDues();
  const apart = app.store.blocks.value.flatMap((block) => {
    const view = runningView(block.id, app);
    return view ? [{ block, view }] : [];
  });
  return (
    <Page title="Quarantine" under="Blocks kept apart, and what falls due" back={{ href: '#/', label: 'Shelf' }}>
      <Section title="Due">
        {dues.length === 0 && <p class={css.hint}>Nothing falls due.</p>}
        <DueList dues={soonestOf(dues)} />
      </Section>
      <Section title="Kept apart" aside={<span class="figures">{apart.length}</span>}>
        {apart.length === 0 && (
          <p class={css.hint}>
            No block is in quarantine. One with holes, fresh dust or mould is put here from its page.
          </p>
        )}
        <ul>
          {apart.map(({ block, view }) => (
            <li key={block.id} class={css.apart}>
              <ul>
                <BlockRow id={block.id} />
              </ul>
              <a href={to('/block/:id/quarantine', { id: block.id })}>{standingWords(view.course)}</a>
            </li>
          ))}
        </ul>
      </Section>
      <Section title="Reminders">
        <CalendarFile />
      </Section>
    </Page>
  );
}
