import { useState } from 'preact/hooks';
import { useApp } from '../ui/app.ts';
import { useActions } from './actions.ts';
import { bringExamplePictures, forgetExamplePictures } from './example-pictures.tsx';

/**
 * The example sale: its code comes only when it is opened, its photographs after its records; taken away whole, and undo
 * brings it back.
 */
export function useExample() {
  const { store, catalogue } = useApp();
  const actions = useActions();
  const [busy, setBusy] = useState(false);
  const sales = [...store.records.sale.value.values()].filter(({ example }) => example);
  return {
    busy,
    present: sales.length > 0,
    open: async (): Promise<void> => {
      setBusy(true);
      try {
        const { openExample } = await import('../demo/open-example.ts');
        await openExample(store, catalogue);
        void bringExamplePictures(store);
      } finally {
        setBusy(false);
      }
    },
    remove: (): void => {
      forgetExamplePictures();
      actions.removeExample();
    },
  };
}
