/**
 * Outlines of the numbered marks, one per mechanism, so that they differ without colour. Each is drawn round (0, 0)
 * with a reach of about 1; the caller scales it. A mechanism not listed here gets the circle.
 */
const regular = (corners: number, turn: number, reach: number): string =>
  `${Array.from({ length: corners }, (_, k) => {
    const angle = ((turn + (360 * k) / corners) * Math.PI) / 180;
    const at = (value: number): string => String(Math.round(value * reach * 1000) / 1000);
    return `${k === 0 ? 'M' : 'L'}${at(Math.cos(angle))} ${at(Math.sin(angle))}`;
  }).join('')}Z`;

const circle = 'M-1 0A1 1 0 1 1 1 0A1 1 0 1 1 -1 0Z';

/** `drop` moves the number to where the shape has room for it; `room` scales it to fit. */
export interface MarkShape {
  d: string;
  /** A part that always takes the opposite tone, so that the mark is two-toned at every grade. */
  counter?: string;
  drop: number;
  room: number;
}

const shapes: Record<string, MarkShape> = {
  structure: { d: 'M0 -1.22L1.2 0.88L-1.2 0.88Z', drop: 0.3, room: 0.86 },
  loss: { d: 'M0 -1.25L1.25 0L0 1.25L-1.25 0Z', drop: 0, room: 0.92 },
  surface: { d: circle, drop: 0, room: 1 },
  biology: {
    d: 'M-0.55 -1.08L0.55 -1.08L0.55 -0.55L1.08 -0.55L1.08 0.55L0.55 0.55L0.55 1.08L-0.55 1.08L-0.55 0.55L-1.08 0.55L-1.08 -0.55L-0.55 -0.55Z',
    drop: 0,
    room: 0.98,
  },
  geometry: { d: 'M-0.92 -0.92L0.92 -0.92L0.92 0.92L-0.92 0.92Z', drop: 0, room: 1 },
  assembly: { d: regular(6, 0, 1.12), drop: 0, room: 1 },
  repair: { d: circle, counter: 'M0 -1A1 1 0 1 0 0 1C-0.75 0.62 -0.75 -0.62 0 -1Z', drop: 0, room: 0.92 },
  contamination: { d: 'M0 1.22L1.2 -0.88L-1.2 -0.88Z', drop: -0.3, room: 0.86 },
  provenance: { d: 'M-1.25 0L-0.62 -0.86L1.05 -0.86L1.05 0.86L-0.62 0.86Z', drop: 0, room: 0.96 },
  sparterie: {
    d: `${Array.from({ length: 16 }, (_, k) => {
      const reach = k % 2 === 0 ? 1.24 : 0.88;
      const angle = (Math.PI * k) / 8;
      return `${k === 0 ? 'M' : 'L'}${Math.round(Math.cos(angle) * reach * 1000) / 1000} ${Math.round(Math.sin(angle) * reach * 1000) / 1000}`;
    }).join('')}Z`,
    drop: 0,
    room: 0.94,
  },
  shell: { d: 'M-1.1 0.85L-1.1 0C-1.1 -1.45 1.1 -1.45 1.1 0L1.1 0.85Z', drop: 0.05, room: 0.98 },
  metal: { d: 'M-0.72 -0.86L0.72 -0.86L1.22 0.86L-1.22 0.86Z', drop: 0.04, room: 0.94 },
};

export const shapeOfMechanism = (mechanism: string): MarkShape => shapes[mechanism] ?? { d: circle, drop: 0, room: 1 };

/** How a mark is drawn, for the page and for the report alike. Lengths in view units, but `outline` in parts of `scale`. */
export interface MarkLayout extends MarkShape {
  scale: number;
  /** Grades 3 and 4 are solid with a light number, 1 and 2 light with a dark one: read in black and white. */
  solid: boolean;
  /** Thin at grade 1, heavy at grade 2. */
  outline: number;
  /** Grade 4 is ringed: its shape drawn smaller, with a line round it. */
  ringed: boolean;
  /** Size of the shape itself within the mark. */
  body: number;
  textSize: number;
  textY: number;
}

export function layOut(
  { mechanism, grade, number }: { mechanism: string; grade: number; number: number },
  reach: number,
): MarkLayout {
  const shape = shapeOfMechanism(mechanism);
  const textSize = reach * shape.room * (grade === 4 ? 0.9 : 1) * (number > 99 ? 0.85 : number > 9 ? 1.05 : 1.28);
  return {
    ...shape,
    scale: reach * 0.94,
    solid: grade >= 3,
    outline: grade === 2 ? 0.29 : 0.145,
    ringed: grade === 4,
    body: grade === 4 ? 0.8 : 1,
    textSize,
    // Figures are about 0.72 of the type size high.
    textY: shape.drop * reach + textSize * 0.36,
  };
}
