import type { ComponentType } from 'preact';
import { useEffect, useMemo, useState } from 'preact/hooks';
import { entry } from '../../core/catalogue.ts';
import type { Photo } from '../../core/records.ts';
import { Gone } from '../../parts/gone.tsx';
import { pixelWork, usePicture } from '../../parts/pixel-work.ts';
import { type BlockCase, useCase } from '../../parts/use-case.ts';
import { useApp } from '../../ui/app.ts';
import { type Params, to } from '../../ui/route.ts';
import { AreaTool } from './area-tool.tsx';
import { ColourTool } from './colour-tool.tsx';
import { CrackTool } from './crack-tool.tsx';
import { createStage, type Desk, factsOf, pageScale, type Stage, workingSize, ZOOM_STEP } from './desk.ts';
import { HolesTool } from './holes-tool.tsx';
import { MarkTool } from './mark-tool.tsx';
import css from './measure.module.css';
import { ScaleTool } from './scale-tool.tsx';
import { StageView } from './stage.tsx';

const TOOLS: readonly { readonly name: string; readonly Tool: ComponentType<{ readonly desk: Desk }> }[] = [
  { name: 'Scale', Tool: ScaleTool },
  { name: 'Mark', Tool: MarkTool },
  { name: 'Crack', Tool: CrackTool },
  { name: 'Holes', Tool: HolesTool },
  { name: 'Area', Tool: AreaTool },
  { name: 'Colour', Tool: ColourTool },
];

/** A photograph as an instrument: it fills the screen, the tools lie at the thumb. */
export default function MeasureScreen({ params }: { params: Params }) {
  const of = useCase(params.id ?? '');
  const photo = of?.photos.find(({ id }) => id === params.photo);
  return of && photo ? <Bench key={photo.id} of={of} photo={photo} /> : <Gone />;
}

function Bench({ of, photo }: { readonly of: BlockCase; readonly photo: Photo }) {
  const { store, catalogue } = useApp();
  const picture = usePicture(photo);
  const stage = useMemo(createStage, []);
  const marks = store.marksOnPhoto(photo.id);
  const [tool, setTool] = useState(photo.scale ? 1 : 0);
  const size = useMemo(() => workingSize(photo), [photo.width, photo.height]);
  const facts = useMemo(() => factsOf(photo), [photo.scale, photo.focal35]);
  const scale = useMemo(() => pageScale(facts, size), [facts, size]);
  const desk: Desk = { of, photo, marks, picture, size, facts, scale, stage };
  const undoable = store.undoable.value;
  const saving = store.saving.value;
  const view = entry(catalogue.views, photo.view)?.term ?? 'Photograph';

  useEffect(() => {
    document.title = `Mark and measure: ${view} – Blockworth`;
    // Pixels and the planes reckoned from them are worth tens of megabytes: given back with the photograph.
    return () => pixelWork.rest();
  }, []);
  useEffect(() => {
    const undo = (event: KeyboardEvent): void => {
      const typing = event.target instanceof HTMLInputElement || event.target instanceof HTMLTextAreaElement;
      if (event.key !== 'z' || !(event.ctrlKey || event.metaKey) || event.shiftKey || typing) return;
      event.preventDefault();
      store.undo();
    };
    addEventListener('keydown', undo);
    return () => removeEventListener('keydown', undo);
  }, [store]);

  const { Tool, name } = TOOLS[tool] ?? { name: '', Tool: ScaleTool };
  return (
    <main class={css.bench}>
      <header class={css.head}>
        <a href={to('/block/:id/photo/:photo', { id: of.block.id, photo: photo.id })}>
          <span aria-hidden="true">‹</span> Done
        </a>
        <h1 tabIndex={-1}>{view}</h1>
        {saving !== 'saved' && saving !== 'saving' && <b class={css.notSaved}>Not saved</b>}
        <button
          type="button"
          class={css.undo}
          disabled={!undoable}
          aria-label={undoable ? `Undo ${undoable}` : 'Undo'}
          onClick={() => store.undo()}
        >
          Undo
        </button>
        <fieldset class={css.zoom} aria-label="Size">
          <button type="button" aria-label="Smaller" onClick={() => stage.magnify.by(1 / ZOOM_STEP)}>
            −
          </button>
          <button type="button" aria-label="Larger" onClick={() => stage.magnify.by(ZOOM_STEP)}>
            +
          </button>
          <button type="button" onClick={() => stage.magnify.fit()}>
            Fit
          </button>
        </fieldset>
      </header>
      <StageView desk={desk} alt={photo.caption || view} />
      <section class={css.panel} aria-label={name}>
        <Tool key={name} desk={desk} />
      </section>
      <nav class={css.bar} aria-label="Tools">
        {TOOLS.map((item, index) => (
          <button
            key={item.name}
            type="button"
            aria-pressed={tool === index}
            onClick={() => {
              setTool(index);
              stage.held.value = null;
            }}
          >
            {item.name}
          </button>
        ))}
      </nav>
      <Announcer stage={stage} />
    </main>
  );
}

function Announcer({ stage }: { readonly stage: Stage }) {
  return (
    <p class="visually-hidden" role="status">
      {stage.said.value}
    </p>
  );
}
