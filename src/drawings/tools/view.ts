import type { BlockDrawing, DrawingView, DrawnZone, DrawnZoneId, Lettering, Point, Stroke, ViewId } from '../shape.ts';
import type { Camera } from './camera.ts';
import { type Level, onLevel } from './oval-body.ts';
import { closedPath, thinned } from './path.ts';
import { line } from './pen.ts';
import { type BareZone, withSpots } from './spots.ts';

/** Small words for setting a view together. */

export const zone = (id: DrawnZoneId, d: string | readonly Point[], part?: number): BareZone => ({
  zone: id,
  d: typeof d === 'string' ? d : closedPath(thinned(d, 0.12)),
  ...(part !== undefined && { part }),
});

/** A tie-on label in a corner of the plan: what is true of the whole object (smell, warp, a false age) is written there. */
export const tag = (x: number, y: number): BareZone =>
  zone('whole', [
    [x + 12, y],
    [x + 80, y],
    [x + 80, y + 50],
    [x + 12, y + 50],
    [x, y + 38],
    [x, y + 12],
  ]);

export const frontIsDown = (x: number, y: number): Lettering => ({ at: [x, y], text: 'front ↓', role: 'front' });
export const frontIsRight = (x: number, y: number): Lettering => ({ at: [x, y], text: 'front →', role: 'front' });

const titles: Record<ViewId, string> = {
  plan: 'From above',
  side: 'From the wearer’s right',
  front: 'From the front',
  under: 'From below',
};

/** The shadow on the table: a few strokes to the right of the foot, for the light falls from the left. */
export const groundShade = (see: Camera, foot: Level): Stroke[] =>
  [0, 1, 2, 3, 4].map((row) => {
    const [x, y] = onLevel(see, foot, 14 + row * 11);
    const length = Math.min(30 - row * 4.5 + 4 * Math.sin(row * 2.2), 313 - x);
    return line(
      [
        [x + 3, y + 1.5],
        [x + 3 + Math.max(length, 3), y + 1.5],
      ],
      'hatch',
    );
  });

/** Neighbouring strokes of one weight become one path: a drawing has hundreds of hatches, a page should not. */
function joined(strokes: readonly Stroke[]): Stroke[] {
  const result: Stroke[] = [];
  for (const stroke of strokes) {
    const last = result[result.length - 1];
    if (last && last.weight === stroke.weight && !last.fill && !stroke.fill) last.d += stroke.d;
    else result.push({ ...stroke });
  }
  return result;
}

/**
 * One view. The zones come as a function: they, and the spots in them, are worked out when a finger or a mark first needs
 * them, which a silhouette in a list never does.
 * @param numbered whether its zones are parts whose numbers are written on them
 */
export function view(
  id: ViewId,
  height: number,
  parts: {
    outline: readonly Stroke[];
    zones: () => readonly BareZone[];
    lettering?: readonly Lettering[];
    numbered?: boolean;
  },
): DrawingView {
  let zones: DrawnZone[] | undefined;
  return {
    id,
    title: titles[id],
    viewBox: [320, height],
    outline: joined(parts.outline),
    lettering: parts.lettering ?? [],
    numbered: parts.numbered ?? false,
    get zones() {
      zones ??= withSpots(parts.zones());
      return zones;
    },
  };
}

/**
 * A drawing from the makers of its views. Each view is worked out when it is first looked at and then kept: a list of all
 * types shows one view of each, and all three of all at once would keep a phone busy for seconds.
 */
export function drawing(id: string, face: ViewId, makers: Partial<Record<ViewId, () => DrawingView>>): BlockDrawing {
  const made = new Map<ViewId, DrawingView>();
  const get = (wanted: ViewId): DrawingView | undefined => {
    const known = made.get(wanted) ?? makers[wanted]?.();
    if (known) made.set(wanted, known);
    return known;
  };
  return {
    id,
    face,
    view: get,
    get views() {
      return (Object.keys(makers) as ViewId[]).flatMap((each) => get(each) ?? []);
    },
  };
}
