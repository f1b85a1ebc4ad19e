import { type Catalogue, entry } from '../core/catalogue.ts';
import type { HatBlock } from '../core/records.ts';

/** What to call a block: its name, else its type, else what it is for want of anything said. */
export function blockName(block: Pick<HatBlock, 'name' | 'blockType' | 'objectNumber'>, catalogue: Catalogue): string {
  const name = block.name.trim() || (entry(catalogue.types, block.blockType)?.term ?? 'Unnamed block');
  return block.objectNumber.trim() ? `${block.objectNumber.trim()} ${name}` : name;
}
