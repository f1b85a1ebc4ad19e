import { useMemo } from 'preact/hooks';
import { entry } from '../core/catalogue.ts';
import { headCm, shapeOf } from '../core/head-size.ts';
import { type Filling, fillingOf, type Held, OWN_PLACES, sizesCm } from '../core/shelf-gaps.ts';
import { useApp } from '../ui/app.ts';

/** Measures that give a block a head size: a type that takes neither has none. */
const HEAD_MEASURES: readonly string[] = ['circRopeMm', 'openingCircMm'];

/** What stands on the owner's shelf, by shape and size. The example counts only for the example. */
export function useShelfHeld(example: boolean) {
  const { store, catalogue } = useApp();
  const blocks = store.blocks.value;
  const own = blocks.filter((block) => OWN_PLACES.includes(block.place) && block.example === example);
  const facts = own.map((block) => ({ block, measures: store.surveyOf(block.id)?.measures ?? {} }));
  const key = JSON.stringify(facts.map(({ block, measures }) => [block.blockType, headCm(measures)]));
  const sizes = sizesCm(store.settings.value.usualSizes);
  const isSized = (blockType: string): boolean =>
    entry(catalogue.types, blockType)?.measures.some((id) => HEAD_MEASURES.includes(id)) ?? false;
  return useMemo(() => {
    const held: Held[] = facts.map(({ block, measures }) => ({
      blockType: block.blockType,
      sizeCm: headCm(measures),
    }));
    const copies: Record<string, number> = {};
    for (const { block, measures } of facts) {
      const shape = shapeOf(block, measures);
      if (shape !== null) copies[shape] = (copies[shape] ?? 0) + 1;
    }
    return {
      held,
      copies,
      sizes,
      isSized,
      fills: (one: Held): Filling => fillingOf(one, held, sizes, one.blockType !== null && isSized(one.blockType)),
    };
  }, [key, sizes.join()]);
}
