import { blockWait, waitOver } from '../../core/steps/waits.ts';
import { blockName } from '../../parts/block-name.ts';
import { useNow, zoneHere } from '../../parts/clock.ts';
import { MoveButton } from '../../parts/place-field.tsx';
import { WaitLine } from '../../parts/step-done.tsx';
import { stepName } from '../../parts/step-name.ts';
import { StepWork } from '../../parts/step-work.tsx';
import type { BenchWork } from '../../parts/use-bench.ts';
import { momentWords } from '../../text/moments.ts';
import { useApp } from '../../ui/app.ts';
import { Section } from '../../ui/page.tsx';
import { to } from '../../ui/route.ts';
import css from './bench.module.css';

/** Waits that are over, with the step that may now be taken; and those that still run, soonest first. */
export function Waiting({ works }: { readonly works: readonly BenchWork[] }) {
  const { catalogue } = useApp();
  const now = useNow();
  const running = works
    .flatMap((work) => {
      const found = blockWait(work.items, now);
      return found ? [{ work, ...found }] : [];
    })
    .sort((a, b) => Date.parse(a.wait.until) - Date.parse(b.wait.until));
  const over = works.flatMap((work) => {
    const found = waitOver(work.items, now);
    return found ? [{ work, ...found }] : [];
  });
  return (
    <>
      {over.length > 0 && (
        <Section title="Ready to go on">
          <div role="status">
            <ul class={css.sittings}>
              {over.map(({ work: { of, items }, item, wait, next }) => (
                <li key={of.block.id}>
                  <p class={css.what}>
                    <a href={to('/block/:id', { id: of.block.id })}>{blockName(of.block, catalogue)}</a>
                  </p>
                  <p class={css.over}>
                    “{stepName(item, catalogue)}” has waited long enough since{' '}
                    {momentWords(Date.parse(wait.until), now, zoneHere())}. Try it before you go on.
                  </p>
                  {next ? (
                    <>
                      <p>
                        Next: <b>{stepName(next, catalogue)}</b>
                      </p>
                      <StepWork of={of} items={items} item={next} />
                    </>
                  ) : (
                    <MoveButton of={of} place="ready" label="Put it with the ready ones" />
                  )}
                </li>
              ))}
            </ul>
          </div>
        </Section>
      )}
      {running.length > 0 && (
        <Section title="Waiting">
          <ul class={css.sittings}>
            {running.map(({ work: { of }, item }) => (
              <li key={of.block.id}>
                <p class={css.what}>
                  <a href={to('/block/:id', { id: of.block.id })}>{blockName(of.block, catalogue)}</a>
                  <span>{stepName(item, catalogue)}</span>
                </p>
                <WaitLine item={item} now={now} />
              </li>
            ))}
          </ul>
        </Section>
      )}
    </>
  );
}
