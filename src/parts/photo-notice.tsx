import { useRef } from 'preact/hooks';
import { entry } from '../core/catalogue.ts';
import type { Photo } from '../core/records.ts';
import { beginCapture, endCapture } from '../photos/drafts.ts';
import { useIncomingPhotos } from '../photos/use-incoming-photos.ts';
import { sentenceOf } from '../text/errors.ts';
import { faultQuestion } from '../text/photo-faults.ts';
import { useApp } from '../ui/app.ts';
import { Button } from '../ui/button.tsx';
import { useActions } from './actions.ts';
import { useAddPhoto } from './add-photo.ts';
import { keepPhoto, noticed } from './photo-check.ts';
import css from './photo-notice.module.css';
import type { BlockCase } from './use-case.ts';

interface Told {
  readonly onAgain?: ((photo: Photo) => void) | undefined;
  readonly onReplaced?: ((better: Photo) => void) | undefined;
}

/**
 * Beside photographs that came out blurred, dark or burnt out: keep, or take again. They are saved already and stay so
 * until the better one is.
 * @param photos only these are spoken of
 * @param onAgain a camera that is open already; without it the phone's own is opened
 * @param onReplaced told of the better one just before the other goes
 */
export function PhotoNotices({
  of,
  photos,
  ...told
}: Told & { readonly of: BlockCase; readonly photos: readonly Photo[] }) {
  const poor = photos.filter(({ id }) => noticed.value.has(id));
  // The region stands before there is anything to say in it, so that a screen reader hears what comes.
  return (
    <div role="status">
      {poor.length > 0 && (
        <ul class={css.notices}>
          {poor.map((photo) => (
            <PhotoNotice key={photo.id} of={of} photo={photo} {...told} />
          ))}
        </ul>
      )}
    </div>
  );
}

function PhotoNotice({ of, photo, onAgain, onReplaced }: Told & { readonly of: BlockCase; readonly photo: Photo }) {
  const { catalogue } = useApp();
  const actions = useActions();
  const addPhoto = useAddPhoto();
  const input = useRef<HTMLInputElement>(null);
  const { blockId, findingId, view, stage, caption } = photo;
  const fields = { blockId, findingId, view, stage, caption };
  const { progress, failures, take } = useIncomingPhotos({
    options: { keepOriginal: of.settings.keepOriginals, keepPosition: of.settings.keepPosition },
    async onPrepared(prepared) {
      const better = await addPhoto(prepared, fields);
      keepPhoto(photo.id);
      onReplaced?.(better);
      actions.replacePhoto(of.block, photo, better.id);
    },
  });
  const again = (): void => {
    if (onAgain) {
      onAgain(photo);
      return;
    }
    beginCapture(JSON.stringify(fields));
    input.current?.click();
  };
  const term = entry(catalogue.views, view)?.term ?? view;
  return (
    <li class={css.notice}>
      <p>
        <b>{term}</b> {progress ? 'Taking the new one in…' : faultQuestion(noticed.value.get(photo.id) ?? [])}
        {failures[0] && ` ${sentenceOf(failures[0].error)}`}
      </p>
      <span class={css.ways}>
        <Button label={`Keep it: ${term}`} onPress={() => keepPhoto(photo.id)}>
          Keep it
        </Button>
        <Button label={`Take it again: ${term}`} onPress={again}>
          Take it again
        </Button>
      </span>
      <input
        ref={input}
        type="file"
        accept="image/*"
        capture="environment"
        hidden
        onCancel={() => endCapture()}
        onChange={({ currentTarget }) => {
          endCapture();
          const files = Array.from(currentTarget.files ?? []);
          currentTarget.value = '';
          take(files, true);
        }}
      />
    </li>
  );
}
