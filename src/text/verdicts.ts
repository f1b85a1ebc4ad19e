import type { Catalogue } from '../core/catalogue.ts';
import type { Forecast } from '../core/simulate/simulate.ts';
import type { VerdictReason } from '../core/verdict.ts';
import type { Worth } from '../core/worth.ts';
import { moneyAbout, percent, timesInTen } from './format.ts';

/** One reason of a verdict as a sentence. `nameOf` gives a finding's number and term. */
export function reasonSentence(reason: VerdictReason, nameOf: (findingId: string) => string): string {
  switch (reason.rule) {
    case 'refused':
      return `${nameOf(reason.findingId)}: not to be taken home unless a specialist will treat it.`;
    case 'live':
      return `${nameOf(reason.findingId)}: something is alive in it.`;
    case 'untested':
      return `${nameOf(reason.findingId)}: not tested yet.`;
    case 'scoreTooLow':
      return `Even if every repair holds it reaches ${Math.round(reason.value)} of 100; under ${reason.bound} it is not a tool again.`;
    case 'oddsTooLow':
      return `The chance that all repairs hold is ${percent(reason.value)}, under ${percent(reason.bound)}.`;
    case 'scoreModest':
      return `If every repair holds it reaches ${Math.round(reason.value)} of 100, under ${reason.bound}.`;
    case 'oddsModest':
      return `The chance that all repairs hold is ${percent(reason.value)}, under ${percent(reason.bound)}.`;
    case 'foundBelowSound':
      return `As found it scores ${Math.round(reason.value)} of 100, under ${reason.bound}.`;
    case 'critical':
      return `${nameOf(reason.findingId)} is critical, and not on the base.`;
    case 'needsRepair':
      return `${nameOf(reason.findingId)} needs bench work.`;
    case 'unknownEssentials':
      return reason.count === 1
        ? 'One thing that decides was not looked at yet.'
        : `${reason.count} things that decide were not looked at yet.`;
    case 'shapeCommon':
      return 'The shape is common: not worth a copy.';
    case 'notCopyable':
      return 'It would not stand being copied.';
    case 'worthCopying':
      return 'The shape is worth keeping all the same: take a copy.';
    case 'nothingAgainst':
      return 'Nothing over a trace that matters.';
  }
}

/** What set the most worth paying, as a sentence. */
export function limitSentence(worth: Worth, currency: string): string {
  switch (worth.setBy) {
    case 'restoring':
      return 'Set by what it is worth restored, less the work and the gain you ask.';
    case 'copying':
      return 'Set by what a copy of the shape is worth to you, less taking it.';
    case 'equalUsed':
      return `Capped by an equal used block at ${moneyAbout(worth.equalUsed.amount, currency)}.`;
    case 'nothing':
      return 'The work eats what it would be worth: only as a gift.';
    case 'refused':
      return 'Not to be bought at any price as it stands.';
  }
}

/** Essentials still unknown, as terms. */
export const essentialTerms = (ids: readonly string[], catalogue: Catalogue): readonly string[] =>
  ids.map((id) => catalogue.essentials[id]?.term ?? id);

/** How often the price asked would be lost money. */
export function lossSentence(chance: number): string {
  const often = timesInTen(chance);
  // Hardly ever, practically always: such words stand before what they are about.
  return /\d/.test(often)
    ? `At the price asked you would lose by it ${often}.`
    : `At the price asked you would ${often} lose by it.`;
}

/** What to do with it and how it is likely to come out. */
export function strategySentence(forecast: Forecast, currency: string): string {
  const { best, works, copies, strategies } = forecast;
  const limit = moneyAbout(Math.max(0, Math.round(strategies[best].ceiling)), currency);
  if (best === 'keep') return `Worth most used as it is (${limit}): the work would cost more than it adds.`;
  if (best === 'copy') return `Worth most as a shape to copy (${limit}), not as a tool.`;
  const rest = copies >= 0.05 ? `; ${timesInTen(copies)} it is only good for a copy` : '';
  return `Worth most restored (${limit}): it works again ${timesInTen(works)}${rest}.`;
}
