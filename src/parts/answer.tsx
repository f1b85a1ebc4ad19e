import { useState } from 'preact/hooks';
import { money } from '../text/format.ts';
import { limitSentence, reasonSentence } from '../text/verdicts.ts';
import { Button } from '../ui/button.tsx';
import { Sheet } from '../ui/sheet.tsx';
import css from './answer.module.css';
import { ScoreRule } from './score-rule.tsx';
import type { BlockCase } from './use-case.ts';
import { useNames } from './use-names.ts';
import { VerdictMark } from './verdict-mark.tsx';
import { Working } from './working.tsx';

/** What the price asked means beside the limit, in words. */
function Asked({ of: { block, assessment } }: { readonly of: BlockCase }) {
  const { decision, worth } = assessment;
  if (decision.say === 'noPrice') return <span>No price asked yet</span>;
  const asked = money(decision.at, block.currency);
  const extra = decision.allIn === decision.at ? '' : ` (${money(decision.allIn, block.currency)} in all)`;
  if (decision.say === 'within') {
    return (
      <span data-say="within">
        Asked {asked}
        {extra}: within the limit
      </span>
    );
  }
  return (
    <span data-say="over">
      Asked {asked}
      {extra}: {worth.highestPrice === null ? 'too much at these terms' : 'over the limit'}
    </span>
  );
}

/** The limit itself: large, one figure, at the terms of the sale. */
function Limit({ of: { block, assessment, sale } }: { readonly of: BlockCase }) {
  const { worth } = assessment;
  const auction = sale?.terms.way === 'auction';
  return (
    <span class={css.limit}>
      <small>{auction ? 'Highest bid' : 'Most worth paying'}</small>
      <b class="figures">{worth.highestPrice === null ? '–' : money(worth.highestPrice, block.currency)}</b>
    </span>
  );
}

/** The answer docked at the bottom while walking: verdict, score, limit against the ask; pull up for the working. */
export function AnswerDock({ of }: { readonly of: BlockCase }) {
  const [open, setOpen] = useState(false);
  const { assessment } = of;
  const unknown = assessment.unknownEssentials.length;
  return (
    <>
      <button type="button" class={css.dock} onClick={() => setOpen(true)} aria-haspopup="dialog">
        <span class={css.left}>
          <VerdictMark verdict={assessment.verdict} size="large" />
          <small class="figures">
            {Math.round(assessment.found)} → {Math.round(assessment.after)} of 100
            {unknown > 0 && `, ${unknown} unknown`}
          </small>
        </span>
        <Limit of={of} />
        <span class={css.asked}>
          <Asked of={of} />
          <span class={css.pull}>Working</span>
        </span>
      </button>
      {open && (
        <Sheet title="The answer and its working" onClose={() => setOpen(false)} closeLabel="Back">
          <AnswerPanel of={of} />
        </Sheet>
      )}
    </>
  );
}

/** The answer in full: verdict with reasons, limit, hours and days, and the working of every figure. */
export function AnswerPanel({ of }: { readonly of: BlockCase }) {
  const { assessment, block } = of;
  const { findingName } = useNames(of);
  const { worth } = assessment;
  return (
    <div class={css.panel}>
      <div class={css.top}>
        <VerdictMark verdict={assessment.verdict} size="large" />
        <Limit of={of} />
      </div>
      <ScoreRule found={assessment.found} after={assessment.after} />
      <ul class={css.reasons}>
        {assessment.reasons.map((reason) => {
          const text = reasonSentence(reason, findingName);
          return <li key={text}>{text}</li>;
        })}
      </ul>
      {assessment.gates.map((gate) => (
        <p key={`${gate.findingId}${gate.advice}`} class={css.gate}>
          <b>{findingName(gate.findingId)}:</b> {gate.advice}
        </p>
      ))}
      <p class={css.asked}>
        <Asked of={of} />
      </p>
      <p class={css.hint}>{limitSentence(worth, block.currency)}</p>
      <Working of={of} />
    </div>
  );
}

/** The answer as a card with a button to its working, for pages that are not the walk. */
export function AnswerCard({ of, onWalk }: { readonly of: BlockCase; readonly onWalk: string }) {
  const unknown = of.assessment.unknownEssentials.length;
  return (
    <div class={css.card}>
      <AnswerPanel of={of} />
      {unknown > 0 && (
        <Button href={onWalk} wide>
          Look at what is still unknown
        </Button>
      )}
    </div>
  );
}
