import { isRunning, runningStint } from '../../core/steps/stints.ts';
import { blockName } from '../../parts/block-name.ts';
import { stepName } from '../../parts/step-name.ts';
import { StintQuestion } from '../../parts/stint-question.tsx';
import { TimerFace } from '../../parts/timer-face.tsx';
import type { BenchWork } from '../../parts/use-bench.ts';
import { useWorkActions } from '../../parts/work-actions.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import { Section } from '../../ui/page.tsx';
import { to } from '../../ui/route.ts';
import css from './bench.module.css';

/** The timer that runs, large; and timers left running elsewhere, which are asked about. */
export function Running({ works }: { readonly works: readonly BenchWork[] }) {
  const { catalogue } = useApp();
  const actions = useWorkActions();
  const all = works.flatMap(({ of, items }) => items.map((item) => ({ of, item })));
  const { stint, left } = runningStint(all.flatMap(({ item }) => item.stints.filter(isRunning)));
  const at = all.find(({ item }) => stint && item.stints.includes(stint));
  const others = left.flatMap((other) => {
    const found = all.find(({ item }) => item.stints.includes(other));
    return found ? [{ ...found, other }] : [];
  });
  if (!stint || !at) return null;
  const { of, item } = at;
  const name = stepName(item, catalogue);
  return (
    <Section title="In hand">
      <p class={css.inHand}>
        <b>{name}</b> <a href={to('/block/:id', { id: of.block.id })}>{blockName(of.block, catalogue)}</a>
      </p>
      <TimerFace stint={stint} item={item} />
      <div class={css.buttons}>
        <Button look="main" label={`Done: ${name}`} onPress={() => actions.finish(of.block, item)}>
          Done
        </Button>
        <Button label={`Pause: ${name}`} onPress={() => actions.stop(stint)}>
          Pause
        </Button>
      </div>
      {others.map(({ other, of: there, item: step }) => (
        <Left key={other.id} name={`${blockName(there.block, catalogue)}, ${stepName(step, catalogue)}`}>
          <StintQuestion stint={other} item={step} />
        </Left>
      ))}
    </Section>
  );
}

function Left({ name, children }: { readonly name: string; readonly children: preact.ComponentChildren }) {
  return (
    <>
      <p>
        A second timer runs, from another phone: <b>{name}</b>.
      </p>
      {children}
    </>
  );
}
