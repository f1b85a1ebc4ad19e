import { useMemo, useRef, useState } from 'preact/hooks';
import { entry } from '../../core/catalogue.ts';
import type { Fields, Photo } from '../../core/records.ts';
import { STAGES, type Stage } from '../../core/records.ts';
import { nextView, shotList, usualStage } from '../../core/shot-list.ts';
import { useActions } from '../../parts/actions.ts';
import { useAddPhoto } from '../../parts/add-photo.ts';
import { Gone } from '../../parts/gone.tsx';
import { keepPhoto, noticed } from '../../parts/photo-check.ts';
import { PhotoNotices } from '../../parts/photo-notice.tsx';
import { type BlockCase, useCase } from '../../parts/use-case.ts';
import { useNames } from '../../parts/use-names.ts';
import { PhotoInput } from '../../photos/photo-input.tsx';
import { useIncomingPhotos } from '../../photos/use-incoming-photos.ts';
import { sentenceOf } from '../../text/errors.ts';
import { useApp } from '../../ui/app.ts';
import { ChoiceField } from '../../ui/field.tsx';
import { Page, Section } from '../../ui/page.tsx';
import { type Params, to } from '../../ui/route.ts';
import { path } from '../../ui/router.tsx';
import css from './camera.module.css';
import { takeStill } from './camera-track.ts';
import { Finder } from './finder.tsx';
import { FinderOptions, useFinderOptions } from './finder-options.tsx';
import { NoCamera } from './no-camera.tsx';
import { Shots } from './shots.tsx';
import { Shutter } from './shutter.tsx';
import { useCamera } from './use-camera.ts';

export default function CameraScreen({ params }: { params: Params }) {
  const of = useCase(params.id ?? '');
  const finding = new URLSearchParams(path.value.split('?')[1]).get('finding');
  if (!of) return <Gone />;
  return <Camera of={of} findingId={of.findings.some(({ id }) => id === finding) ? finding : null} />;
}

export const stageWords: Record<Stage, string> = { before: 'Before', during: 'During', after: 'After' };

/** A second way to photograph, inside the page: shot after shot through the list of views, without leaving. */
function Camera({ of, findingId }: { readonly of: BlockCase; readonly findingId: string | null }) {
  const { catalogue } = useApp();
  const actions = useActions();
  const addPhoto = useAddPhoto();
  const { findingName } = useNames(of);
  const video = useRef<HTMLVideoElement>(null);
  const camera = useCamera();
  const [stage, setStage] = useState<Stage>(() => usualStage(of.block.place));
  const shots = useMemo(
    () => shotList(catalogue.views, of.photos, stage, findingId),
    [catalogue, of.photos, stage, findingId],
  );
  const [chosen, setChosen] = useState<string | undefined>(findingId ? 'damageClose' : undefined);
  const [again, setAgain] = useState<Photo>();
  const [saved, setSaved] = useState<readonly Photo[]>([]);
  const last = saved.at(-1);
  const inHand = chosen ?? nextView(shots, last?.view);
  const shot = shots.find(({ view }) => view === inHand);
  const [fault, setFault] = useState<unknown>();
  const [isTaking, setIsTaking] = useState(false);
  const options = useFinderOptions(camera.state);
  // What each file was taken for: the next may be in hand before this one is saved.
  const meant = useRef(new WeakMap<File, { fields: Partial<Fields<'photo'>>; again: Photo | undefined }>());

  const incoming = { keepOriginal: of.settings.keepOriginals, keepPosition: of.settings.keepPosition };
  const { progress, failures, take, tryAgain } = useIncomingPhotos({
    options: incoming,
    async onPrepared(prepared, file) {
      const { fields, again: old } = meant.current.get(file) ?? { fields: {}, again: undefined };
      const photo = await addPhoto(prepared, { blockId: of.block.id, ...fields });
      setSaved((before) => [...before, photo]);
      if (!old) return;
      keepPhoto(old.id);
      actions.replacePhoto(of.block, old, photo.id);
    },
  });

  async function shoot(): Promise<void> {
    if (camera.state.at !== 'live' || !video.current || isTaking) return;
    setIsTaking(true);
    setFault(undefined);
    try {
      const file = await takeStill(camera.state.track, video.current, `${inHand}.jpg`);
      meant.current.set(file, { fields: { view: inHand, stage, findingId }, again });
      take([file], true);
      setAgain(undefined);
      // Moves on by itself once this one is ticked; who chose a ticked one wants more of the same.
      if (!findingId && (again || shot?.taken === 0)) setChosen(undefined);
    } catch (error) {
      setFault(error);
    } finally {
      setIsTaking(false);
    }
  }

  const fields = { blockId: of.block.id, findingId, view: inHand, stage };
  const usualWay = (
    <PhotoInput
      context={JSON.stringify(fields)}
      options={incoming}
      onPrepared={async (prepared) => {
        const photo = await addPhoto(prepared, fields);
        setSaved((before) => [...before, photo]);
      }}
    />
  );
  const home = to('/block/:id', { id: of.block.id });
  const lastTerm = last && (entry(catalogue.views, last.view)?.term ?? last.view);
  const ghost = shot?.ghost;
  return (
    <Page
      title="Camera"
      back={{ href: home, label: 'The block' }}
      under={findingId ? findingName(findingId) : undefined}
      quiet
      aside={
        <>
          <Section>
            <ChoiceField
              label="When in the work"
              value={stage}
              options={STAGES.map((id) => ({ id, label: stageWords[id] }))}
              onChange={(next) => {
                if (!next) return;
                setStage(next);
                setAgain(undefined);
                setChosen(findingId ? 'damageClose' : undefined);
              }}
            />
          </Section>
          <Section title="In the finder">
            <FinderOptions {...options} hasGhost={ghost !== undefined} />
          </Section>
          {camera.state.at !== 'refused' && <Section title="With the phone’s own camera">{usualWay}</Section>}
        </>
      }
      dock={
        <div class={css.dock}>
          <PhotoNotices
            of={of}
            // One at a time: the shutter must stay in reach. The others are spoken of beside them on the block's page.
            photos={saved.filter(({ id }) => noticed.value.has(id)).slice(-1)}
            onAgain={(photo) => {
              setAgain(photo);
              setStage(photo.stage);
              setChosen(photo.view);
            }}
          />
          <Shots
            shots={shots}
            inHand={inHand}
            onChoose={(view) => {
              setAgain(undefined);
              setChosen(view);
            }}
          />
          <Shutter
            disabled={camera.state.at !== 'live'}
            busy={isTaking || progress !== undefined}
            label={`Take the photograph: ${shot?.term ?? inHand}, ${stageWords[stage].toLocaleLowerCase('en-GB')}`}
            onPress={() => void shoot()}
            ghostHidden={options.ghostHidden}
            onGhost={ghost ? () => options.setGhostHidden(!options.ghostHidden) : undefined}
            last={last && { photo: last, href: to('/block/:id/photo/:photo', { id: of.block.id, photo: last.id }) }}
          />
          <p role="status" class={css.said}>
            {progress ? 'Saving… ' : lastTerm && `${lastTerm}: saved on this phone. `}
            <b>{shot?.term ?? inHand}</b>
            {again && ', once more'}: {shot?.text}
          </p>
        </div>
      }
    >
      {camera.state.at === 'refused' ? (
        <NoCamera why={camera.state.why} onTryAgain={camera.tryAgain}>
          {usualWay}
        </NoCamera>
      ) : (
        <>
          <Finder
            camera={camera.state}
            video={video}
            ghost={options.ghostHidden ? undefined : ghost}
            strength={options.strength}
            grid={options.grid}
            level={options.level.state.at === 'on' ? options.level.state.level : undefined}
            busy={isTaking}
          />
          {(fault !== undefined || failures.length > 0) && (
            <div role="alert" class={css.fault}>
              <p>{sentenceOf(fault ?? failures[0]?.error)}</p>
              {failures.length > 0 && (
                <button type="button" onClick={tryAgain}>
                  Try again
                </button>
              )}
            </div>
          )}
        </>
      )}
    </Page>
  );
}
