import { Page } from '../../ui/page.tsx';
import { to } from '../../ui/route.ts';

export function NoSale() {
  return (
    <Page title="Not in this book" back={{ href: to('/sales'), label: 'Sales' }}>
      <p>This sale is not on this phone. It may have been removed; if that was just now, undo brings it back.</p>
    </Page>
  );
}
