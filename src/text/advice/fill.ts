import type { FillAnswer, FillerChoice, FillerObjection } from '../../core/advice/fill.ts';
import { FILLERS } from '../../core/physics/fillers.ts';
import { hoursRange, list, opening } from '../format.ts';
import { counted, volume } from './figures.ts';
import type { AdviceWords } from './words.ts';

const objections: Readonly<Record<FillerObjection, string>> = { pins: 'takes no pins', steam: 'softens in steam' };

function fillerWords({ filler, plan, objections: against }: FillerChoice): readonly [string, string] {
  const { best, worst } = plan.waitHours;
  const but = list(against.map((code) => objections[code]));
  return [
    opening(FILLERS[filler].name),
    `${counted(plan.layers, 'layer')}, ${hoursRange(best, worst)} to dry${but ? `; ${but}` : ''}`,
  ];
}

/** A hollow: how much, in how many layers, how long each filler dries. */
export function fillWords({ question, volumeMm3, fillers }: FillAnswer): AdviceWords {
  const { low, high } = volumeMm3;
  const first = fillers[0];
  const lead = question.moving
    ? 'It opens and shuts with the seasons: take something soft that comes out again, such as a wax-resin stick. A hard filler is squeezed out or splits the wood.'
    : question.onPinnedLine
      ? 'Pins and cord go in here: use wood, not paste.'
      : 'Waiting sets the calendar, not work: count the layers.';
  return {
    title: question.moving ? 'Fill it softly' : 'What to fill it with',
    tone: question.moving || question.onPinnedLine ? 'care' : 'plain',
    lead,
    facts: [
      ['To fill', volume(low, high)],
      ...(first ? [['To mix, with what it shrinks', volume(first.mixMm3.low, first.mixMm3.high)] as const] : []),
      ...fillers.map(fillerWords),
    ],
    points: ['Hollows filled together dry together. The label wins over any of these hours.'],
  };
}
