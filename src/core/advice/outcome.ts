import type { PhysicsName } from '../catalogue.ts';
import type { CautionId } from '../physics/cautions.ts';
import type { Sourced } from '../physics/sourced.ts';
import type { WoodId } from '../physics/woods.ts';
import type { BorerAnswer } from './borers.ts';
import type { CrackAnswer } from './crack.ts';
import type { FillAnswer } from './fill.ts';
import type { MouldAnswer } from './mould.ts';
import type { QuarantineAnswer } from './quarantine.ts';
import type { WeightAnswer } from './weight.ts';

/** What each sum gives. A new one is a row here, a file beside this one, and its words in `text/advice/`. */
export interface Answers {
  readonly closeCrack: CrackAnswer;
  readonly fill: FillAnswer;
  readonly rankBorers: BorerAnswer;
  readonly quarantine: QuarantineAnswer;
  readonly mouldRisk: MouldAnswer;
  readonly weigh: WeightAnswer;
}

/** A figure nobody gave, and the usual one that stands in for it. Shown with the advice, always. */
export type Assumption =
  | { readonly code: 'wood'; readonly woods: readonly WoodId[] }
  | { readonly code: 'room'; readonly temperatureC: number; readonly relativeHumidityPct: number }
  | { readonly code: 'hemisphere'; readonly half: 'north' | 'south' }
  | { readonly code: 'moisture'; readonly moisturePct: number }
  | { readonly code: 'diameter' | 'boardWidth' | 'faceDepth' | 'mouth'; readonly mm: number }
  | { readonly code: 'clamp'; readonly newton: number }
  | { readonly code: 'holdsPith' }
  | { readonly code: 'surface'; readonly cm2: number }
  | { readonly code: 'arrival'; readonly on: string };

/** What must be asked or measured before anything can be said: an ask of the kind, or a measure of the survey. */
export type Need = { readonly ask: string } | { readonly measure: string };

/** The outcome of one sum, with what it warns of, what was taken for granted, and where its figures come from. */
export interface Outcome<Answer> {
  /** Null while something is still needed. */
  readonly answer: Answer | null;
  readonly needs: readonly Need[];
  readonly assumed: readonly Assumption[];
  readonly cautions: readonly CautionId[];
  readonly sources: readonly Sourced[];
}

/** Advice on one finding: which sum, and its outcome. */
export type Advice = {
  readonly [Does in PhysicsName]: { readonly does: Does; readonly findingId: string } & Outcome<Answers[Does]>;
}[PhysicsName];

/** Nothing to say yet: what to ask for first. */
export const waitingFor = (
  needs: readonly Need[],
  cautions: readonly CautionId[] = [],
  sources: readonly Sourced[] = [],
) => ({ answer: null, needs, assumed: [], cautions, sources }) as const;
