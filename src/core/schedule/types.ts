/**
 * What the schedule of many blocks is asked, and what it answers: plain data, so that it passes to a worker and back.
 * Days are whole calendar days from `today`, day 0. Hours are hands-on hours unless they are called a wait.
 */

/** How far a step of a plan has come; absent while nothing of it was done. */
export type StepProgress =
  | { readonly state: 'done' }
  | { readonly state: 'skipped' }
  /** Work begun and not finished: hands-on hours of it already done, taken off the step's hours. */
  | { readonly state: 'begun'; readonly hoursDone: number }
  /** Worked, and now drying, freezing, set aside … until that date (`YYYY-MM-DD`), on which the block is free again. */
  | { readonly state: 'waiting'; readonly since: string; readonly until: string };

/** One step of one block's plan, as the schedule sees it. */
export interface BenchStep {
  readonly treatment: string;
  /** Hands-on hours of the whole step. */
  readonly hours: number;
  /** Hours of waiting after it; counted in nights, as in `days.ts`. */
  readonly waitHours: number;
  /** Held while it is worked; one unit of each. */
  readonly handsResources: readonly string[];
  /** Held by the wait, through every night of it; one unit. */
  readonly waitResource: string | null;
  readonly progress?: StepProgress;
  /**
   * Treatments of this plan that must be done first, where they are not simply all that stand before it: then the
   * schedule may choose. Left out, a block is worked in the order of its plan, as people expect and as is safe.
   */
  readonly after?: readonly string[];
}

/** A block on the bench with its plan in working order. */
export interface BenchBlock {
  readonly blockId: string;
  readonly steps: readonly BenchStep[];
}

/** The question: which blocks, what is there to work with, and when. */
export interface BenchInput {
  /** Date of day 0, `YYYY-MM-DD`. */
  readonly today: string;
  /** In the owner's order: the plain in-order schedule serves them as they stand here. */
  readonly blocks: readonly BenchBlock[];
  /** Hours in an evening by weekday, Monday first; 0 where there is none. Not all may be 0. */
  readonly hours: readonly number[];
  /** Dates without an evening, `YYYY-MM-DD`. */
  readonly datesOff: readonly string[];
  /** Hours on single dates where they differ from the weekday's, 0 included; wins over `datesOff`. */
  readonly hoursOn?: Readonly<Record<string, number>>;
  /** Units of each resource; one that is not named counts as unlimited. */
  readonly capacities: Readonly<Record<string, number>>;
  /**
   * What an earlier schedule served, in its order (`BenchSchedule.served`): tried first, so that a small change in the
   * facts does not turn the plan over for nothing.
   */
  readonly served?: readonly string[];
  /** How many schedules to try in all; the answer follows from it and the seed alone. Usual number in `bench.ts`. */
  readonly budget?: number;
  readonly seed?: number;
}

/** One sitting: hours of one step in one evening. */
export interface Sitting {
  readonly blockId: string;
  readonly treatment: string;
  /** Hours of it this evening. */
  readonly hours: number;
  /** Hours into the evening at which it begins. */
  readonly at: number;
  /** Whether the step begins with it, and whether it ends with it; a split step has sittings of neither. */
  readonly begins: boolean;
  readonly ends: boolean;
}

/** An evening on which there is something to do. */
export interface BenchEvening {
  readonly day: number;
  readonly date: string;
  /** Hours there are for each pair of hands, and hours used by all of them. */
  readonly hours: number;
  readonly used: number;
  /** In the order they are to be taken. */
  readonly sittings: readonly Sitting[];
}

/** When a step is worked and until when its block then waits. Done and skipped steps have none. */
export interface ScheduledStep {
  readonly treatment: string;
  /** Hands-on hours still to do; 0 for a wait that runs. */
  readonly hours: number;
  /** First and last day of the work. For a wait that already runs, the day it began (negative or 0), twice. */
  readonly from: number;
  readonly to: number;
  /** Day on which the block may be worked again; `to` where nothing waits. */
  readonly free: number;
  readonly fromDate: string;
  readonly toDate: string;
  readonly freeDate: string;
  /** What the wait holds, from the evening of `to` until `free`. */
  readonly waitResource: string | null;
  /** A wait that was running when the schedule was made. */
  readonly running: boolean;
}

export interface ScheduledBlock {
  readonly blockId: string;
  readonly steps: readonly ScheduledStep[];
  /** Day on which its last step is done and its wait over; −1 when nothing is left to do. */
  readonly ready: number;
  readonly readyDate: string | null;
}

/** Why no schedule can be shorter, in days, counting today. */
export interface BenchBound {
  readonly days: number;
  /** The block that takes longest by itself, its waits running day and night. */
  readonly criticalPath: { readonly blockId: string; readonly days: number } | null;
  /** The resource that is busiest: days until its work alone would be through. */
  readonly busiest: { readonly resource: string; readonly days: number } | null;
  /** Which of the two is the longer. */
  readonly by: 'criticalPath' | 'busiest' | 'nothing';
}

/** The answer. Empty of evenings when nothing is left to do and nothing waits. */
export interface BenchSchedule {
  readonly today: string;
  /** In the order of the question. */
  readonly blocks: readonly ScheduledBlock[];
  /** Evenings with something to do, in time. */
  readonly evenings: readonly BenchEvening[];
  /** Calendar days until everything is ready, counting today; 0 when nothing is left. */
  readonly days: number;
  readonly lastDate: string | null;
  readonly bound: BenchBound;
  /** Days of the plain schedule that serves the blocks in their order; never fewer than `days`. */
  readonly inOrderDays: number;
  /** Hands-on hours still to do. */
  readonly hours: number;
  /** The steps in the order they were served; give it back with the next question. */
  readonly served: readonly string[];
}
