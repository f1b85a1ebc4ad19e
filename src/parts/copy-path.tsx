import { entry } from '../core/catalogue.ts';
import { holds } from '../core/condition.ts';
import { pathOf } from '../core/path.ts';
import { useApp } from '../ui/app.ts';
import { ChoiceField } from '../ui/field.tsx';
import css from './copy-path.module.css';
import { PlanList } from './plan-list.tsx';
import { useQuarantineActions } from './quarantine-actions.ts';
import { SourceLine } from './source-line.tsx';
import type { BlockCase } from './use-case.ts';

const options = [
  { id: 'restore', label: 'Restore it' },
  { id: 'copy', label: 'Copy the shape only' },
] as const;

/** Restored or only copied: what the verdict says, until the owner chooses. */
export function PathChoice({ of }: { readonly of: BlockCase }) {
  const actions = useQuarantineActions();
  const { path, chosen } = pathOf(of.block, of.assessment);
  return (
    <ChoiceField
      label="What is to be done with it"
      hint={chosen ? 'Your choice. Tap it again to go by the verdict.' : 'By the verdict, until you choose.'}
      none={chosen}
      value={path}
      options={options}
      onChange={(picked) => actions.choosePath(of.block, picked)}
    />
  );
}

/** Whether it would stand being copied: what its owner says of it, and what was found. */
function useCopyable({ block, assessment }: BlockCase): boolean {
  const { catalogue } = useApp();
  return (
    block.copyable && !assessment.graded.some(({ finding }) => entry(catalogue.damage, finding.kind)?.blocksCopying)
  );
}

/** The way of a lost cause: its shape taken once, with care, whose rights it may be, and what that costs in hours and waiting. */
export function CopyPlan({ of }: { readonly of: BlockCase }) {
  const { catalogue } = useApp();
  const copyable = useCopyable(of);
  const { setting } = of.assessment;
  return (
    <>
      <p class={css.sum}>The price of a copy rests on these steps and their hours; marks to protect come on top.</p>
      {!copyable && <p class={css.gate}>What was found on it says that it would not stand being copied.</p>}
      {catalogue.law
        .filter(({ bearsOn }) => bearsOn === 'copying')
        .map(({ topic, text, source }) => (
          <details key={topic} class={css.rights}>
            <summary>Whose shape is it? {topic}</summary>
            <p>{text}</p>
            <p>Not legal advice: rules change, check the current ones.</p>
            <SourceLine source={source} />
          </details>
        ))}
      <PlanList of={of} />
      <h3 class={css.ways}>Ways to take it</h3>
      <ul class={css.steps}>
        {Object.entries(catalogue.copyWays)
          .filter(([, { when }]) => !when || holds(when, setting))
          .map(([id, { term, text, wants, cautions, source }]) => (
            <li key={id}>
              <details>
                <summary>{term}</summary>
                <Warnings lines={cautions} />
                <p>{text}</p>
                <p>Wants: {wants.join(', ')}.</p>
                <SourceLine source={source} />
              </details>
            </li>
          ))}
      </ul>
    </>
  );
}

const Warnings = ({ lines }: { readonly lines: readonly string[] }) =>
  lines.length === 0 ? null : (
    <ul class={css.gate}>
      {lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
