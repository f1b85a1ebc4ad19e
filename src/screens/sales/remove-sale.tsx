import { useState } from 'preact/hooks';
import type { Sale } from '../../core/records.ts';
import { useActions } from '../../parts/actions.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import { Section } from '../../ui/page.tsx';
import { to } from '../../ui/route.ts';
import { go } from '../../ui/router.tsx';

/** Removes a sale; asked twice only where blocks were looked at there. Undo brings it back. */
export function RemoveSale({ sale }: { readonly sale: Sale }) {
  const { store } = useApp();
  const actions = useActions();
  const [asking, setAsking] = useState(false);
  const count = store.blocksOf(sale.id).length;
  const remove = (): void => {
    actions.removeSale(sale);
    go(to('/sales'), { replace: true });
  };
  return (
    <Section>
      {asking && <p>{count === 1 ? 'One block was' : `${count} blocks were`} looked at here. </p>}
      <Button look="quiet" onPress={count === 0 || asking ? remove : () => setAsking(true)}>
        {asking ? 'Yes, remove the sale' : 'Remove this sale'}
      </Button>
      {asking && (
        <Button look="quiet" onPress={() => setAsking(false)}>
          Keep it
        </Button>
      )}
    </Section>
  );
}
