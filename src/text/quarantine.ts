import type { StageStanding } from '../core/cold.ts';
import type { FreezeObstacle } from '../core/physics/freezing.ts';
import { BORERS, type BorerId } from '../core/physics/insects.ts';
import { type Course, type Watch, watchRule } from '../core/quarantine.ts';
import type { ColdStage } from '../core/records.ts';
import { dayWords } from './days.ts';
import { days, hours, percent } from './format.ts';

export const watchWords: Readonly<
  Record<Watch, { readonly label: string; readonly text: string; readonly fresh: string }>
> = {
  alive: {
    label: 'Alive',
    text: 'Fresh dust, or beetles seen',
    fresh: 'Fresh dust, or an insect',
  },
  holes: { label: 'Holes', text: 'Old-looking, nobody has watched them', fresh: 'Fresh dust' },
  mould: { label: 'Mould', text: 'Grows, or has grown', fresh: 'New growth' },
  pests: { label: 'Moth, silverfish, mice', text: 'Grazed places, droppings', fresh: 'Droppings, webs, an insect' },
  unknownSource: { label: 'No signs', text: 'From a damp or unknown place', fresh: 'Dust, growth, droppings' },
};

export const watchOf = (reason: string) =>
  Object.hasOwn(watchWords, reason) ? watchWords[reason as Watch] : { ...watchWords.holes, label: reason };

/** How it came to its end, as one sentence. */
export function endSentence({ by, startedOn, endsOn, restarts }: Course): string {
  const from = restarts > 0 ? `Started again on ${dayWords(startedOn)}` : `Since ${dayWords(startedOn)}`;
  const rule = {
    season: 'a year and one whole flight season, whichever ends later',
    freezing: 'two weeks of watching after freezing',
    days: 'so many days without a sign',
  }[by];
  return `${from}, until ${dayWords(endsOn)}: ${rule}.`;
}

/** What freezing would make of a watch over a whole season; empty where it makes no difference. */
export function shorterSentence(reason: string): string {
  const rule = watchRule(reason);
  if (rule.ends !== 'season') return '';
  const { rounds, restDays, leastDays } = rule.freezing;
  const least = leastDays > 0 ? `, ${leastDays} days at least` : '';
  return `Freezing shortens it: ${rounds === 1 ? 'one round that counts' : `${rounds} rounds that count`}, then ${restDays} days of watching${least}.`;
}

/** What is watched for, and how it stands today. */
export function standingWords({ state, daysLeft, endsOn }: Course): string {
  if (state === 'left') return 'Out of quarantine';
  if (state === 'over') return 'No sign seen: probably clean';
  return daysLeft === 0
    ? `Look once more: the last day was ${dayWords(endsOn)}`
    : `Kept apart, ${days(daysLeft)} to go`;
}

/** The chance that a quiet watch means nothing, and what nobody can put a figure on. */
export function doubtSentences(
  by: Course['by'],
  borer: BorerId,
  missed: readonly { readonly low: number; readonly likely: number; readonly high: number; readonly larvae: number }[],
): readonly string[] {
  const end = 'At the end say “no sign seen, probably clean”. Nobody can say that it is free of worm.';
  if (by === 'season') {
    const chances = missed
      .map(
        ({ larvae, likely, low, high }) => `${larvae} larvae ${percent(likely)} (${percent(low)} to ${percent(high)})`,
      )
      .join(', ');
    return [
      `Reckoned for ${BORERS[borer].name}, the chance that one summer shows nothing although they are in it: ${chances}.`,
      end,
    ];
  }
  if (by === 'freezing') {
    return [
      'Cold can fail: larvae have outlived it. Nobody has a figure for a block, so two weeks of white paper come after it.',
      end,
    ];
  }
  return ['So short a watch shows only what moves now. Holes want a whole season.', end];
}

export const stageWords: Readonly<Record<ColdStage['does'], { readonly term: string; readonly how: string }>> = {
  bag: {
    term: 'Seal it in its bag',
    how: 'Tissue round it, polythene of 0.10–0.15 mm, air pressed out. Bag it at room temperature, over 18 °C.',
  },
  freeze: {
    term: 'Freeze',
    how: 'Room for air round the bag: it should reach 0 °C within 4 hours. Read a thermometer that lies beside it.',
  },
  thaw: { term: 'Thaw', how: 'Out of the freezer, still sealed.' },
  warmInBag: {
    term: 'Warm up in the bag',
    how: 'Leave it sealed at room temperature, so that dew forms on the bag and not on the wood.',
  },
};

/** What a stage that was recorded is worth, and what to do where it is not enough. */
export function stageSentence(standing: StageStanding, does: ColdStage['does']): string {
  switch (standing.state) {
    case 'running':
      return 'Running.';
    case 'enough':
      return does === 'freeze' ? 'Long and cold enough.' : 'Done.';
    case 'perhaps':
      return `Perhaps enough: ${hours(standing.shortHours)} short if the cold came slowly to the middle. It does not count; freeze it again.`;
    case 'tooShort':
      return does === 'warmInBag'
        ? `Opened ${hours(standing.shortHours)} too soon: look for dew, dry it in moving air.`
        : `Too short by ${hours(standing.shortHours)}. It does not count; ${does === 'freeze' ? 'freeze it again' : 'begin a new round'}.`;
    case 'tooWarm':
      return `Not cold enough: this way needs ${degrees(standing.neededC)} or colder. It does not count.`;
    case 'notRead':
      return 'Nobody read the thermometer, so it does not count. Write down what it says, or freeze it again.';
    case 'unknown':
      return 'From a newer version: kept, not judged.';
  }
}

/** `−20 °C`. */
export const degrees = (value: number): string => `${String(value).replace('-', '−')} °C`;

/** A regime in words: `7 days`, `3 days, thaw 2 days, 3 days`. */
export const regimeWords = (
  stages: readonly { readonly does: ColdStage['does']; readonly leastHours: number; readonly mostHours: number }[],
): string =>
  stages
    .filter(({ does }) => does === 'freeze' || does === 'thaw')
    .map(({ does, leastHours, mostHours }) => {
      const span = leastHours === mostHours ? dayCount(leastHours) : `${leastHours / 24}–${dayCount(mostHours)}`;
      return does === 'thaw' ? `thaw ${span}` : span;
    })
    .join(', then ');

const dayCount = (wait: number): string => (wait < 72 && wait % 24 !== 0 ? `${wait} h` : days(wait / 24));

export const obstacleWords: Readonly<Record<FreezeObstacle, string>> = {
  plaster: 'It is of plaster',
  papierMache: 'It is of papier-mâché',
  paintedOrGessoed: 'It is painted or gessoed',
  animalGlue: 'It bears lumps of old animal glue',
  laminatedOrMultiPart: 'It is glued from layers or parts',
};
