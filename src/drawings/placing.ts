import type { BlockDrawing, DrawingView, DrawnZone, DrawnZoneId, Point, ViewId } from './shape.ts';
import { areaOf, polygonsOf } from './tools/path.ts';

/** A finding on the drawing. `mechanism` is the family of the damage and gives the shape; `number` is the finding's. */
export interface FigureMark {
  number: number;
  zone: DrawnZoneId;
  part?: number;
  /** Where exactly, when somebody pointed at it: in the units of that view. */
  at?: { view: ViewId; point: Point };
  mechanism: string;
  grade: 1 | 2 | 3 | 4;
}

export interface PlacedMark {
  mark: FigureMark;
  view: ViewId;
  at: Point;
}

/** One zone of one numbered part has one key, in whatever views it is drawn. */
export const zoneKey = ({ zone, part }: { zone: DrawnZoneId; part?: number }): string =>
  part === undefined ? zone : `${zone}:${part}`;

export const viewsToShow = (drawing: BlockDrawing, only?: ViewId): readonly DrawingView[] => {
  const chosen = only && drawing.view(only);
  return chosen ? [chosen] : drawing.views;
};

/** Of the views shown, the one where each zone is drawn largest: its home, where it is picked and marked. */
export function homesOf(views: readonly DrawingView[]): Map<string, { view: DrawingView; zone: DrawnZone }> {
  const homes = new Map<string, { view: DrawingView; zone: DrawnZone; area: number }>();
  for (const view of views) {
    for (const zone of view.zones) {
      const area = areaOf(polygonsOf(zone.d));
      if (area > (homes.get(zoneKey(zone))?.area ?? 0)) homes.set(zoneKey(zone), { view, zone, area });
    }
  }
  return homes;
}

/** Zones that no drawing shows as one, by the zones it is drawn in. */
const DRAWN_AS: ReadonlyMap<string, readonly DrawnZoneId[]> = new Map([
  // A map, because a zone may come from elsewhere and be called `constructor`.
  ['brimTop', ['brimFront', 'brimRight', 'brimBack', 'brimLeft']],
]);

/**
 * Finds every mark its place, worst first, so that no two of a view overlap.
 * @param reach radius of a mark in view units
 * @returns the placed marks in the order of their numbers, and those for which the views shown have no zone or no room
 */
export function placeMarks(
  views: readonly DrawingView[],
  marks: readonly FigureMark[],
  reach: number,
): { placed: PlacedMark[]; left: FigureMark[] } {
  const homes = homesOf(views);
  const placed: PlacedMark[] = [];
  const left: FigureMark[] = [];
  const gapTo = (view: ViewId, [x, y]: Point): number =>
    Math.min(...placed.filter((p) => p.view === view).map(({ at }) => Math.hypot(at[0] - x, at[1] - y)), 1000);
  const pointedAt = (mark: FigureMark): boolean => views.some(({ id }) => id === mark.at?.view);
  const order = [...marks].sort(
    (a, b) => Number(pointedAt(b)) - Number(pointedAt(a)) || b.grade - a.grade || a.number - b.number,
  );
  for (const mark of order) {
    if (mark.at && pointedAt(mark)) {
      placed.push({ mark, view: mark.at.view, at: mark.at.point });
      continue;
    }
    const own = homes.has(zoneKey(mark)) ? zoneKey(mark) : mark.zone;
    const keys = homes.has(own) ? [own] : (DRAWN_AS.get(mark.zone) ?? []);
    // The first free spot, in the order of the drawing: the same finding keeps its place when others come and go.
    const place = keys
      .flatMap((key) => homes.get(key) ?? [])
      .flatMap(({ view, zone }) => zone.spots.map((at) => ({ view: view.id, at })))
      .find(({ view, at }) => gapTo(view, at) >= reach * 2);
    if (place) placed.push({ mark, ...place });
    else left.push(mark);
  }
  placed.sort((a, b) => a.mark.number - b.mark.number);
  return { placed, left };
}
