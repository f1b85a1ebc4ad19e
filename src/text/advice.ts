import type { Answers } from '../core/advice/outcome.ts';
import type { Advice, Assumption, Need } from '../core/advice.ts';
import { type Catalogue, type DamageKind, entry, type PhysicsName, type Source } from '../core/catalogue.ts';
import type { Confidence, Sourced } from '../core/physics/sourced.ts';
import { WOODS } from '../core/physics/woods.ts';
import { borerWords } from './advice/borers.ts';
import { crackWords } from './advice/crack.ts';
import { pct, tidy } from './advice/figures.ts';
import { fillWords } from './advice/fill.ts';
import { mouldWords } from './advice/mould.ts';
import { quarantineWords } from './advice/quarantine.ts';
import { weightWords } from './advice/weight.ts';
import type { AdviceWords } from './advice/words.ts';
import { dayWords } from './days.ts';
import { type LengthUnits, length, list } from './format.ts';

const says: { readonly [Does in PhysicsName]: (answer: Answers[Does], units: LengthUnits) => AdviceWords } = {
  closeCrack: crackWords,
  fill: fillWords,
  rankBorers: borerWords,
  quarantine: quarantineWords,
  mouldRisk: mouldWords,
  weigh: weightWords,
};

/** What each sum is about, for as long as it has nothing to say yet. */
const waiting: Readonly<Record<PhysicsName, string>> = {
  closeCrack: 'Will it close?',
  fill: 'What to fill it with',
  rankBorers: 'Which insect',
  quarantine: 'How long apart',
  mouldRisk: 'Will it grow on?',
  weigh: 'Eaten inside? Ask the scale',
};

/** Where each sum stands on its own, among the calculators of the handbook. */
export const calculatorOf: Readonly<Record<PhysicsName, string>> = {
  closeCrack: 'crack',
  fill: 'filler',
  rankBorers: 'borers',
  quarantine: 'quarantine',
  mouldRisk: 'mould',
  weigh: 'weight',
};

/** Advice in words; what is still wanted instead, where nothing can be said yet. */
export function adviceWords<Does extends PhysicsName>(
  advice: Extract<Advice, { does: Does }>,
  units: LengthUnits,
): AdviceWords {
  const does: Does = advice.does as Does;
  const answer = advice.answer as Answers[Does] | null;
  if (answer) return says[does](answer, units);
  return { title: waiting[does], tone: 'plain', lead: '', facts: [], points: [] };
}

/** `To say more: “Gap at the widest” and “Length”.` in the words of the sheet. Empty when nothing is missing. */
export function needsWords(needs: readonly Need[], kind: Pick<DamageKind, 'asks'>, catalogue: Catalogue): string {
  const names = needs.map((need) =>
    'ask' in need
      ? (kind.asks.find(({ id }) => id === need.ask)?.label ?? need.ask)
      : (entry(catalogue.measures, need.measure)?.short ?? need.measure),
  );
  return names.length === 0 ? '' : `To say more: ${list(names.map((name) => `“${name}”`))}.`;
}

type Supposed = {
  readonly [C in Assumption['code']]: (assumed: Extract<Assumption, { code: C }>, units: LengthUnits) => string;
};
const supposed: Supposed = {
  wood: ({ woods }) => `wood not named: ${list(woods.map((wood) => WOODS[wood].name))}, the usual ones`,
  room: ({ temperatureC, relativeHumidityPct }) =>
    `your room: ${tidy(temperatureC, 0)} °C and ${pct(relativeHumidityPct, 0)}, until you set it in Settings`,
  hemisphere: ({ half }) => `the ${half}ern half of the globe, until you set it in Settings`,
  moisture: ({ moisturePct }) => `moisture not measured: ${pct(moisturePct)}, as the room’s air keeps it`,
  diameter: ({ mm }, units) => `block not measured: ${length(Math.round(mm), units)} across, a usual head`,
  boardWidth: ({ mm }, units) => `width not measured: ${length(mm, units)}, a usual brim`,
  faceDepth: ({ mm }, units) => `depth of the faces not measured: ${length(Math.round(mm), units)}`,
  mouth: ({ mm }, units) => `${length(mm, units)} wide at the mouth`,
  clamp: ({ newton }) => `${newton} N from one hand clamp or band`,
  holdsPith: () => 'cut with the middle of the tree in it; from a quarter of a log it moves less',
  surface: ({ cm2 }) => `block not measured: ${cm2} cm² of face, a usual crown`,
  arrival: ({ on }) => `it comes home today, ${dayWords(on)}`,
};

/** What was taken for granted, as one clause. */
export const assumptionWords = <C extends Assumption['code']>(
  assumed: Extract<Assumption, { code: C }>,
  units: LengthUnits,
): string => supposed[assumed.code as C](assumed, units);

const kindOf: Readonly<Record<Confidence, Source['kind']>> = {
  'looked-up': 'published',
  memory: 'memory',
  own: 'own',
  practice: 'practice',
  estimate: 'estimate',
};

/** A source of the physics as the catalogue writes sources. */
export const sourceOf = ({ source, confidence }: Sourced): Source => ({ kind: kindOf[confidence], text: source });
