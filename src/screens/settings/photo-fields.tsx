import type { Settings } from '../../core/records.ts';
import { useActions } from '../../parts/actions.ts';
import { TickField } from '../../ui/field.tsx';

/** What is kept of a photograph besides its working copy. */
export function PhotoFields({ settings }: { readonly settings: Settings }) {
  const actions = useActions();
  return (
    <>
      <TickField
        label="Keep the camera’s original"
        hint="Beside the smaller working copy, for print and proof. It takes some ten times the room, and is left out by itself when the phone is nearly full."
        value={settings.keepOriginals}
        onChange={(keepOriginals) => actions.setSettings({ keepOriginals })}
      />
      <TickField
        label="Keep the place a photograph was taken"
        hint="Off, because a picture sent on would tell where you or the seller live. Phones write it into the file; Blockworth takes it out unless you tick this."
        value={settings.keepPosition}
        onChange={(keepPosition) => actions.setSettings({ keepPosition })}
      />
    </>
  );
}
