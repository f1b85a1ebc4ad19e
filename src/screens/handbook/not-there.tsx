import { Page } from '../../ui/page.tsx';
import { to } from '../../ui/route.ts';

/** In place of an entry the catalogue does not have: an old address, or one from a newer app. */
export function NotThere() {
  return (
    <Page title="Not in this handbook" back={{ href: to('/handbook'), label: 'Handbook' }}>
      <p>There is no entry under this address. It may come from a newer Blockworth.</p>
    </Page>
  );
}
