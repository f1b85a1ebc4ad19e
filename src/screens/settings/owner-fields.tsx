import type { Settings } from '../../core/records.ts';
import { useActions } from '../../parts/actions.ts';
import { OtherWords } from '../../parts/other-words.tsx';
import { ChoiceField, TextField } from '../../ui/field.tsx';

const hands = [
  { id: 'right', label: 'Right' },
  { id: 'left', label: 'Left' },
] as const;

/** Who signs the records, and which thumb the buttons are for. */
export function OwnerFields({ settings }: { readonly settings: Settings }) {
  const actions = useActions();
  return (
    <>
      <TextField
        label="Your name"
        hint="Stands on each survey and report as who looked. New records take it; older ones keep theirs."
        autocomplete="name"
        value={settings.ownerName}
        onChange={(ownerName) => actions.setSettings({ ownerName })}
      />
      <OtherWords record={settings} path="ownerName" />
      <TextField
        label="Rights in your photographs"
        hint="Written into photographs you hand on: © and your name, or a licence. Empty says nothing."
        value={settings.photoRights ?? ''}
        onChange={(photoRights) => actions.setSettings({ photoRights })}
      />
      <OtherWords record={settings} path="photoRights" />
      <ChoiceField
        label="Hand that holds the phone"
        value={settings.hand}
        options={hands}
        onChange={(hand) => hand && actions.setSettings({ hand })}
      />
    </>
  );
}
