/** Advice as it is read: by the finding, in the plan, and in a calculator. */
export interface AdviceWords {
  readonly title: string;
  /** `ok` go on · `care` with a condition · `stop` do not · `plain` for information. */
  readonly tone: 'ok' | 'care' | 'stop' | 'plain';
  /** What to do, or the one question to ask first. */
  readonly lead: string;
  readonly facts: readonly (readonly [term: string, value: string])[];
  /** Why, and what to bear in mind; a sentence each. */
  readonly points: readonly string[];
  /** A longer list, one tap away. */
  readonly list?: { readonly title: string; readonly items: readonly string[] };
}
