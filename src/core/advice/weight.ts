import type { Span } from '../physics/sourced.ts';
import { type WeightReading, weighAsDome } from '../physics/weight-check.ts';
import { type Outcome, waitingFor } from './outcome.ts';
import { type Dome, domeOf } from './size-of-block.ts';
import { onBlock, type Subject } from './subject.ts';
import { SOURCES } from './usual.ts';
import { densityOf } from './wood-of-block.ts';

export interface WeightAnswer {
  readonly massG: number;
  readonly dome: Dome;
  readonly densityKgM3: Span;
  readonly reading: WeightReading;
}

/** The scale against a dome of that wood. @throws RangeError unless everything is above 0. SOURCE: {@link weighAsDome} */
export function weigh(massG: number, dome: Dome, densityKgM3: Span): WeightAnswer {
  const { lengthMm, widthMm, depthMm } = dome;
  return { massG, dome, densityKgM3, reading: weighAsDome(lengthMm, widthMm, depthMm, { massG, densityKgM3 }) };
}

/** Whether the block weighs what its wood should: a hint of what was eaten inside. */
export function weightOutcome(subject: Subject): Outcome<WeightAnswer> {
  const massG = onBlock(subject, 'weightG');
  const dome = domeOf(subject);
  const density = densityOf(subject);
  const wanted = [...(massG === null ? ['weightG'] : []), ...('wanted' in dome ? dome.wanted : [])];
  if (massG === null || 'wanted' in dome || density === null)
    return waitingFor(
      wanted.map((measure) => ({ measure })),
      [],
      [SOURCES.dome],
    );
  return {
    answer: weigh(massG, dome, density.span),
    needs: [],
    assumed: density.assumed,
    cautions: [],
    sources: [SOURCES.dome],
  };
}
