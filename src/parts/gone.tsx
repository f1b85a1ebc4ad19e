import { useApp } from '../ui/app.ts';
import { Button } from '../ui/button.tsx';
import { Page } from '../ui/page.tsx';
import { blockName } from './block-name.ts';

/** In place of a block that is not on this phone: removed, or the address is an old one; or it is, without its survey. */
export function Gone({ blockId }: { readonly blockId?: string | undefined }) {
  const { store, catalogue } = useApp();
  const block = blockId === undefined ? undefined : store.get('block', blockId);
  if (block) {
    return (
      <Page title={blockName(block, catalogue)} back={{ href: '#/', label: 'Shelf' }}>
        <p>
          What was seen of this block is not here: its survey came with another file, or cannot be read. Nothing of it
          was deleted. Take in a backup that has it; what cannot be read is listed under Keeping.
        </p>
        <p>
          <Button href="#/keeping">Keeping</Button>
        </p>
      </Page>
    );
  }
  return (
    <Page title="Not on this shelf">
      <p>This block is not on this phone. It may have been removed; if that was just now, undo brings it back.</p>
      <p>
        <Button href="#/">To the shelf</Button>
      </p>
    </Page>
  );
}
