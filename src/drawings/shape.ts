/**
 * What a drawing of a hat block is made of. Pure data: no colours, no DOM. One unit is one CSS pixel when a view is
 * shown 320 px wide, so a zone of 44 units is a thumb's width on the smallest phone.
 *
 * Directions, the same everywhere:
 * - Plan (from above): the wearer's front is DOWN the page, as in the "top" photograph. Somebody facing down the page
 *   walks south on a map, and the right hand of somebody walking south points west: the wearer's RIGHT is on the LEFT.
 * - Under (from below): the block is rolled over sideways, front still down, so the wearer's right is on the right.
 * - Side: from the wearer's right, a little above. Standing at somebody's right shoulder you see them face to your
 *   right, so the FRONT is on the right of the page.
 * - Front: from the front, a little above; the wearer's right is on the left, as in a mirror's opposite.
 */
export const zoneIds = [
  'tip',
  'sideFront',
  'sideLeft',
  'sideRight',
  'sideBack',
  'ridge',
  'valley',
  'ropeLine',
  'edgeGroove',
  'lowerEdge',
  'collar',
  'headOpening',
  'brimTop',
  'brimFront',
  'brimRight',
  'brimBack',
  'brimLeft',
  'brimUnder',
  'base',
  'stemHole',
  'jointFace',
  'key',
  'dowel',
  'glueLine',
  'interior',
  'wire',
  'covering',
  'whole',
] as const;

export type DrawnZoneId = (typeof zoneIds)[number];
export type ViewId = 'plan' | 'side' | 'front' | 'under';
export type Point = readonly [x: number, y: number];

/**
 * One line of the pen. `contour` is the outline, `detail` an inner edge, `hatch` shading, `hidden` what the eye cannot
 * see (dashed), `ink` a closed sliver filled solid: a line that swells, as a pressed nib leaves it.
 * `fill` paints the inside first, so that nearer things cover farther ones: `paper`, or `shade` for a hollow.
 */
export interface Stroke {
  d: string;
  weight: 'contour' | 'detail' | 'hatch' | 'hidden' | 'ink';
  fill?: 'paper' | 'shade';
}

/** A word beside the drawing or a number struck on the block, centred at its point. */
export interface Lettering {
  at: Point;
  text: string;
  role: 'front' | 'struck';
}

export interface DrawnZone {
  zone: DrawnZoneId;
  /** Number of the part of a sectional block, as struck on it. */
  part?: number;
  /** Closed path, even-odd: where the zone is filled and where a tap lands. */
  d: string;
  /** Where one number or tick may sit; the number of a part is written there, and no mark covers it. */
  label: Point;
  /** Where numbered marks go, best first; at least 18 units from one another and from those of every other zone. */
  spots: readonly Point[];
  /** Width of an invisible stroke round a thin zone, so that a thumb can hit it; 0 where the zone is broad enough. */
  grip: number;
}

export interface DrawingView {
  id: ViewId;
  title: string;
  viewBox: readonly [width: number, height: number];
  outline: readonly Stroke[];
  lettering: readonly Lettering[];
  /** Whether zones are numbered parts. */
  numbered: boolean;
  zones: readonly DrawnZone[];
}

export interface BlockDrawing {
  id: string;
  /** The view by which a milliner knows it at a glance: the one for thumbnails. */
  face: ViewId;
  views: readonly DrawingView[];
  /** One view alone, without working out the others; nothing if the block is not drawn so. */
  view: (id: ViewId) => DrawingView | undefined;
}
