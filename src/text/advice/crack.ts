import type { ClosingReason, CrackAnswer } from '../../core/advice/crack.ts';
import { CRACK_ACTION_DETAILS, type CrackAction } from '../../core/physics/crack-advice.ts';
import { GLUING_MOISTURE } from '../../core/physics/glues.ts';
import { WOODS } from '../../core/physics/woods.ts';
import { type LengthUnits, length } from '../format.ts';
import { force, pct, span, tidy } from './figures.ts';
import type { AdviceWords } from './words.ts';

const titles: Readonly<Record<CrackAction, string>> = {
  glueAndClamp: 'Glue it and clamp it',
  humidifyFirst: 'Damp it first, then close it',
  insertSliver: 'Do not force it: fit a sliver',
};
const tones = { glueAndClamp: 'ok', humidifyFirst: 'care', insertSliver: 'stop' } as const;

type Say = {
  readonly [C in ClosingReason['code']]: (reason: Extract<ClosingReason, { code: C }>, units: LengthUnits) => string;
};

const { lowPct, highPct } = GLUING_MOISTURE;
const notReady = {
  'too dry': (moisture: string) => `At ${moisture} it is too dry for glue: ${lowPct} to ${highPct} %.`,
  'too damp': (moisture: string) => `At ${moisture} it is too damp for glue: ${lowPct} to ${highPct} %.`,
  'far from home': (moisture: string) =>
    `At ${moisture} it is too far from what your room will bring it to: let it settle before gluing.`,
} as const;

const sentences: Say = {
  'strain-small': ({ strainPct, limitPct }) =>
    `Closed dry, the wood is strained by ${pct(strainPct, 2)}: under ${limitPct} % it bears that.`,
  'strain-bearable': ({ strainPct, limitPct }) =>
    `Closed dry, the wood would be strained by ${pct(strainPct, 2)}: too much to clamp at once, and ${limitPct} % is the most it bears.`,
  'strain-too-large': ({ strainPct, limitPct }) =>
    `Closed dry, the wood would be strained by ${pct(strainPct, 2)}: beyond ${limitPct} % it is crushed for good, and opens again.`,
  'humidity-reachable': ({ relativeHumidityPct, ceilingPct }) =>
    `Air at ${pct(relativeHumidityPct, 0)} closes it by itself; the limit is ${ceilingPct} %, where mould begins.`,
  'humidity-too-high': ({ relativeHumidityPct, ceilingPct }) =>
    `It would close only in air at ${pct(relativeHumidityPct, 0)}: above ${ceilingPct} % mould begins.`,
  'no-air-is-damp-enough': () => 'No air is damp enough to close it.',
  'joint-starts-loaded': ({ share }) =>
    share >= 0.95
      ? 'Forced shut, the joint would be loaded to its strength from the first day.'
      : `Forced shut, the joint would start with about ${pct(share * 100, 0)} of its strength spent, and every dry winter adds more.`,
  'no-pith-moves-less': () =>
    'Built of parts, or from a quarter of a log, it moves less than reckoned: closing it may take damper air.',
  'wood-varies': ({ share }) => `One piece of wood moves about ${pct(share * 100, 0)} more or less than another.`,
  'closes-by-hand': () => 'It closes under your hand, and that outranks the sum: nothing holds it open.',
  'wood-without-figures': () => 'How this wood moves is not known: the strain alone decides, on the careful side.',
  'not-to-the-middle': ({ depthMm }, units) =>
    `It is only ${length(depthMm, units)} deep. The sums are for a crack to the middle and say less about this one.`,
  'not-ready-to-glue': ({ ready }) => notReady[ready.because](pct(ready.moisturePct)),
};

const say = <C extends ClosingReason['code']>(
  reason: Extract<ClosingReason, { code: C }>,
  units: LengthUnits,
): string => sentences[reason.code as C](reason, units);

function closingWords({ closing, humidityPct }: CrackAnswer): readonly (readonly [string, string])[] {
  if (!closing || !humidityPct) return [];
  const { humidity, moisturePct } = closing;
  if (humidity.kind === 'beyond-saturation') return [['Humidity that closes it', 'no air is damp enough']];
  const { low, high } = humidityPct;
  const upTo = high >= 100 ? `from ${tidy(low, 0)} % to never` : `${span(low, high)} %`;
  return [
    ['Moisture that closes it', pct(moisturePct)],
    ['Humidity that closes it', `${pct(humidity.relativeHumidityPct, 0)} (${upTo})`],
  ];
}

/** A crack: what to do with it, at which humidity it closes, how many clamps. */
export function crackWords(answer: CrackAnswer, units: LengthUnits): AdviceWords {
  const { action, question, wood, strainPct, moistureNowPct, forceN, clamps, humidifying } = answer;
  const spanWord = question.across === 'round' ? 'a block' : 'boards';
  const steps = humidifying?.kind === 'steps' ? humidifying.steps : [];
  return {
    title: titles[action],
    tone: tones[action],
    lead: CRACK_ACTION_DETAILS[action].how,
    facts: [
      ['Gap', `${length(question.gapMm, units)} in ${spanWord} ${length(question.spanMm, units)} across`],
      ...(wood ? [['Wood', WOODS[wood].name] as const] : []),
      ['Strain if closed dry', pct(strainPct, 2)],
      ['Moisture now', pct(moistureNowPct)],
      ...closingWords(answer),
      ...(forceN ? [['Force to close it dry', force(forceN.low, forceN.high)] as const] : []),
      ...(clamps
        ? [['Clamps or bands', `${span(clamps.low, clamps.high)}, each pulling ${clamps.newton} N`] as const]
        : []),
    ],
    points: [
      ...answer.reasons.map((reason) => say(reason, units)),
      ...(clamps
        ? [
            'Set clamps no further apart than twice the way from pad to glue line. A band round the block presses a crack to the middle with twice its pull.',
          ]
        : []),
    ],
    ...(steps.length > 0
      ? {
          list: {
            title: 'Humidity week by week',
            items: [
              ...steps.map(({ relativeHumidityPct }) => `A week at ${pct(relativeHumidityPct, 0)}.`),
              'Hold the last until two weighings a week apart agree; the wood follows later than the air.',
            ],
          },
        }
      : {}),
  };
}
