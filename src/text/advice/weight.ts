import type { WeightAnswer } from '../../core/advice/weight.ts';
import type { WeightVerdict } from '../../core/physics/weight-check.ts';
import { type LengthUnits, length } from '../format.ts';
import { shares, span, tidy } from './figures.ts';
import type { AdviceWords } from './words.ts';

const verdicts: Readonly<Record<WeightVerdict, Pick<AdviceWords, 'title' | 'tone' | 'lead'>>> = {
  eaten: {
    title: 'Far too light: eaten inside?',
    tone: 'stop',
    lead: 'A sound dome of its wood would weigh much more. Probe it, and knock all round; a hollowed block is light without being eaten.',
  },
  'look-for-tunnels': {
    title: 'Light for its wood: look for tunnels',
    tone: 'care',
    lead: 'Knock all round and listen for a papery place; look for holes from below.',
  },
  'as-expected': {
    title: 'It weighs what its wood should',
    tone: 'ok',
    lead: 'Nothing speaks for large hollows. Small galleries do not show on a scale.',
  },
  'heavier-than-its-wood': {
    title: 'Heavier than its wood',
    tone: 'care',
    lead: 'Damp, another wood, metal inside, or consolidant from an old repair.',
  },
};

/** The scale against the wood. */
export function weightWords({ massG, dome, densityKgM3, reading }: WeightAnswer, units: LengthUnits): AdviceWords {
  const { expectedG, share, verdict, certain } = reading;
  const { lengthMm, widthMm, depthMm } = dome;
  return {
    ...verdicts[verdict],
    facts: [
      ['On the scale', `${tidy(massG, 0)} g`],
      ['A dome of that wood', `${span(expectedG.low, expectedG.high)} g`],
      ['So it weighs, of that', shares(share.low, share.high)],
      ['Reckoned with', `${length(lengthMm, units)} × ${length(widthMm, units)} × ${length(depthMm, units)}`],
      ['Density', `${span(densityKgM3.low, densityKgM3.high)} kg/m³`],
    ],
    points: [
      ...(certain ? [] : ['Wood of one name differs that much from piece to piece: the verdict could be another.']),
      'Only for solid crowns. Straight sides make it up to half as heavy again; a hollowed block is lighter.',
    ],
  };
}
