/**
 * The photographs of the example sale: what each shows. They are rendered, not taken; how is in `tests/render/`. Their
 * files lie in `public/example/` and are fetched only when the example is opened.
 */

export interface ExamplePicture {
  /** Name of its file, without the ending. */
  readonly file: string;
  /** Number of the lot it is of. */
  readonly lot: string;
  /** Of the catalogue's views. */
  readonly view: string;
  /** Damage kind of the finding it shows; without it the whole block. */
  readonly shows?: string;
  readonly stage?: 'before' | 'after';
  readonly caption: string;
  /** How far the thing to be measured lies above the card or coin, towards the lens, mm; negative: farther. */
  readonly aboveMm?: number;
}

const of = (lot: string, view: string, caption: string, more: Partial<ExamplePicture> = {}): ExamplePicture => ({
  ...{ file: `${lot}-${view}`, lot, view, caption },
  ...more,
});

/** In the order they come: each lot's best view first, so that the shelf has its faces before the close-ups. */
export const examplePictures: readonly ExamplePicture[] = [
  of('L01', 'threeQuarter', 'On the trestle table with its ticket'),
  of('L02', 'threeQuarter', 'Assembled, the key in place'),
  of('L03', 'threeQuarter', 'On the table; it rocks'),
  of('L04', 'threeQuarter', 'From the front nothing shows'),
  of('L05', 'threeQuarter', 'Blister on the tip, rust along the edge'),
  of('L06', 'threeQuarter', 'Put together without part 4, from its good side'),
  of('L07', 'threeQuarter', 'A piece of the ridge has broken away'),
  of('L08', 'threeQuarter', 'The pair, one turned over'),
  of('L09', 'threeQuarter', 'Dipped at front and back'),
  of('L10a', 'threeQuarter', 'Button block out of the box'),
  of('L10b', 'threeQuarter', 'Balsa, dented in three places'),
  of('L10c', 'threeQuarter', 'Cork crumbling at the edge'),
  of('L10d', 'threeQuarter', 'Flaking paint, not to be sanded'),
  of('L10e', 'threeQuarter', 'Round, unpinned, freshly stained'),
  of('L10f', 'threeQuarter', 'Stand; the dowel is loose'),
  of('L10g', 'threeQuarter', 'Halo block'),
  of('L10h', 'threeQuarter', 'Pressing piece; its block is not here'),
  of('L10i', 'threeQuarter', 'Percher, finish worn on the tip'),
  of('L10a', 'threeQuarter', 'The whole mixed box, lot L10', { file: 'L10-box' }),
  of('L01', 'under', 'Size stamp and inventory number'),
  of('L01', 'marks', 'The stamp, square on, with a card'),
  of('L01', 'damageClose', 'The dent on the tip, with a 2p', { shows: 'dent', aboveMm: -2 }),
  of('L02', 'under', 'Key and four shell parts from below'),
  of('L02', 'partsLaid', 'All five parts'),
  of('L02', 'damageClose', 'Joints standing open, old size in them', { shows: 'bindingJoints' }),
  of('L03', 'top', 'Cutting lines and knife marks'),
  of('L03', 'damageClose', 'The open glue line, with a card', { shows: 'openGlueLine', aboveMm: -1 }),
  of('L03', 'damageContext', 'The cord’s groove worn away', { shows: 'wornGroove' }),
  of('L04', 'back', 'The back, and what fell at three taps'),
  of('L04', 'damageClose', 'The holes; the card leans on the brim, nearer than they are', {
    ...{ shows: 'flightHoles', aboveMm: -15 },
  }),
  of('L04', 'under', 'Tide lines of damp, half a stamp'),
  of('L05', 'left', 'The tear'),
  of('L05', 'damageClose', 'The tear, with a card standing before it', { shows: 'sparterieTear', aboveMm: -12 }),
  of('L05', 'marks', 'Pencil and hat-room ticket inside', { shows: 'markAtRisk' }),
  of('L06', 'partsLaid', 'Parts 1, 2, 3, 5 and the key; the place of 4 is empty', { shows: 'partsMissing' }),
  of('L06', 'assembled', 'From the right rear, where part 4 is gone'),
  of('L06', 'marks', 'Stamp and numbers on the key'),
  of('L06', 'damageClose', 'A check on the left ridge, with a 2p in the crease', { shows: 'check', aboveMm: 14 }),
  of('L07', 'back', 'Old holes all over'),
  of('L07', 'damageClose', 'Holes in the tip, with a 2p', { shows: 'flightHoles' }),
  of('L07', 'under', 'Decay, and the carver’s bird', { shows: 'decay' }),
  of('L08', 'under', 'White bloom underneath', { shows: 'corrosion' }),
  of('L08', 'rake1', 'The dent under a low lamp, with a 2p', { shows: 'metalDent' }),
  of('L08', 'marks', 'Size and style number'),
  of('L09', 'top', 'From above'),
  of('L09', 'damageContext', 'The split from the opening towards the back', { shows: 'split' }),
  of('L09', 'damageClose', 'The split, with a card', { shows: 'split' }),
  of('L09', 'damageClose', 'To try before and after on: the same split as it would look with a spline in it', {
    ...{ file: 'L09-after', shows: 'split', stage: 'after' },
  }),
];
