import { describe, expect, it } from 'vitest';
import { figureSvg } from '../../src/drawings/figure-svg.ts';
import { type DrawingId, drawingIds, drawings } from '../../src/drawings/index.ts';
import { shapeOfMechanism } from '../../src/drawings/mark-shapes.ts';
import { type FigureMark, homesOf, placeMarks, zoneKey } from '../../src/drawings/placing.ts';
import { type DrawingView, type DrawnZone, type Point, zoneIds } from '../../src/drawings/shape.ts';

/**
 * A reader of SVG path data of our own, apart from the one in the drawings: the whole grammar of the absolute commands
 * M L H V C S Q T A Z and their relative forms (SVG 2, section 9.3), curves and arcs cut into chords.
 */
function flattened(d: string): Point[][] {
  const tokens = d.match(/[a-zA-Z]|[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?/g) ?? [];
  expect(tokens.join('').length, `only path data in: ${d.slice(0, 60)}`).toBe(d.replace(/[\s,]/g, '').length);
  const polygons: Point[][] = [];
  let at: Point = [0, 0];
  let start: Point = [0, 0];
  let k = 0;
  let command = '';
  const number = (): number => {
    const value = Number(tokens[k]);
    k += 1;
    if (!Number.isFinite(value)) throw new Error(`No number after ${command}: ${tokens[k - 1]} in ${d.slice(0, 60)}`);
    return value;
  };
  const add = (point: Point): void => {
    polygons[polygons.length - 1]?.push(point);
    at = point;
  };
  while (k < tokens.length) {
    if (/[a-zA-Z]/.test(tokens[k] as string)) {
      command = tokens[k] as string;
      k += 1;
    } else if (command === 'M') command = 'L';
    if (command === 'M') {
      start = [number(), number()];
      at = start;
      polygons.push([start]);
    } else if (command === 'L') add([number(), number()]);
    else if (command === 'C') {
      const [p0, p1, p2, p3]: Point[] = [at, [number(), number()], [number(), number()], [number(), number()]];
      for (let n = 1; n <= 12; n += 1) {
        const [t, u] = [n / 12, 1 - n / 12];
        const along = (axis: 0 | 1): number =>
          u ** 3 * (p0?.[axis] ?? 0) +
          3 * u * u * t * (p1?.[axis] ?? 0) +
          3 * u * t * t * (p2?.[axis] ?? 0) +
          t ** 3 * (p3?.[axis] ?? 0);
        add([along(0), along(1)]);
      }
    } else if (command === 'A') {
      const [rx, ry, turn, , sweep] = [number(), number(), number(), number(), number()];
      const end: Point = [number(), number()];
      expect([turn, Math.round(Math.hypot((end[0] - at[0]) / rx, (end[1] - at[1]) / ry) * 20) / 20]).toEqual([0, 2]); // half-turns only
      const middle: Point = [(at[0] + end[0]) / 2, (at[1] + end[1]) / 2];
      const from = Math.atan2((at[1] - middle[1]) / ry, (at[0] - middle[0]) / rx);
      for (let n = 1; n <= 24; n += 1) {
        const angle = from + ((sweep === 1 ? 1 : -1) * Math.PI * n) / 24;
        add([middle[0] + rx * Math.cos(angle), middle[1] + ry * Math.sin(angle)]);
      }
    } else if (command === 'Z') at = start;
    else throw new Error(`Unexpected command ${command} in ${d.slice(0, 60)}`);
  }
  return polygons;
}

/** Even-odd, by counting crossings of a ray to the right. */
function contains(polygons: readonly Point[][], [x, y]: Point): boolean {
  let crossings = 0;
  for (const polygon of polygons) {
    for (let n = 0; n < polygon.length; n += 1) {
      const [ax, ay] = polygon[n] as Point;
      const [bx, by] = polygon[(n + 1) % polygon.length] as Point;
      if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) crossings += 1;
    }
  }
  return crossings % 2 === 1;
}

const apart = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

const everyView: [string, DrawingView][] = drawingIds.flatMap((id) =>
  drawings[id].views.map((view): [string, DrawingView] => [`${id}, ${view.id}`, view]),
);
const named = (zone: DrawnZone): string => zoneKey(zone);

describe('every drawing', () => {
  it('carries the id it is filed under and shows its face', () => {
    for (const id of drawingIds) {
      expect(drawings[id].id).toBe(id);
      expect(drawings[id].views.map((view) => view.id)).toContain(drawings[id].face);
    }
  });

  it('has a plan and a side or front, and one place for what is true of the whole object', () => {
    for (const id of drawingIds) {
      const views = drawings[id].views;
      expect(views[0]?.id, id).toBe('plan');
      expect(['side', 'front'], id).toContain(views[1]?.id);
      expect(
        views.flatMap(({ zones }) => zones.filter(({ zone }) => zone === 'whole')),
        id,
      ).toHaveLength(1);
    }
  });

  it('covers the 23 types of the handbook and the sparterie form', () => {
    expect(drawingIds).toHaveLength(24);
  });
});

describe.each(everyView)('%s', (_, view) => {
  const [width, height] = view.viewBox;
  const outlines = new Map(view.zones.map((zone) => [zone, flattened(zone.d)]));
  const polygonsOf = (zone: DrawnZone): Point[][] => outlines.get(zone) as Point[][];

  it('is drawn with well-formed paths inside its frame', () => {
    expect(width).toBe(320);
    const strokes = [...view.outline.map(({ d }) => d), ...view.zones.map(({ d }) => d)];
    for (const d of strokes) {
      const points = flattened(d).flat();
      expect(points.length).toBeGreaterThan(1);
      const outside = points.filter(([x, y]) => !(x >= 0 && x <= width && y >= 0 && y <= height));
      expect(outside, `of ${width} × ${height} in ${d.slice(0, 50)}`).toEqual([]);
    }
  });

  it('names only known zones, each once', () => {
    const keys = view.zones.map(named);
    expect(new Set(keys).size).toBe(keys.length);
    for (const { zone } of view.zones) expect(zoneIds).toContain(zone);
  });

  it('closes every zone and gives it an inside', () => {
    for (const zone of view.zones) {
      expect(zone.d.endsWith('Z'), named(zone)).toBe(true);
      expect((zone.d.match(/M/g) ?? []).length, named(zone)).toBe((zone.d.match(/Z/g) ?? []).length);
    }
  });

  it('keeps label and spots of a zone inside that zone and no other', () => {
    for (const zone of view.zones) {
      for (const point of [zone.label, ...zone.spots]) {
        const holders = view.zones.filter((other) => contains(polygonsOf(other), point)).map(named);
        expect(holders, `${named(zone)} at ${point}`).toEqual([named(zone)]);
      }
    }
  });

  it('lets no two marks touch, and no mark cover the number of a part', () => {
    const spots = view.zones.flatMap((zone) => zone.spots);
    spots.forEach((spot, n) => {
      for (const other of spots.slice(n + 1))
        expect(apart(spot, other), `${spot} and ${other}`).toBeGreaterThanOrEqual(18);
    });
    for (const zone of view.zones.filter(({ part }) => part !== undefined)) {
      for (const spot of zone.spots) expect(apart(spot, zone.label), named(zone)).toBeGreaterThanOrEqual(18);
    }
  });

  it('lets no two zones overlap by more than a sliver', () => {
    const shared = new Map<string, number>();
    const areas = new Map<string, number>();
    const boxed = view.zones.map((zone) => {
      const points = polygonsOf(zone).flat();
      const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
      return { zone, left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
    });
    for (let x = 1; x < width; x += 4) {
      for (let y = 1; y < height; y += 4) {
        const here = boxed
          .filter((box) => x >= box.left && x <= box.right && y >= box.top && y <= box.bottom)
          .filter(({ zone }) => contains(polygonsOf(zone), [x, y]))
          .map(({ zone }) => named(zone));
        for (const key of here) areas.set(key, (areas.get(key) ?? 0) + 16);
        if (here.length > 1) shared.set(here.join(' and '), (shared.get(here.join(' and ')) ?? 0) + 16);
      }
    }
    for (const [pair, area] of shared) {
      const smaller = Math.min(...pair.split(' and ').map((key) => areas.get(key) ?? 0));
      expect(area / smaller, pair).toBeLessThan(0.04);
    }
  });

  it('gives a thumb room: thin zones have a grip that makes up for it', () => {
    for (const zone of view.zones) {
      expect(zone.grip, named(zone)).toBeGreaterThanOrEqual(0);
      const [xs, ys] = [
        polygonsOf(zone)
          .flat()
          .map(([x]) => x),
        polygonsOf(zone)
          .flat()
          .map(([, y]) => y),
      ];
      const reach = Math.min(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)) + zone.grip;
      expect(reach, `${named(zone)} reaches ${reach}`).toBeGreaterThanOrEqual(40);
    }
  });
});

describe('where a zone is drawn largest', () => {
  it.each(drawingIds)('%s has room for six marks there', (id) => {
    for (const [key, { zone }] of homesOf(drawings[id].views)) expect(zone.spots.length, key).toBeGreaterThanOrEqual(6);
  });
});

describe('directions', () => {
  const middleOf = (id: DrawingId, viewId: 'plan' | 'side' | 'under', zoneId: string): Point => {
    const view = drawings[id].view(viewId) as DrawingView;
    const points = flattened(view.zones.find(({ zone }) => zone === zoneId)?.d as string).flat();
    return [
      points.reduce((sum, [x]) => sum + x, 0) / points.length,
      points.reduce((sum, [, y]) => sum + y, 0) / points.length,
    ];
  };

  // The handbook's "top" photograph has the wearer's front down in the frame. Somebody who faces down the page has the
  // right hand on the left of it, as somebody walking south has the west on the right hand.
  it.each(['domeCrown', 'flatCrown', 'beret', 'turban', 'sparterieToque'] as const)(
    '%s seen from above has the front down and the wearer’s right on the left',
    (id) => {
      const [front, back] = [middleOf(id, 'plan', 'sideFront'), middleOf(id, 'plan', 'sideBack')];
      const [right, left] = [middleOf(id, 'plan', 'sideRight'), middleOf(id, 'plan', 'sideLeft')];
      expect(front[1]).toBeGreaterThan(back[1] + 50);
      expect(right[0]).toBeLessThan(left[0] - 50);
    },
  );

  it('from below left and right change places, because the block is rolled over sideways', () => {
    expect(middleOf('beret', 'under', 'sideFront')[1]).toBeGreaterThan(middleOf('beret', 'under', 'sideBack')[1]);
    expect(middleOf('beret', 'under', 'sideRight')[0]).toBeGreaterThan(middleOf('beret', 'under', 'sideLeft')[0]);
  });

  it.each(['domeCrown', 'shapedCrown', 'fullShape', 'poupee'] as const)(
    '%s seen from the wearer’s right looks to the right of the page',
    (id) => {
      expect(middleOf(id, 'side', 'sideFront')[0]).toBeGreaterThan(middleOf(id, 'side', 'sideBack')[0] + 50);
    },
  );

  it('the numbers of a sectional block run from the front round the wearer’s left', () => {
    const at = (part: number): Point =>
      drawings.puzzle.view('plan')?.zones.find((zone) => zone.part === part)?.label as Point;
    expect(at(1)[1]).toBeGreaterThan(at(2)[1]);
    expect(at(2)[0]).toBeGreaterThan(160); // wearer's left
    expect(at(3)[0]).toBeGreaterThan(160);
    expect(at(4)[0]).toBeLessThan(160); // right rear, the part missing from the demo's sectional fedora
    expect(at(5)[0]).toBeLessThan(160);
    expect(at(4)[1]).toBeLessThan(at(5)[1]);
  });
});

describe('plans', () => {
  const lopsided: DrawingId[] = ['sculptedBrim', 'stretcher', 'puzzle']; // swept; a turning bar; parts numbered one by one
  const mirror: Record<string, string> = {
    sideLeft: 'sideRight',
    sideRight: 'sideLeft',
    brimLeft: 'brimRight',
    brimRight: 'brimLeft',
  };
  it.each(drawingIds.filter((id) => !lopsided.includes(id)))('of a %s is the same left and right', (id) => {
    const zones = (drawings[id].view('plan') as DrawingView).zones
      .filter(({ zone }) => zone !== 'whole')
      .map((zone) => ({ zone: zone.zone, polygons: flattened(zone.d) }));
    const zoneAt = (point: Point): string => zones.find(({ polygons }) => contains(polygons, point))?.zone ?? 'none';
    let [same, all] = [0, 0];
    for (let x = 2.5; x < 160; x += 5) {
      for (let y = 2.5; y < 340; y += 5) {
        const [here, there] = [zoneAt([160 - x, y]), zoneAt([160 + x, y])];
        if (here === 'none' && there === 'none') continue;
        all += 1;
        if ((mirror[here] ?? here) === there) same += 1;
      }
    }
    expect(same / all).toBeGreaterThan(0.97);
  });

  it('of a crown is a head oval, length over width 1.24', () => {
    const points = flattened(
      drawings.domeCrown.view('plan')?.zones.find(({ zone }) => zone === 'ropeLine')?.d as string,
    )[0] as Point[];
    const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
    // British medians: 180 × 145 mm, women (handbook section 1.5).
    expect((Math.max(...ys) - Math.min(...ys)) / (Math.max(...xs) - Math.min(...xs))).toBeCloseTo(180 / 145, 2);
  });
});

describe('marks', () => {
  const mark = (number: number, over: Partial<FigureMark> = {}): FigureMark => ({
    number,
    zone: 'sideRight',
    mechanism: 'surface',
    grade: 2,
    ...over,
  });
  const views = drawings.domeCrown.views;

  it('sit in their zone, apart from one another, at a size for the page or for a thumbnail', () => {
    for (const reach of [9, 16.4]) {
      const { placed } = placeMarks(
        views,
        [1, 2, 3, 4].map((n) => mark(n, { zone: n > 2 ? 'tip' : 'sideRight' })),
        reach,
      );
      expect(placed.length).toBeGreaterThanOrEqual(2);
      placed.forEach(({ at, view }, n) => {
        for (const other of placed.slice(n + 1))
          if (other.view === view) expect(apart(at, other.at)).toBeGreaterThanOrEqual(2 * reach);
      });
    }
  });

  it('give way when there is no room: the slight ones are counted instead', () => {
    const { placed, left } = placeMarks(
      views,
      [...Array(12)].map((_, n) => mark(n + 1, { grade: n === 11 ? 4 : 1 })),
      9,
    );
    expect(placed.length + left.length).toBe(12);
    expect(left.length).toBeGreaterThan(0);
    expect(placed.map((each) => each.mark.number)).toContain(12);
  });

  it('of a zone the drawing does not show are counted, not lost', () => {
    expect(placeMarks(views, [mark(1, { zone: 'key' })], 9)).toMatchObject({ placed: [], left: [{ number: 1 }] });
    // Zones that came in an archive, named like what every object has.
    for (const zone of ['constructor', 'toString', '__proto__'] as unknown as (typeof zoneIds)[number][])
      expect(placeMarks(views, [mark(1, { zone })], 9)).toMatchObject({ placed: [], left: [{ number: 1 }] });
  });

  it('of a whole working face sit somewhere on the brim, which is drawn in quarters', () => {
    for (const drawing of [drawings.flatBrim, drawings.sculptedBrim, drawings.cartwheelBrim, drawings.fullShape]) {
      const { placed, left } = placeMarks(
        drawing.views,
        [mark(1, { zone: 'brimTop' }), mark(2, { zone: 'brimTop' })],
        9,
      );
      expect(left).toEqual([]);
      const brim = drawing.views.flatMap(({ zones }) => zones.filter(({ zone }) => zone.startsWith('brim')));
      for (const { at } of placed) expect(brim.some(({ spots }) => spots.includes(at))).toBe(true);
    }
  });

  it('of a numbered part sit on that part; of a part nobody drew, anywhere in the zone', () => {
    const { placed } = placeMarks(drawings.puzzle.views, [mark(1, { zone: 'sideBack', part: 4 })], 9);
    const part4 = drawings.puzzle.views
      .flatMap(({ zones }) => zones)
      .filter((zone) => zone.zone === 'sideBack' && zone.part === 4);
    expect(part4.some(({ spots }) => spots.some((spot) => spot === placed[0]?.at))).toBe(true);
    expect(placeMarks(drawings.domeCrown.views, [mark(1, { part: 9 })], 9).placed).toHaveLength(1);
  });

  it('pointed at by hand stay where they were put', () => {
    const at = { view: 'plan' as const, point: [100, 90] as const };
    expect(placeMarks(views, [mark(1, { at })], 9).placed[0]).toMatchObject({ view: 'plan', at: [100, 90] });
  });

  it('tell the mechanisms apart by outline alone', () => {
    const families = [
      'structure',
      'loss',
      'surface',
      'biology',
      'geometry',
      'assembly',
      'contamination',
      'provenance',
      'sparterie',
      'shell',
      'metal',
    ];
    expect(new Set(families.map((family) => shapeOfMechanism(family).d)).size).toBe(families.length);
    expect(shapeOfMechanism('repair').counter).toBeDefined(); // the circle again, but half dark
    expect(shapeOfMechanism('something new').d).toBe(shapeOfMechanism('surface').d);
  });
});

describe('the figure for a report', () => {
  const marks: FigureMark[] = [
    { number: 1, zone: 'tip', mechanism: 'structure', grade: 1 },
    { number: 2, zone: 'whole', mechanism: 'contamination', grade: 4 },
    { number: 3, zone: 'key', mechanism: 'assembly', grade: 3 },
  ];

  it('is one SVG document with its size, its title and its marks, and points to nothing outside', () => {
    const svg = figureSvg(drawings.domeCrown, marks, { width: 420, title: 'Damage map' });
    expect(svg).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg"[^>]* width="420"/);
    expect(svg).toContain('<title>Damage map</title>');
    expect(svg.match(/>1<\/text>/g)).toHaveLength(1);
    expect(svg).toContain('+1'); // the key is not drawn on a dome
    expect(svg.replace('http://www.w3.org/2000/svg', '')).not.toMatch(
      /href|url\(|https?:| style=|<script|<image|@import/,
    );
  });

  it('escapes what people typed', () => {
    const svg = figureSvg(drawings.tip, [], { width: 160, title: `<script>alert("x")</script> & 'so on'\u0000\u001b` });
    expect(svg).not.toContain('<script');
    expect(svg).toContain('&#60;script&#62;alert(&#34;x&#34;)&#60;/script&#62; &#38; &#39;so on&#39;</title>');
  });

  it('is the same every time', () => {
    const options = { width: 320, title: 'Once' };
    expect(figureSvg(drawings.sparterieToque, marks, options)).toBe(figureSvg(drawings.sparterieToque, marks, options));
  });

  it('keeps a number legible when small: at least 8 px of type at 160 px', () => {
    const sizes = [
      ...figureSvg(drawings.domeCrown, [marks[0] as FigureMark], { width: 160, title: '', view: 'side' }).matchAll(
        /font-size="([\d.]+)" font-weight/g,
      ),
    ];
    expect(sizes.length).toBe(1);
    for (const [, size] of sizes) expect(Number(size) / 2).toBeGreaterThanOrEqual(8);
  });

  it('is small enough to stand in a report by the dozen', () => {
    for (const id of drawingIds)
      expect(figureSvg(drawings[id], [], { width: 420, title: id }).length, id).toBeLessThan(50_000);
  });
});
