import { useState } from 'preact/hooks';
import { pathOf } from '../core/path.ts';
import type { Forecast, Range } from '../core/simulate/simulate.ts';
import { allInAt } from '../core/worth.ts';
import { days, hours, money, moneyAbout } from '../text/format.ts';
import { limitSentence, lossSentence, reasonSentence, strategySentence } from '../text/verdicts.ts';
import { Button } from '../ui/button.tsx';
import { Sheet } from '../ui/sheet.tsx';
import css from './answer.module.css';
import { NextLook } from './next-look.tsx';
import { RangeBand } from './range-band.tsx';
import { ScoreRule } from './score-rule.tsx';
import type { BlockCase } from './use-case.ts';
import { useForecast, useForecastCase } from './use-forecast.ts';
import { useNames } from './use-names.ts';
import { VerdictMark } from './verdict-mark.tsx';
import { WhatIfPanel } from './what-if.tsx';
import { Working } from './working.tsx';

interface Answered {
  readonly of: BlockCase;
  /** Undefined until the first one is made; the book's answer stands in for it. */
  readonly forecast: Forecast | undefined;
}

const notLooked = ({ assessment }: BlockCase): number =>
  assessment.kinds.filter(({ state }) => state === 'notLooked').length;

/**
 * The most worth paying, what is not known taken in. Until the first forecast is there the book's limit stands in, but
 * only where everything was looked at: a limit as if the rest were sound must not even flash by. Null: nothing at all.
 */
export const limitOf = ({ of, forecast }: Answered): number | null | undefined =>
  forecast ? forecast.limit : notLooked(of) === 0 ? of.assessment.worth.highestPrice : undefined;

/** What the price asked means beside the limit, in words. */
function Asked({ of, forecast }: Answered) {
  const { block, assessment, sale } = of;
  const { decision } = assessment;
  if (decision.say === 'noPrice') return <span>No price asked yet</span>;
  const limit = limitOf({ of, forecast });
  const within = limit != null && decision.at <= limit;
  const extra = decision.allIn === decision.at ? '' : ` (${money(decision.allIn, block.currency)} in all)`;
  return (
    <span data-say={limit === undefined ? undefined : within ? 'within' : 'over'}>
      Asked {money(decision.at, block.currency)}
      {extra}
      {limit !== undefined && ': '}
      {limit === undefined
        ? ''
        : within
          ? 'within the limit'
          : limit === null && sale
            ? 'too much at these terms'
            : 'over the limit'}
    </span>
  );
}

/** The limit itself: large, one figure, at the terms of the sale. */
function Limit({ of, forecast }: Answered) {
  const limit = limitOf({ of, forecast });
  return (
    <span class={css.limit}>
      <small>{of.sale?.terms.way === 'auction' ? 'Bid up to' : 'Pay up to'}</small>
      <b class="figures">{limit === undefined ? '…' : limit === null ? '–' : moneyAbout(limit, of.block.currency)}</b>
    </span>
  );
}

/** Where the band of worth ends on paper: a round figure over everything it has to show. */
function scaleFor(range: Range, flag: number | null): number {
  const most = Math.max(range.p90, flag ?? 0, 1) * 1.1;
  const step = 10 ** Math.floor(Math.log10(most));
  return Math.ceil(most / step) * step;
}

function WorthBand({ of, forecast }: { readonly of: BlockCase; readonly forecast: Forecast }) {
  const { block, sale } = of;
  const asked = block.priceAsked === null ? null : sale ? allInAt(block.priceAsked, sale.terms) : block.priceAsked;
  const shown = {
    p10: Math.max(0, forecast.net.p10),
    p50: Math.max(0, forecast.net.p50),
    p90: Math.max(0, forecast.net.p90),
  };
  return (
    <RangeBand
      label="Worth to you"
      range={shown}
      max={scaleFor(shown, asked)}
      say={(value) => moneyAbout(Math.round(value), block.currency)}
      flag={asked === null ? undefined : { at: asked, label: 'asked' }}
    />
  );
}

/** The answer docked at the bottom while walking: verdict, limit, the band that narrows; tap for the working. */
export function AnswerDock({ of, forecast, stale }: Answered & { readonly stale: boolean }) {
  const [open, setOpen] = useState(false);
  const { assessment } = of;
  const unknown = notLooked(of);
  return (
    <>
      <button
        type="button"
        class={css.dock}
        onClick={() => setOpen(true)}
        aria-haspopup="dialog"
        data-stale={stale || undefined}
      >
        <span class={css.left}>
          <VerdictMark verdict={assessment.verdict} size="large" />
          <small class="figures">
            {unknown === 0
              ? `${Math.round(assessment.found)} → ${Math.round(assessment.after)} of 100`
              : forecast
                ? `${Math.round(forecast.found.p10)}–${Math.round(forecast.found.p90)} of 100 · ${unknown} not looked`
                : `${unknown} not looked`}
          </small>
        </span>
        <Limit of={of} forecast={forecast} />
        {forecast && (
          <span class={css.band}>
            <WorthBand of={of} forecast={forecast} />
          </span>
        )}
        <span class={css.asked}>
          <Asked of={of} forecast={forecast} />
          <span class={css.pull}>Working</span>
        </span>
      </button>
      {open && (
        <Sheet title="The answer and its working" onClose={() => setOpen(false)} closeLabel="Back">
          <AnswerPanel of={of} forecast={forecast} />
        </Sheet>
      )}
    </>
  );
}

/** The answer in full: verdict with reasons, limit, ranges and chances, what to look at next, the working, what if. */
export function AnswerPanel({ of, forecast }: Answered) {
  const { assessment, block } = of;
  const { findingName } = useNames(of);
  const { worth } = assessment;
  // The plan below is then a copy’s; these are what restoring would take.
  const copies = pathOf(block, assessment).path === 'copy';
  return (
    <div class={css.panel}>
      <div class={css.top}>
        <VerdictMark verdict={assessment.verdict} size="large" />
        <Limit of={of} forecast={forecast} />
      </div>
      <p class={css.asked}>
        <Asked of={of} forecast={forecast} />
      </p>
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
      {forecast ? (
        <>
          <WorthBand of={of} forecast={forecast} />
          <p>{strategySentence(forecast, block.currency)}</p>
          {forecast.lossChance !== null && <p>{lossSentence(forecast.lossChance)}</p>}
          <NextLook of={of} forecast={forecast} />
          <RangeBand
            label={copies ? 'Work, if restored' : 'Work'}
            range={forecast.hours}
            max={Math.max(4, Math.ceil(forecast.hours.p90 * 1.2))}
            say={(value) => hours(value)}
          />
          <RangeBand
            label={copies ? 'Days, if restored' : 'Days with the waits'}
            range={forecast.days}
            max={Math.max(7, Math.ceil(forecast.days.p90 * 1.2))}
            say={(value) => days(Math.round(value))}
          />
          <RangeBand
            label="Score restored"
            range={forecast.score}
            max={100}
            say={(value) => String(Math.round(value))}
          />
        </>
      ) : (
        <p class={css.hint}>Reckoning the ranges…</p>
      )}
      {notLooked(of) === 0 && <ScoreRule found={assessment.found} after={assessment.after} />}
      <p class={css.hint}>
        By the book, as if nothing were left to find: up to{' '}
        {worth.highestPrice === null ? 'nothing' : moneyAbout(worth.highestPrice, block.currency)}.
        {forecast &&
          ` Over all that may turn out: up to ${forecast.highestPrice === null ? 'nothing' : moneyAbout(forecast.highestPrice, block.currency)}. The lower counts.`}{' '}
        {limitSentence(worth, block.currency)}
      </p>
      <Working of={of} />
      <WhatIfPanel of={of} now={forecast} />
    </div>
  );
}

/** The answer on the block's page, with the way on to what is still unknown. */
export function AnswerCard({ of, onWalk }: { readonly of: BlockCase; readonly onWalk: string }) {
  const { forecast } = useForecast(useForecastCase(of), of.block.id);
  const unknown = of.assessment.unknownEssentials.length;
  return (
    <div class={css.card}>
      <AnswerPanel of={of} forecast={forecast} />
      {unknown > 0 && (
        <Button href={onWalk} wide>
          Look at what is still unknown
        </Button>
      )}
    </div>
  );
}
