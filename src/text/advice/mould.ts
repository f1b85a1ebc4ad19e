import type { MouldAnswer } from '../../core/advice/mould.ts';
import { CAUTIONS } from '../../core/physics/cautions.ts';
import { MASKS } from '../../core/physics/exposure-limits.ts';
import { MOULD_REFUSAL, type MouldRefusal, type MouldWeather } from '../../core/physics/mould-risk.ts';
import { list, opening, percent } from '../format.ts';
import { pct, tidy } from './figures.ts';
import type { AdviceWords } from './words.ts';

/** Each reason to refuse, as a clause after “if”. */
export const refusalWords: Readonly<Record<MouldRefusal['code'], string>> = {
  'rot-not-mould': `a needle sinks over ${MOULD_REFUSAL.probeOverMm} mm into soft wood: that is rot`,
  'too-far-through-thin-layers': `growth covers over ${percent(MOULD_REFUSAL.coverageOver)} of something built of thin layers`,
  'smell-stays': 'it still smells after a month in dry air',
  'perhaps-pesticide': 'it smells of chemicals or carries white crystals: perhaps pesticide',
  'buyer-at-risk': 'whoever will handle it has asthma, a mould allergy or a weak immune system',
};

const masks: Readonly<Record<keyof typeof MASKS, string>> = {
  ffp2: `FFP2 or N95 at least, ${MASKS.ffp2.filtersPct} % of fine dust`,
  n95: `N95, ${MASKS.n95.filtersPct} % of fine dust`,
  ffp3: `FFP3 for heavy growth, ${MASKS.ffp3.filtersPct} % of fine dust`,
};

type Step = MouldAnswer['steps'][number];
const stepWords: Readonly<Record<Step['step'], string>> = {
  bag: 'Bag it where it stands.',
  dryFirst: 'Dry it in air at 45 to 50 %, without heat, until the growth is powdery.',
  pinsOut: 'Take pins and tacks out.',
  brushIntoVacuum: 'Outdoors or under extraction: soft brush into a vacuum with a fine filter.',
  wipeBarelyDamp: 'Wipe barely damp.',
  peroxide: 'Then 3 % peroxide, wiped on and off.',
  dryAgain: 'Dry it again, in shade and moving air.',
  watch: 'Watch it for a month below 55 %.',
};

/** What may be left out says first what it can do. */
const stepInWords = (step: Step): string =>
  'optional' in step
    ? `Only if it must be. ${step.cautions.map((id) => CAUTIONS[id].line).join(' ')} ${stepWords[step.step]}`
    : stepWords[step.step];

const weeks = (count: number): string => (count < 1.5 ? 'about a week' : `about ${tidy(count, 0)} weeks`);

function weatherLead(weather: MouldWeather, air: string): string {
  if (weather.kind === 'no-risk') return `In your room, ${air}, it does not grow on: too ${weather.because}.`;
  if (weather.kind === 'watch')
    return `In your room, ${air}, bare wood is safe, but grime, starch and felt may grow it: dry the room below 65 %.`;
  return `In your room, ${air}, it grows: first specks in ${weeks(weather.weeksToFirstGrowth)}. Do not bring it in.`;
}

const sizes = {
  none: 'none',
  small: 'small',
  medium: 'medium: gloves, mask and a closed-off room',
  large: 'large: call people who do this',
  professional: 'for professionals only',
} as const;

/** Mould: whether it grows here, how much of it there is, whether to leave the block, and what to wear. */
export function mouldWords(answer: MouldAnswer): AdviceWords {
  const { question, weather, growsAbovePct, asDampAs, outbreak, refuseBecause, refuseAlsoIf, mask, steps } = answer;
  const { temperatureC, relativeHumidityPct } = question.room;
  const refused = refuseBecause.length > 0;
  return {
    title: refused ? 'Leave it where it is' : 'Dry it, then clean it',
    tone: refused || weather.kind === 'grows' ? 'stop' : 'care',
    lead: [
      ...refuseBecause.map(({ code }) => `${opening(refusalWords[code])}.`),
      weatherLead(weather, `${tidy(temperatureC, 0)} °C and ${pct(relativeHumidityPct, 0)}`),
    ].join(' '),
    facts: [
      ['Grows on bare wood above', growsAbovePct === null ? 'too cold or too hot for any' : pct(growsAbovePct, 0)],
      ...(asDampAs && question.moisturePct !== null
        ? [
            [
              `Wood at ${pct(question.moisturePct, 0)} is as damp as air at`,
              asDampAs.kind === 'found' ? pct(asDampAs.relativeHumidityPct, 0) : 'more than any air: it was wet',
            ] as const,
          ]
        : []),
      ...(outbreak
        ? [['Outbreak', `${sizes[outbreak.size]}, about ${tidy(outbreak.visibleM2, 3)} m² of growth`] as const]
        : []),
      ['Mask', masks[mask]],
    ],
    points: [
      'Gloves, goggles and the mask, fitted to a shaved face. Outdoors or under extraction.',
      ...(refuseAlsoIf.length > 0 ? [`Leave it also if ${list(refuseAlsoIf.map((code) => refusalWords[code]))}.`] : []),
      'One block is a small outbreak; the cellar it came from may not be.',
      'Starch in sparterie, and felt grime, grow mould sooner than the bare wood reckoned with here.',
    ],
    list: { title: 'Cleaning, in order', items: steps.map(stepInWords) },
  };
}
