import { useEffect, useState } from 'preact/hooks';
import { offline } from '../../offline.ts';
import { canInstall, install, isInstalled, onIphone } from '../../parts/install.ts';
import { FULL, LOW, type Persistence, type Room } from '../../store/persist.ts';
import { bytes } from '../../text/bytes.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import css from './keeping.module.css';

const persistenceWords: Record<Persistence, string> = {
  granted: 'This device has promised to keep it.',
  notAsked: 'This device has not been asked to keep it. It may clear it when it runs short of room.',
  refused:
    'This device has not promised to keep it, so it may clear it when it runs short of room. Back up, and put Blockworth on the home screen: then it usually promises.',
  cannot: 'This browser makes no promise to keep it. Back up often.',
};

const roomWords: Record<Room, string> = {
  unknown: '',
  enough: '',
  low: ' Getting full: back up soon.',
  full: ' Nearly full: camera originals are no longer kept. Back up and free some space.',
};

const offlineWords = {
  unknown: 'Not ready yet to be used without signal. Open Blockworth once more with signal.',
  preparing: 'Getting ready for no signal…',
  ready: 'Ready without signal: everything Blockworth needs is on this device.',
  cannot: 'This browser cannot keep the app itself; it needs signal to open.',
} as const;

/** Room, the phone’s promise, readiness without signal, the home screen. */
export function RoomHere() {
  const { store } = useApp();
  const { keeping } = store;
  const [asking, setAsking] = useState(false);
  const [wasAsked, setWasAsked] = useState(false);
  useEffect(() => {
    void keeping.look();
  }, [keeping]);

  const ask = async (): Promise<void> => {
    setAsking(true);
    try {
      await navigator.storage?.persist?.();
      await keeping.look();
    } finally {
      setWasAsked(true);
      setAsking(false);
    }
  };
  const told = keeping.persistence.value;
  const persistence = told === 'notAsked' && wasAsked ? 'refused' : told;
  const space = keeping.space.value;
  return (
    <div class={css.stack}>
      <p role="status">{persistenceWords[persistence]}</p>
      {(persistence === 'notAsked' || persistence === 'refused') && (
        <Button onPress={() => void ask()} disabled={asking}>
          {asking ? 'Asking…' : 'Ask this device to keep it'}
        </Button>
      )}
      {space && (
        <p class={css.room}>
          <meter
            aria-label="Room used"
            min={0}
            max={space.quota}
            low={space.quota * LOW}
            high={space.quota * FULL}
            optimum={0}
            value={space.usage}
          />
          <span class="figures">
            {bytes(space.usage)} used of about {bytes(space.quota)}.{roomWords[keeping.room.value]}
          </span>
        </p>
      )}
      <p>{offlineWords[offline.value]}</p>
      <HomeScreen />
    </div>
  );
}

/** The way onto the home screen: the browser’s own offer, or on an iPhone the words for it. */
function HomeScreen() {
  if (isInstalled()) return <p>It is on the home screen.</p>;
  if (canInstall.value) return <Button onPress={() => void install()}>Put it on the home screen</Button>;
  if (!onIphone()) return null;
  return (
    <p>
      On an iPhone or iPad: tap Share, then <b>Add to Home Screen</b>. Only then does the phone promise to keep what you
      enter.
    </p>
  );
}
