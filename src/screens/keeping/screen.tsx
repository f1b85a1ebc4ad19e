import { useApp } from '../../ui/app.ts';
import { Page, Section } from '../../ui/page.tsx';
import { BackUp } from './back-up.tsx';
import { Bring } from './bring.tsx';
import { KeptTwice, useKeptTwice } from './kept-twice.tsx';
import { RoomHere } from './room.tsx';
import { Unreadable } from './unreadable.tsx';
import { Waiting } from './waiting.tsx';

/** Where what was entered is kept, how it leaves for safety, and how it comes back. */
export default function KeepingScreen() {
  const { store } = useApp();
  const unreadable = store.unreadable.value;
  const ahead = store.kept.value.filter(({ aheadMs }) => aheadMs !== undefined);
  const twice = useKeptTwice();
  return (
    <Page
      title="Keeping"
      back={{ href: '#/settings', label: 'Settings' }}
      aside={
        <>
          <Section title="Kept on this device">
            <RoomHere />
          </Section>
          {unreadable.length > 0 && (
            <Section title="Records that cannot be read" id="unreadable">
              <Unreadable records={unreadable} />
            </Section>
          )}
        </>
      }
    >
      <Section title="Back up">
        <BackUp />
      </Section>
      <Section title="Restore, or join another phone">
        <Bring />
      </Section>
      {twice.length > 0 && (
        <Section title="Words kept twice" aside={<span class="figures">{twice.length}</span>}>
          <KeptTwice words={twice} />
        </Section>
      )}
      {ahead.length > 0 && (
        <Section title="Waiting for the clock" aside={<span class="figures">{ahead.length}</span>}>
          <Waiting rows={ahead} />
        </Section>
      )}
    </Page>
  );
}
