import { useSignal } from '@preact/signals';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import { insidePicture, nearest, type PictureSize, type Spot, toPixel } from '../../core/mark-geometry.ts';
import { fitted, kept, showing, spotAt } from '../../core/picture-view.ts';
import { usePhotoUrl } from '../../photos/object-urls.ts';
import { sentenceOf } from '../../text/errors.ts';
import { useApp } from '../../ui/app.ts';
import { type Desk, ZOOM_STEP } from './desk.ts';
import { createHands } from './hands.ts';
import { Lines } from './lines.tsx';
import { Loupe } from './loupe.tsx';
import css from './stage.module.css';

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};
/** Screen pixels one press of an arrow moves; with shift, one. */
const STRIDE_PX = 8;
/** How near the cross must be to a handle for Enter to pick it up, in screen px. */
const PICK_PX = 14;

const words = ([x, y]: Spot): string => `${Math.round(x * 100)} % across, ${Math.round(y * 100)} % down`;

/** The photograph with what is drawn over it. Nothing is ever written into the picture. */
export function StageView({ desk, alt }: { readonly desk: Desk; readonly alt: string }) {
  const { store } = useApp();
  const { stage, size } = desk;
  const { url, error } = usePhotoUrl(desk.photo.sha256, (key) => store.photoBytes(key));
  const svg = useRef<SVGSVGElement>(null);
  const screen = useSignal<PictureSize | null>(null);
  const cross = useSignal<Spot | null>(null);
  const dragged = useSignal<Spot | null>(null);

  const hands = useMemo(
    () =>
      createHands(stage, {
        size,
        screen: () => screen.peek() ?? { width: 1, height: 1 },
        placeOf(event) {
          const box = svg.current?.getBoundingClientRect();
          return [event.clientX - (box?.left ?? 0), event.clientY - (box?.top ?? 0)];
        },
        onDrag: (spot) => {
          dragged.value = spot;
        },
      }),
    [stage, size.width, size.height],
  );

  useEffect(() => {
    const element = svg.current;
    if (!element) return;
    const measure = new ResizeObserver(([seen]) => {
      if (!seen || seen.contentRect.width < 1) return;
      const { width, height } = seen.contentRect;
      screen.value = { width, height };
      const now = stage.view.peek();
      stage.view.value = now ? kept(now, size, { width, height }) : fitted(size, { width, height });
    });
    measure.observe(element);
    const wheel = (event: WheelEvent): void => hands.wheel(event);
    // A listener that may stop the page from scrolling has to say so.
    element.addEventListener('wheel', wheel, { passive: false });
    return () => {
      measure.disconnect();
      element.removeEventListener('wheel', wheel);
    };
  }, [hands]);

  useEffect(() => {
    stage.magnify = { by: hands.zoomBy, fit: whole };
  }, [hands]);

  function whole(): void {
    if (screen.value) stage.view.value = fitted(size, screen.value);
  }

  function move(spot: Spot, [dx, dy]: readonly [number, number], zoom: number): Spot {
    return insidePicture([spot[0] + dx / zoom / size.width, spot[1] + dy / zoom / size.height]);
  }

  function reveal(spot: Spot): void {
    if (screen.value && stage.view.value)
      stage.view.value = kept(showing(stage.view.value, size, screen.value, spot), size, screen.value);
  }

  function press(event: KeyboardEvent): void {
    const work = stage.work.value;
    const view = stage.view.value;
    if (!view || event.ctrlKey || event.metaKey || event.altKey) return;
    const held = stage.held.value;
    const handle = held === null ? undefined : work.handles[held];
    const arrow = ARROWS[event.key];
    const isDone = true;
    if (arrow) {
      const stride = event.shiftKey ? 1 : STRIDE_PX;
      const by = [arrow[0] * stride, arrow[1] * stride] as const;
      const box = screen.value ?? { width: 2, height: 2 };
      const from = handle ?? cross.value ?? spotAt(view, size, [box.width / 2, box.height / 2]);
      const next = move(from, by, view.zoom);
      cross.value = next;
      reveal(next);
      if (held !== null && handle) work.onMove(held, next, isDone);
      stage.said.value = words(next);
    } else if (event.key === 'Enter' || event.key === ' ') {
      const at = cross.value;
      if (held !== null) {
        stage.held.value = null;
        stage.said.value = 'Let go.';
      } else if (at) {
        const near = nearest(work.handles, at, size);
        if (near && near.px * view.zoom < PICK_PX) {
          stage.held.value = near.index;
          stage.said.value = `Point ${near.index + 1} picked up: the arrows move it.`;
        } else {
          work.onTap(at);
        }
      } else cross.value = spotAt(view, size, [(screen.value?.width ?? 2) / 2, (screen.value?.height ?? 2) / 2]);
    } else if (event.key === 'Delete' || event.key === 'Backspace') {
      if (held === null || !work.onRemove) return;
      work.onRemove(held);
      stage.held.value = null;
    } else if (event.key === 'Escape') {
      if (held === null) return;
      stage.held.value = null;
    } else if (event.key === '+' || event.key === '=') hands.zoomBy(ZOOM_STEP);
    else if (event.key === '-') hands.zoomBy(1 / ZOOM_STEP);
    else if (event.key === '0') whole();
    else return;
    event.preventDefault();
  }

  const view = stage.view.value;
  const shown = screen.value;
  const { drawn, handles } = stage.work.value;
  const unit = view ? 1 / view.zoom : 1;
  return (
    <div class={css.stage}>
      {error ? (
        <p class={css.broken}>{sentenceOf(error)}</p>
      ) : (
        <svg
          ref={svg}
          class={css.picture}
          role="application"
          // Lower case: attributes of SVG are not folded, and `tabIndex` would be no attribute at all.
          tabindex={0}
          aria-label={`${alt}. The arrows move a cross, Enter places a point or picks one up, plus and minus magnify.`}
          viewBox={
            view && shown
              ? `${view.left} ${view.top} ${shown.width / view.zoom} ${shown.height / view.zoom}`
              : `0 0 ${size.width} ${size.height}`
          }
          onPointerDown={(event) => {
            if (event.button !== 0) return;
            event.currentTarget.setPointerCapture(event.pointerId);
            cross.value = null;
            hands.down(event);
          }}
          onPointerMove={(event) => hands.move(event)}
          onPointerUp={(event) => hands.up(event)}
          onPointerCancel={(event) => hands.cancel(event)}
          onKeyDown={press}
        >
          {url && <image href={url} width={size.width} height={size.height} preserveAspectRatio="none" />}
          {drawn.map((item) => (
            <Lines key={item.key} drawn={item} size={size} unit={unit} />
          ))}
          {handles.map((spot, index) => {
            const [x, y] = toPixel(spot, size);
            return (
              // The order of the handles is what they are.
              <g key={index} class={css.handle} data-held={stage.held.value === index || undefined}>
                <circle cx={x} cy={y} r={9 * unit} />
                <circle class={css.dot} cx={x} cy={y} r={2 * unit} />
              </g>
            );
          })}
          {cross.value && <Cross at={toPixel(cross.value, size)} unit={unit} />}
        </svg>
      )}
      {dragged.value && url && view && (
        <Loupe url={url} size={size} at={dragged.value} zoom={view.zoom} drawn={drawn} />
      )}
    </div>
  );
}

function Cross({ at: [x, y], unit }: { readonly at: readonly [number, number]; readonly unit: number }) {
  const arm = 16 * unit;
  const gap = 3 * unit;
  const d = `M${x - arm} ${y}H${x - gap}M${x + gap} ${y}H${x + arm}M${x} ${y - arm}V${y - gap}M${x} ${y + gap}V${y + arm}`;
  return (
    <g class={css.lines} data-look="chosen">
      <path class={css.under} d={d} />
      <path class={css.over} d={d} />
    </g>
  );
}
