import type { TargetedEvent } from 'preact';
import { useRef } from 'preact/hooks';
import { sentenceOf } from '../text/errors.ts';
import { Button } from '../ui/button.tsx';
import { beginCapture, endCapture } from './drafts.ts';
import { interrupted } from './interrupted.ts';
import css from './photo-input.module.css';
import { type IncomingPhotos, isWorthAnotherTry, useIncomingPhotos } from './use-incoming-photos.ts';

interface Props extends IncomingPhotos {
  /** What the photograph is for, kept in case the phone reloads the page under the camera. */
  readonly context: string;
  /** Taking a photograph is what this screen is for. */
  readonly prominent?: boolean;
}

/**
 * The way in for photographs: camera, or gallery. Two inputs, because an input that opens the camera hides the gallery.
 * Stays usable while photographs are worked on; says which one it is at and which files failed, by name and reason.
 */
export function PhotoInput({ context, prominent = false, ...incoming }: Props) {
  const { progress, failures, added, take, stop, tryAgain } = useIncomingPhotos(incoming);
  const camera = useRef<HTMLInputElement>(null);
  const gallery = useRef<HTMLInputElement>(null);
  const open = (input: HTMLInputElement | null): void => {
    interrupted.value = undefined;
    beginCapture(context);
    input?.click();
  };
  const onChange = ({ currentTarget }: TargetedEvent<HTMLInputElement>): void => {
    endCapture();
    const files = Array.from(currentTarget.files ?? []);
    // Otherwise choosing the same photograph again changes nothing, and says nothing.
    currentTarget.value = '';
    take(files, currentTarget === camera.current);
  };
  const input = { type: 'file', accept: 'image/*', hidden: true, onChange, onCancel: () => endCapture() } as const;
  return (
    <div class={css.incoming}>
      {interrupted.value === context && (
        <p role="status">
          The phone closed this page while the camera was open, so that photograph is lost. Take it again.
        </p>
      )}
      <div class={css.ways}>
        <Button look={prominent ? 'main' : 'plain'} onPress={() => open(camera.current)}>
          Take a photograph
        </Button>
        <Button onPress={() => open(gallery.current)}>Choose from the gallery</Button>
      </div>
      <input {...input} ref={camera} capture="environment" />
      <input {...input} ref={gallery} multiple />
      <div class={css.progress} data-busy={progress ? true : undefined}>
        <p role="status" class="figures">
          {progress ? `Photograph ${progress.at} of ${progress.of}` : added > 0 && saved(added)}
        </p>
        {progress && (
          <>
            <progress value={progress.at - 1} max={progress.of} aria-label="Photographs done" />
            <Button onPress={stop}>Stop</Button>
          </>
        )}
      </div>
      {failures.length > 0 && (
        <div role="alert" class={css.failures}>
          <p>{failures.length === 1 ? 'One file was not taken:' : `${failures.length} files were not taken:`}</p>
          <ul>
            {failures.map(({ file, error }) => (
              <li key={file}>
                <b>{file.name}</b> {sentenceOf(error)}
              </li>
            ))}
          </ul>
          {!progress && failures.some(isWorthAnotherTry) && <Button onPress={tryAgain}>Try again</Button>}
        </div>
      )}
    </div>
  );
}

const saved = (added: number): string =>
  added === 1 ? 'Photograph saved on this phone' : `${added} photographs saved on this phone`;
