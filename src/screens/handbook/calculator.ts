import type { ComponentType } from 'preact';

/** A calculator: one file in `calculators/` with this as its default export, found by glob. */
export interface Calculator {
  /** Its address: `#/handbook/calculators/<id>`. */
  readonly id: string;
  /** Place on the page, small first. */
  readonly order: number;
  readonly title: string;
  /** What it answers, in a sentence. */
  readonly about: string;
  readonly Panel: ComponentType;
}
