import { type Catalogue, entry } from '../core/catalogue.ts';
import type { HatBlock } from '../core/records.ts';
import { drawings } from '../drawings/index.ts';
import type { BlockDrawing } from '../drawings/shape.ts';

/** The drawing of a block: its material's own where that is built differently, else its type's, else a plain dome. */
export function drawingOf(block: Pick<HatBlock, 'blockType' | 'materials'>, catalogue: Catalogue): BlockDrawing {
  const table: Readonly<Record<string, BlockDrawing>> = drawings;
  const type = entry(catalogue.types, block.blockType);
  const material = block.materials.map((id) => entry(catalogue.materials, id)?.drawing).find(Boolean);
  // A sparterie shape only stands in for whole shapes: a sparterie brim is still a brim.
  const own = material && (!type || type.group === 'full' || type.group === 'small') ? material : type?.drawing;
  return entry(table, own) ?? drawings.domeCrown;
}
