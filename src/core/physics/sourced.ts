/**
 * How well a figure is known.
 * `looked-up` seen in published material · `memory` a publication as remembered, not re-read · `own` worked out or ruled here ·
 * `practice` common practice, no source · `estimate` a trade estimate.
 */
export type Confidence = 'looked-up' | 'memory' | 'own' | 'practice' | 'estimate';

/** A row of data that says where its figures come from. */
export interface Sourced {
  readonly source: string;
  readonly confidence: Confidence;
}

/** Best, most likely and worst case of one quantity; the unit stands in the field's name. */
export interface BestLikelyWorst {
  readonly best: number;
  readonly likely: number;
  readonly worst: number;
}

/** A closed interval; the unit stands in the field's name. */
export interface Span {
  readonly low: number;
  readonly high: number;
}

/** For tables whose rows differ in their figures but all say where these come from. */
export type SourcedRow = Sourced & { readonly [figure: string]: unknown };
