import type { HoleAsks, Physics } from '../catalogue.ts';
import { type BorerRanking, type HoleClues, rankBorers, type Suspect } from '../physics/borer-ranking.ts';
import { BORERS, DUSTS, type Dust, TOOL_HOLES } from '../physics/insects.ts';
import type { Sourced } from '../physics/sourced.ts';
import type { Outcome } from './outcome.ts';
import { aboveZero, chosen, type Subject } from './subject.ts';
import { SOURCES } from './usual.ts';
import { woodKindOf } from './wood-of-block.ts';

/** What the owner says of it; `unknown` also when nothing was said. */
export const ACTIVITIES = ['active', 'inactive', 'unknown'] as const;
export type Activity = (typeof ACTIVITIES)[number];

export interface BorerAnswer {
  readonly clues: HoleClues;
  /** The question that settles most, as long as nobody has answered it. */
  readonly askPinningLineFirst: boolean;
  /** Pins leave rows: likelier than any insect. */
  readonly looksLikePins: boolean;
  readonly ranking: BorerRanking;
  readonly activity: Activity;
}

/** Ranks the suspects from clues. @throws RangeError for a hole outside 0 to 40 mm. SOURCE: {@link rankBorers} */
export function holesAnswer(clues: HoleClues, activity: Activity): BorerAnswer {
  const ranking = rankBorers(clues);
  return {
    clues,
    askPinningLineFirst: clues.followsPinningLine === undefined,
    looksLikePins: clues.followsPinningLine === true && ranking.ranked[0]?.suspect === 'toolHoles',
    ranking,
    activity,
  };
}

const isDust = (value: string | null): value is Dust => DUSTS.some((dust) => dust === value);

/** What the finding's answers and the block's wood say about its holes; what nobody answered is left out. */
export function cluesOf(subject: Subject, from: HoleAsks): HoleClues {
  const line = chosen(subject, from.pinningLine);
  const holeMm = aboveZero(subject, from.hole);
  const dust = chosen(subject, from.dust);
  const wood = woodKindOf(subject);
  return {
    ...(line === 'yes' || line === 'no' ? { followsPinningLine: line === 'yes' } : {}),
    ...(holeMm === null ? {} : { holeMm }),
    ...(isDust(dust) ? { dust } : {}),
    ...(wood === undefined ? {} : { wood }),
  };
}

export function activityOf(subject: Subject, from: HoleAsks): Activity {
  const said = chosen(subject, from.activity);
  return ACTIVITIES.find((activity) => activity === said) ?? 'unknown';
}

export const nameOfSuspect = (suspect: Suspect): string =>
  suspect === 'toolHoles' ? TOOL_HOLES.name : BORERS[suspect].name;

const sourceOf = (suspect: Suspect): Sourced => (suspect === 'toolHoles' ? TOOL_HOLES : BORERS[suspect]);

/** Sources of a ranking: the sums, the signs, and the two likeliest suspects. */
export const sourcesOfRanking = ({ ranked }: BorerRanking): readonly Sourced[] => [
  SOURCES.ranking,
  SOURCES.lifeSigns,
  ...ranked.slice(0, 2).map(({ suspect }) => ({
    ...sourceOf(suspect),
    source: `${nameOfSuspect(suspect)}: ${sourceOf(suspect).source}`,
  })),
];

/** Advice on holes that were found. The pinning line is asked for first, whatever else is known. */
export function borerOutcome(subject: Subject, { from }: Extract<Physics, { from: HoleAsks }>): Outcome<BorerAnswer> {
  const answer = holesAnswer(cluesOf(subject, from), activityOf(subject, from));
  return {
    answer,
    needs: [
      ...(answer.askPinningLineFirst ? [{ ask: from.pinningLine }] : []),
      ...(answer.clues.holeMm === undefined ? [{ ask: from.hole }] : []),
      ...(answer.clues.dust === undefined ? [{ ask: from.dust }] : []),
    ],
    assumed: [],
    cautions: [],
    sources: sourcesOfRanking(answer.ranking),
  };
}
