import { useRef, useState } from 'preact/hooks';
import { useActions } from '../../parts/actions.ts';
import { useAddPhoto } from '../../parts/add-photo.ts';
import { PhotoInput } from '../../photos/photo-input.tsx';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import { Page } from '../../ui/page.tsx';
import { to } from '../../ui/route.ts';
import { go } from '../../ui/router.tsx';
import { useLastSale } from './last-sale.ts';
import css from './look.module.css';

/** Camera first: one photograph makes the record. Or go on without; a photograph can come at any time. */
export default function StartScreen() {
  const [hasPhoto, setHasPhoto] = useState(false);
  const { store } = useApp();
  const actions = useActions();
  const addPhoto = useAddPhoto();
  const sale = useLastSale();
  const started = useRef<string | undefined>(undefined);
  const start = (): string => {
    started.current ??= actions.startBlock(sale ? { saleId: sale.id, currency: sale.currency } : {});
    return started.current;
  };
  const onward = (id: string): void => go(to('/block/:id/look', { id }), { replace: true });
  const { keepOriginals, keepPosition } = store.settings.value;
  return (
    <Page
      title="Look at a block"
      back={{ href: '#/', label: 'Shelf' }}
      under={sale && <>At: {sale.title || 'the sale'}</>}
      quiet
    >
      <p class={css.lead}>One photograph first, the whole block from the front right, then nothing gets mixed up.</p>
      <PhotoInput
        context="newBlock"
        prominent
        options={{ keepOriginal: keepOriginals, keepPosition }}
        onPrepared={async (prepared) => {
          await addPhoto(prepared, { blockId: start(), view: 'threeQuarter' });
          setHasPhoto(true);
        }}
        // Where a file failed, the page stays to say which and why.
        onDone={(added, failed) => {
          if (added > 0 && failed === 0) onward(start());
        }}
      />
      <p class={css.skip}>
        <Button wide onPress={() => onward(start())}>
          {hasPhoto ? 'Go on' : 'Go on without a photograph'}
        </Button>
      </p>
    </Page>
  );
}
