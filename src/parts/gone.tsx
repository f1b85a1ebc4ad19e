import { Button } from '../ui/button.tsx';
import { Page } from '../ui/page.tsx';

/** In place of a block that is not on this phone: removed, or the address is an old one. */
export function Gone() {
  return (
    <Page title="Not on this shelf">
      <p>This block is not on this phone. It may have been removed; if that was just now, undo brings it back.</p>
      <p>
        <Button href="#/">To the shelf</Button>
      </p>
    </Page>
  );
}
