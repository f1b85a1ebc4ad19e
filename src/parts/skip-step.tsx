import { useState } from 'preact/hooks';
import { Button } from '../ui/button.tsx';
import { TextField } from '../ui/field.tsx';
import css from './plan-list.module.css';

/** Why a step is left out. The catalogue's own reason is one tap; the next owner reads it in the report. */
export function SkipStep({ usual, onSkip }: { readonly usual: string; readonly onSkip: (reason: string) => void }) {
  const [reason, setReason] = useState('');
  // “Never.” is a warning, not a reason.
  const offered = usual !== '' && usual !== 'Never.' ? usual : undefined;
  return (
    <div class={css.skip}>
      {usual === 'Never.' && <p>The trade never leaves this step out. If you do, say why.</p>}
      <TextField
        label="Why it is left out"
        value={reason}
        onChange={setReason}
        {...(offered ? { hint: `Usual reason: ${offered}` } : {})}
      />
      <div class={css.change}>
        <Button onPress={() => onSkip(reason.trim() || (offered ?? ''))}>Leave it out now</Button>
      </div>
    </div>
  );
}
