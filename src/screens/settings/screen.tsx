import { OwnRecordView } from '../../parts/own-record-view.tsx';
import { useExample } from '../../parts/use-example.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import { Page, Section } from '../../ui/page.tsx';
import { AppFields } from './app-fields.tsx';
import { BenchFields } from './bench-fields.tsx';
import { ClimateFields } from './climate-fields.tsx';
import { MoneyFields } from './money-fields.tsx';
import { OwnerFields } from './owner-fields.tsx';
import { PhotoFields } from './photo-fields.tsx';
import css from './settings.module.css';
import { Version } from './version.tsx';
import { WorkshopFields } from './workshop-fields.tsx';

export default function SettingsScreen() {
  const { store } = useApp();
  const { present, remove } = useExample();
  const settings = store.settings.value;
  return (
    <Page
      title="Settings"
      aside={
        <>
          <Section title="Where your blocks live">
            <ClimateFields settings={settings} />
          </Section>
          <Section title="Units and sizes">
            <AppFields settings={settings} />
          </Section>
          <Section title="Photographs">
            <PhotoFields settings={settings} />
          </Section>
          <Section title="Kept on this device">
            <p>Backing up, restoring, another phone’s file, and how much room is left.</p>
            <Button href="#/keeping">Keeping</Button>
          </Section>
          {present && (
            <Section title="Example sale">
              <p class={css.hint}>The Lanthorn Playhouse sale is invented, to try things on.</p>
              <Button onPress={remove}>Take the example away</Button>
            </Section>
          )}
          <Section title="What your own work has taught">
            <OwnRecordView />
          </Section>
          <Section title="Privacy">
            <p>
              Nothing leaves this device by itself. Blockworth has no account and no server, counts no visits, and asks
              the network only for its own new version and, when you open it, for the example’s photographs. A block’s
              record leaves when you save or send it, and then with names, places and prices only if you tick them.
            </p>
          </Section>
          <Section title="Version">
            <Version />
          </Section>
        </>
      }
    >
      <Section title="You">
        <OwnerFields settings={settings} />
      </Section>
      <Section title="Money">
        <MoneyFields settings={settings} />
      </Section>
      <Section title="Your evenings">
        <BenchFields settings={settings} />
      </Section>
      <Section title="Your workshop">
        <WorkshopFields settings={settings} />
      </Section>
    </Page>
  );
}
