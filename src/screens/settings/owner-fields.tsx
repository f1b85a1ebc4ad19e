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
      <ChoiceField
        label="Hand that holds the phone"
        value={settings.hand}
        options={hands}
        onChange={(hand) => hand && actions.setSettings({ hand })}
      />
    </>
  );
}
