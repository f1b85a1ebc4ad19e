import { useState } from 'preact/hooks';
import { canSend, saveFile, sendFile } from '../exports/hand-over.ts';
import { Button } from '../ui/button.tsx';
import css from './ready-file.module.css';

/**
 * A file that was prepared: to be saved, or sent on where the phone can. A step of its own, because a phone lets a file be
 * sent only by a fresh tap.
 */
export function ReadyFile({
  file,
  said,
  saved = 'Handed to the browser to save.',
  look = 'plain',
  onFail,
}: {
  readonly file: File;
  /** What is ready, in a sentence. */
  readonly said: string;
  /** What to say once the browser has it. */
  readonly saved?: string;
  readonly look?: 'main' | 'plain';
  readonly onFail: (error: unknown) => void;
}) {
  const [came, setCame] = useState<string>();
  const save = (): void => {
    saveFile(file);
    setCame(saved);
  };
  const send = (): void => {
    sendFile(file).then((sent) => setCame(sent ? 'Sent on its way.' : 'Not sent.'), onFail);
  };
  return (
    <div class={css.ready}>
      <p role="status">{came ?? said}</p>
      <div class={css.ways}>
        <Button look={look} onPress={save}>
          Save the file
        </Button>
        {canSend(file) && (
          <Button look={look} onPress={send}>
            Send it
          </Button>
        )}
      </div>
    </div>
  );
}
