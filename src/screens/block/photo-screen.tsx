import { entry } from '../../core/catalogue.ts';
import { STAGES, type Stage } from '../../core/records.ts';
import { useActions } from '../../parts/actions.ts';
import { Gone } from '../../parts/gone.tsx';
import { OtherWords } from '../../parts/other-words.tsx';
import { PhotoNotices } from '../../parts/photo-notice.tsx';
import { StoredPicture } from '../../parts/stored-picture.tsx';
import { useCase } from '../../parts/use-case.ts';
import { useNames } from '../../parts/use-names.ts';
import { bytes } from '../../text/bytes.ts';
import { dayWords } from '../../text/days.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import { ChoiceField, SelectField, TextField } from '../../ui/field.tsx';
import { Page, Section } from '../../ui/page.tsx';
import { type Params, to } from '../../ui/route.ts';
import { go } from '../../ui/router.tsx';
import css from './block.module.css';

const stageWords: Record<Stage, string> = { before: 'Before', during: 'During', after: 'After' };

/** One photograph large, with what it shows and where its bytes vouch for themselves. */
export default function PhotoScreen({ params }: { params: Params }) {
  const { catalogue } = useApp();
  const actions = useActions();
  const of = useCase(params.id ?? '');
  const { findingName } = useNames(of ?? { findings: [] });
  const photo = of?.photos.find(({ id }) => id === params.photo);
  if (!of || !photo) return <Gone />;
  const home = to('/block/:id', { id: of.block.id });
  const when = photo.taken;
  return (
    <Page title={entry(catalogue.views, photo.view)?.term ?? 'Photograph'} back={{ href: home, label: 'The block' }}>
      <PhotoNotices
        of={of}
        photos={[photo]}
        onReplaced={({ id }) => go(to('/block/:id/photo/:photo', { id: of.block.id, photo: id }), { replace: true })}
      />
      <div class={css.photo}>
        <StoredPicture sha256={photo.sha256} alt={photo.caption || 'The photograph'} />
      </div>
      <Section>
        <Button look="main" wide href={to('/block/:id/photo/:photo/measure', { id: of.block.id, photo: photo.id })}>
          Mark and measure
        </Button>
        <SelectField
          label="View"
          value={photo.view}
          options={Object.entries(catalogue.views).map(([id, view]) => ({ id, label: view.term }))}
          hint={entry(catalogue.views, photo.view)?.text}
          onChange={(view) => actions.setPhoto(photo, { view })}
        />
        <ChoiceField
          label="When in the work"
          value={photo.stage}
          options={STAGES.map((id) => ({ id, label: stageWords[id] }))}
          onChange={(stage) => stage && actions.setPhoto(photo, { stage })}
        />
        <SelectField
          label="Shows"
          value={photo.findingId ?? ''}
          options={[
            { id: '', label: 'The block as a whole' },
            ...of.findings.map(({ id }) => ({ id, label: findingName(id) })),
          ]}
          onChange={(findingId) => actions.setPhoto(photo, { findingId: findingId || null })}
        />
        <TextField label="Caption" value={photo.caption} onChange={(caption) => actions.setPhoto(photo, { caption })} />
        <OtherWords record={photo} path="caption" />
        <Button
          pressed={of.block.coverPhotoId === photo.id}
          onPress={() => actions.setBlock(of.block, { coverPhotoId: photo.id }, 'the cover')}
        >
          Show it on the shelf
        </Button>
      </Section>
      <Section title="About the file">
        <dl class={`${css.facts} figures`}>
          <dt>Taken</dt>
          <dd>
            {when
              ? `${dayWords(when.local.slice(0, 10))}, ${when.local.slice(11, 16)} (${when.offset ? `UTC ${when.offset}` : 'zone not known'}), by ${when.from === 'camera' ? 'the camera' : 'this phone’s clock'}`
              : 'not known'}
          </dd>
          <dt>Size</dt>
          <dd>
            {photo.width} × {photo.height} px, {bytes(photo.bytes)}
          </dd>
          <dt>Original</dt>
          <dd>
            {photo.original
              ? `${photo.original.name || 'kept'}, ${bytes(photo.original.bytes)}`
              : 'not kept (see settings)'}
          </dd>
          <dt>Place</dt>
          <dd>
            {photo.position
              ? `${photo.position.latitude.toFixed(4)}, ${photo.position.longitude.toFixed(4)}`
              : 'not kept'}
          </dd>
          <dt>SHA-256</dt>
          <dd>{photo.sha256}</dd>
        </dl>
        <Button
          look="quiet"
          onPress={() => {
            actions.removePhoto(photo);
            go(home, { replace: true });
          }}
        >
          Remove this photograph
        </Button>
      </Section>
    </Page>
  );
}
