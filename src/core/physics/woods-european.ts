import type { Shrinkage, Wood } from './wood.ts';
import { MOVEMENT_SPREAD, perPointFromShrinkage } from './wood.ts';

const genus = (
  name: string,
  botanical: string,
  tangentialPct: number,
  radialPct: number,
  uncertainty: number = MOVEMENT_SPREAD.genusAverage,
) => {
  const shrinkage: Shrinkage = {
    radialPct,
    tangentialPct,
    source:
      'table 1 of a chapter on wood in The Structural Conservation of Panel Paintings (Getty Conservation Institute 1998)',
    confidence: 'looked-up',
  };
  const perPoint = {
    radial: perPointFromShrinkage(radialPct),
    tangential: perPointFromShrinkage(tangentialPct),
    source: 'derived from that shrinkage by Wood Handbook eq. 13-3 at 10 % moisture',
    confidence: 'looked-up',
  } as const;
  return { name, botanical, perPoint, shrinkage, uncertainty } satisfies Wood;
};

/** Genera as named in Europe: averages of shrinkage, with coefficients derived from them. Tangential first, as the source prints it. */
export const EUROPEAN_WOODS = {
  lime: genus('lime, linden', 'Tilia', 9.5, 6.8),
  alder: genus('alder', 'Alnus', 7.3, 4.4),
  beech: genus('beech', 'Fagus', 11.8, 5.8),
  maple: genus('maple, European sycamore', 'Acer', 8.8, 4.2),
  poplar: genus('poplar', 'Populus', 8.5, 3.4),
  walnut: genus('walnut', 'Juglans regia', 6.4, 4.3),
  ash: genus('ash', 'Fraxinus', 8.3, 5.2),
  oak: genus('oak', 'Quercus', 10.2, 5.2),
  mahoganyGenus: genus('mahogany, genus average', 'Swietenia', 5.1, 3.2, 0.4),
  cherry: genus('cherry', 'Prunus', 7.8, 4.2),
  chestnut: genus('sweet chestnut', 'Castanea', 6.8, 4),
  willow: genus('willow', 'Salix', 7.2, 4.2),
  elm: genus('elm', 'Ulmus', 9.1, 5.2),
  scotsPine: genus('Scots pine, deal', 'Pinus sylvestris', 7.7, 4),
  spruce: genus('spruce', 'Picea', 7.4, 3.6),
} as const satisfies Record<string, Wood>;
