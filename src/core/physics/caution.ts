import type { Sourced } from './sourced.ts';

/** A warning that belongs beside a step, before its text. It never replaces the label, the local rule or the licensed person it names. */
export interface Caution extends Sourced {
  readonly hazard: string;
  readonly when: string;
  readonly line: string;
  readonly deferTo: string;
}
