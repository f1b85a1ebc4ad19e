import { entry } from '../core/catalogue.ts';
import type { Fields } from '../core/records.ts';
import type { WorkItem } from '../core/steps/work-plan.ts';
import { PhotoInput } from '../photos/photo-input.tsx';
import { useApp } from '../ui/app.ts';
import { useAddPhoto } from './add-photo.ts';
import { PhotoRow } from './photo-row.tsx';
import type { BlockCase } from './use-case.ts';
import { useWorkActions } from './work-actions.ts';

/** Photographs of the work while it is done, filed under its step; where it serves one finding, under that too. */
export function StepPhotos({ of, item }: { readonly of: BlockCase; readonly item: WorkItem }) {
  const { catalogue } = useApp();
  const actions = useWorkActions();
  const addPhoto = useAddPhoto();
  const ids = new Set(item.records.map(({ id }) => id));
  const photos = of.photos.filter(({ stepId }) => stepId !== undefined && ids.has(stepId));
  const findings = item.serves.filter((id) => of.findings.some((finding) => finding.id === id));
  const forMarks = entry(catalogue.treatments, item.treatment)?.forMarks;
  const fields: Partial<Fields<'photo'>> = {
    blockId: of.block.id,
    findingId: findings.length === 1 ? (findings[0] ?? null) : null,
    view: forMarks ? 'marks' : findings.length === 1 ? 'damageClose' : 'threeQuarter',
    // A mark is recorded as it was found: nothing has touched it yet.
    stage: forMarks ? 'before' : 'during',
  };
  return (
    <details open={photos.length > 0}>
      <summary>Photographs during this step{photos.length > 0 && ` (${photos.length})`}</summary>
      <PhotoRow blockId={of.block.id} photos={photos} />
      <PhotoInput
        context={JSON.stringify({ ...fields, step: item.key })}
        options={{ keepOriginal: of.settings.keepOriginals, keepPosition: of.settings.keepPosition }}
        onPrepared={async (prepared) => {
          await addPhoto(prepared, { ...fields, stepId: actions.touch(of.block, item) });
        }}
      />
    </details>
  );
}
