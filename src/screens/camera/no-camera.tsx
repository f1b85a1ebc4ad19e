import type { Fields, Photo } from '../../core/records.ts';
import { useAddPhoto } from '../../parts/add-photo.ts';
import type { BlockCase } from '../../parts/use-case.ts';
import { PhotoInput } from '../../photos/photo-input.tsx';
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

/** In place of the finder: why there is no picture, and the usual way in, for the same view and stage. */
export function NoCamera({
  why,
  of,
  fields,
  onSaved,
  onTryAgain,
}: {
  readonly why: Refusal;
  readonly of: BlockCase;
  readonly fields: Partial<Fields<'photo'>>;
  readonly onSaved: (photo: Photo) => void;
  readonly onTryAgain: () => void;
}) {
  const addPhoto = useAddPhoto();
  return (
    <div class={css.none}>
      <p role="alert">{SENTENCES[why]}</p>
      <PhotoInput
        context={JSON.stringify(fields)}
        prominent
        options={{ keepOriginal: of.settings.keepOriginals, keepPosition: of.settings.keepPosition }}
        onPrepared={async (prepared) => onSaved(await addPhoto(prepared, fields))}
      />
      <Button look="quiet" onPress={onTryAgain}>
        Try the camera again
      </Button>
    </div>
  );
}
