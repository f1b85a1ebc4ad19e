/** What the owner lets into a report. Private names, places and prices stay out unless ticked. */
export interface ReportWishes {
  readonly photographs: boolean;
  /** Views taken before and after the work, beside each other. */
  readonly pairs: boolean;
  /** What the wood science says to the findings. */
  readonly advice: boolean;
  readonly plan: boolean;
  readonly working: boolean;
  readonly marks: boolean;
  /** The buyer's card as it was filled in. */
  readonly diligence: boolean;
  readonly hours: boolean;
  readonly prices: boolean;
  readonly privateNames: boolean;
}

export const usualWishes: ReportWishes = {
  photographs: true,
  pairs: true,
  advice: true,
  plan: true,
  working: true,
  marks: true,
  diligence: true,
  hours: true,
  prices: false,
  privateNames: false,
};
