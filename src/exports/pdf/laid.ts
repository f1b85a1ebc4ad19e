/** A part of the report measured out and ready to be drawn where the page stands. Lengths in points. */
export interface Laid {
  /** Kept free above it, unless it opens a page. */
  readonly before: number;
  /** What must fit where it begins: the whole, or as much as may not be torn apart. */
  readonly first: number;
  /** A heading never ends a page: it goes where what it heads begins. */
  readonly headsNext?: true;
  /** Draws and leaves the page below itself, going to new pages as it must. */
  readonly draw: () => void | Promise<void>;
}
