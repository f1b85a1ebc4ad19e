import type { ComponentChildren } from 'preact';
import { Button } from '../../ui/button.tsx';
import css from './camera.module.css';
import type { Refusal } from './camera-track.ts';

const SENTENCES: Readonly<Record<Refusal, string>> = {
  denied:
    'This page may not use the camera. Allow it in the browser’s settings for this page and try again, or take the photograph with the phone’s own camera here.',
  none: 'No camera was found on this device. Choose a photograph, or plug a camera in and try again.',
  busy: 'Another app is holding the camera. Close it and try again, or take the photograph with the phone’s own camera here.',
  unable: 'This browser gives pages no camera. Take the photograph with the phone’s own camera here.',
};

/** In place of the finder: why there is no picture, and the usual way in. */
export function NoCamera({
  why,
  onTryAgain,
  children,
}: {
  readonly why: Refusal;
  readonly onTryAgain: () => void;
  readonly children: ComponentChildren;
}) {
  return (
    <div class={css.none}>
      <p role="alert">{SENTENCES[why]}</p>
      {children}
      <Button look="quiet" onPress={onTryAgain}>
        Try the camera again
      </Button>
    </div>
  );
}
