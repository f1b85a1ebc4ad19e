import type { GateEffect } from './catalogue.ts';
import type { LotRow } from './lots.ts';
import { isWanted } from './lots.ts';
import { WATCHES, type Watch } from './quarantine.ts';
import type { Place, SaleTerms } from './records.ts';
import { minor } from './units.ts';
import { allocateLot } from './value.ts';
import { allInAt } from './worth.ts';

/** What becomes of a block that was bought. Money in whole minor units. */
export interface BroughtHome {
  readonly blockId: string;
  /** Its share of the hammer or ticket price, and of everything on top: by worth, not by count. */
  readonly price: number;
  readonly fees: number;
  /** On the shelf; apart, where signs ask for it; gone again, where nobody wants it of its lot. */
  readonly place: Extract<Place, 'toDo' | 'quarantine' | 'letGo'>;
  /** What it is to be watched for; null where no watching ends it, or none is needed. */
  readonly watch: Watch | null;
}

const asksFor = (effects: readonly GateEffect[], effect: GateEffect): boolean => effects.includes(effect);

/** Where a lot's blocks go once it is bought at a price, and what each has cost. The shares add up to the bill. */
export function broughtHome({ lot, blocks }: LotRow, price: number, terms: SaleTerms): readonly BroughtHome[] {
  if (blocks.length === 0) return [];
  const worths = blocks.map(({ worth }) => worth ?? 0);
  const prices = allocateLot(minor(price), worths);
  const fees = allocateLot(minor(allInAt(price, terms) - price), worths);
  return blocks.map((one, place): BroughtHome => {
    const gates = lot.blocks[place]?.book.gates ?? [];
    const watched = WATCHES.find((watch) => gates.some((gate) => gate.watch === watch)) ?? null;
    const apart = gates.some(({ effects }) => asksFor(effects, 'quarantine'));
    const gone = lot.job !== null && !isWanted(one) && worths.some((worth) => worth > 0);
    return {
      blockId: one.id,
      price: prices[place] ?? 0,
      fees: fees[place] ?? 0,
      place: gone ? 'letGo' : apart ? 'quarantine' : 'toDo',
      watch: gone ? null : watched,
    };
  });
}
