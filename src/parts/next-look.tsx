import { useState } from 'preact/hooks';
import { entry } from '../core/catalogue.ts';
import type { Forecast } from '../core/simulate/simulate.ts';
import { lookSentence, sellerMessage, worthNaming } from '../text/looks.ts';
import { useApp } from '../ui/app.ts';
import { Button } from '../ui/button.tsx';
import { TextField } from '../ui/field.tsx';
import { to } from '../ui/route.ts';
import { blockName } from './block-name.ts';
import css from './next-look.module.css';
import type { BlockCase } from './use-case.ts';

/** What to look at next and why, never in the way of skipping it; from pictures alone, what to ask the seller. */
export function NextLook({ of, forecast }: { readonly of: BlockCase; readonly forecast: Forecast }) {
  const { catalogue } = useApp();
  const next = worthNaming(forecast.looks, 2);
  const looked = forecast.looks.length === 0;
  return (
    <div class={css.next}>
      {next.length === 0 && (
        <p>
          {looked ? 'Every station of the walk is done.' : 'No further look would change the decision at this price.'}
        </p>
      )}
      {next.map((look, index) => (
        <p key={look.station}>
          <a href={to('/block/:id/walk/:station', { id: of.block.id, station: look.station })}>
            {index === 0 ? 'Look next' : 'Then'}: {entry(catalogue.stations, look.station)?.term ?? look.station}
          </a>
          <span>
            {lookSentence(look, catalogue)} ({look.seconds} s)
          </span>
        </p>
      ))}
      {!looked && <AskSeller of={of} forecast={forecast} />}
    </div>
  );
}

function AskSeller({ of, forecast }: { readonly of: BlockCase; readonly forecast: Forecast }) {
  const { catalogue } = useApp();
  const [text, setText] = useState<string>();
  const [said, setSaid] = useState('');
  const remote = of.block.fromPictures ?? of.sale?.channel === 'auctionOnline';
  if (text === undefined) {
    return (
      <Button
        look={remote ? 'plain' : 'quiet'}
        onPress={() => setText(sellerMessage(forecast.looks, blockName(of.block, catalogue), catalogue))}
      >
        Only pictures of it? Ask the seller
      </Button>
    );
  }
  const copy = async (): Promise<void> => {
    try {
      await navigator.clipboard.writeText(text);
      setSaid('Copied.');
    } catch {
      setSaid('This browser does not let Blockworth copy: mark the text and copy it by hand.');
    }
  };
  const send = async (): Promise<void> => {
    try {
      await navigator.share({ text });
      setSaid('Handed over.');
    } catch {
      setSaid('');
    }
  };
  return (
    <>
      <TextField label="Message to the seller" lines={9} value={text} onChange={setText} />
      <div class={css.ways}>
        <Button onPress={() => void copy()}>Copy it</Button>
        {'share' in navigator && <Button onPress={() => void send()}>Send it</Button>}
      </div>
      <p role="status">{said}</p>
    </>
  );
}
