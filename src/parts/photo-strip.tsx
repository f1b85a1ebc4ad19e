import { pairsOf } from '../core/before-after.ts';
import type { Fields } from '../core/records.ts';
import { usualStage } from '../core/shot-list.ts';
import { PhotoInput } from '../photos/photo-input.tsx';
import { useApp } from '../ui/app.ts';
import { Button } from '../ui/button.tsx';
import { to } from '../ui/route.ts';
import { useAddPhoto } from './add-photo.ts';
import { PhotoNotices } from './photo-notice.tsx';
import { PhotoRow } from './photo-row.tsx';
import css from './photo-strip.module.css';
import type { BlockCase } from './use-case.ts';

/** Photographs of a block or of one finding, and the way to add more. With `shotList`, the standard views still missing. */
export function PhotoStrip({
  of,
  findingId = null,
  shotList = false,
}: {
  readonly of: BlockCase;
  readonly findingId?: string | null;
  readonly shotList?: boolean;
}) {
  const { catalogue } = useApp();
  const addPhoto = useAddPhoto();
  const photos = of.photos.filter((photo) => findingId === null || photo.findingId === findingId);
  const taken = new Set(of.photos.map(({ view }) => view));
  const next = shotList ? Object.keys(catalogue.views).find((view) => !taken.has(view)) : undefined;
  const fields: Partial<Fields<'photo'>> = {
    blockId: of.block.id,
    findingId,
    view: findingId ? 'damageClose' : (next ?? 'threeQuarter'),
    stage: usualStage(of.block.place),
  };
  const at = (path: string): string => to(`/block/:id${path}`, { id: of.block.id });
  const pairs = findingId === null ? pairsOf(of.photos, [], []) : [];
  return (
    <div class={css.photos}>
      <PhotoRow blockId={of.block.id} photos={photos} />
      <PhotoNotices of={of} photos={photos} />
      {next && (
        <p class={css.next}>
          Next view: <b>{catalogue.views[next]?.term}</b>. {catalogue.views[next]?.text}
        </p>
      )}
      <PhotoInput
        context={JSON.stringify(fields)}
        options={{ keepOriginal: of.settings.keepOriginals, keepPosition: of.settings.keepPosition }}
        onPrepared={async (prepared) => {
          await addPhoto(prepared, fields);
        }}
      />
      <p class={css.others}>
        <Button look="quiet" href={`${at('/camera')}${findingId ? `?finding=${findingId}` : ''}`}>
          Camera in the page
        </Button>
        {pairs.length > 0 && (
          <Button look="quiet" href={at('/compare')}>
            Before beside after
          </Button>
        )}
      </p>
    </div>
  );
}
