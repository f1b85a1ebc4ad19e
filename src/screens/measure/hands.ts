import { nearest, type PictureSize, type Spot, toPixel } from '../../core/mark-geometry.ts';
import { kept, type PictureView, pushed, spotAt, zoomed } from '../../core/picture-view.ts';
import type { Stage } from './desk.ts';

/** A finger that moved less than this meant a tap, in screen px. */
const TAP_SLOP_PX = 8;
/** How near a finger must come to take a handle, in screen px: half a thumb. */
const REACH_PX = 26;
/** A tap without a drag means the handle itself only this near; farther off it places the next point beside it. */
const ON_IT_PX = 12;

type Place = readonly [number, number];
type Doing =
  | { readonly what: 'nothing' }
  | { readonly what: 'perhapsTap'; readonly from: Place }
  | { readonly what: 'pushing' }
  | { readonly what: 'perhapsDrag'; readonly from: Place; readonly handle: number; readonly offset: Place }
  | { readonly what: 'dragging'; readonly handle: number; readonly offset: Place }
  | { readonly what: 'pinching'; readonly apart: number; readonly middle: Place };

/** What the stage needs to be handled: its picture's size and its own on the screen. */
export interface Frame {
  readonly size: PictureSize;
  readonly screen: () => PictureSize;
  /** Of a pointer event, in px from the stage's top left. */
  readonly placeOf: (event: PointerEvent | WheelEvent) => Place;
  /** The spot under the finger while a handle is dragged, for the loupe; null when it is let go. */
  readonly onDrag: (spot: Spot | null) => void;
}

/** One finger taps, drags a handle or pushes the picture; two pinch it; the wheel magnifies. */
export function createHands(stage: Stage, frame: Frame) {
  const down = new Map<number, Place>();
  let doing: Doing = { what: 'nothing' };

  const view = (): PictureView => stage.view.peek() ?? { left: 0, top: 0, zoom: 1 };
  const show = (next: PictureView): void => {
    stage.view.value = kept(next, frame.size, frame.screen());
  };
  const pair = (): { apart: number; middle: Place } => {
    const [a, b] = [...down.values()] as [Place, Place];
    return { apart: Math.hypot(a[0] - b[0], a[1] - b[1]), middle: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] };
  };

  function handleAt(place: Place): Doing | undefined {
    const { handles } = stage.work.peek();
    const now = view();
    const hit = nearest(handles, spotAt(now, frame.size, place), frame.size);
    if (!hit || hit.px * now.zoom > REACH_PX) return undefined;
    const [x, y] = toPixel(handles[hit.index] as Spot, frame.size);
    const at: Place = [(x - now.left) * now.zoom, (y - now.top) * now.zoom];
    return { what: 'perhapsDrag', from: place, handle: hit.index, offset: [at[0] - place[0], at[1] - place[1]] };
  }

  const dragged = (place: Place, offset: Place): Spot =>
    spotAt(view(), frame.size, [place[0] + offset[0], place[1] + offset[1]]);

  return {
    down(event: PointerEvent): void {
      const place = frame.placeOf(event);
      down.set(event.pointerId, place);
      if (down.size === 2) {
        if (doing.what === 'dragging') frame.onDrag(null);
        doing = { what: 'pinching', ...pair() };
        return;
      }
      if (down.size > 2) return;
      doing = handleAt(place) ?? { what: 'perhapsTap', from: place };
    },
    move(event: PointerEvent): void {
      const before = down.get(event.pointerId);
      if (!before) return;
      const place = frame.placeOf(event);
      down.set(event.pointerId, place);
      if (doing.what === 'pinching' && down.size === 2) {
        const now = pair();
        const moved = pushed(view(), now.middle[0] - doing.middle[0], now.middle[1] - doing.middle[1]);
        show(zoomed(moved, doing.apart > 0 ? now.apart / doing.apart : 1, now.middle));
        doing = { what: 'pinching', ...now };
        return;
      }
      if (doing.what === 'perhapsTap' || doing.what === 'perhapsDrag') {
        if (Math.hypot(place[0] - doing.from[0], place[1] - doing.from[1]) < TAP_SLOP_PX) return;
        if (doing.what === 'perhapsDrag') {
          stage.held.value = doing.handle;
          doing = { ...doing, what: 'dragging' };
        } else doing = { what: 'pushing' };
      }
      if (doing.what === 'pushing') show(pushed(view(), place[0] - before[0], place[1] - before[1]));
      else if (doing.what === 'dragging') {
        const spot = dragged(place, doing.offset);
        frame.onDrag(spot);
        stage.work.peek().onMove(doing.handle, spot, false);
      }
    },
    up(event: PointerEvent): void {
      const place = frame.placeOf(event);
      if (!down.delete(event.pointerId)) return;
      if (doing.what === 'perhapsDrag' && Math.hypot(...doing.offset) < ON_IT_PX) stage.held.value = doing.handle;
      else if (doing.what === 'perhapsTap' || doing.what === 'perhapsDrag') {
        const spot = spotAt(view(), frame.size, doing.from);
        if (spot.every((share) => share >= 0 && share <= 1)) stage.work.peek().onTap(spot);
      } else if (doing.what === 'dragging') {
        frame.onDrag(null);
        stage.work.peek().onMove(doing.handle, dragged(place, doing.offset), true);
      }
      // A pinch that loses one finger goes on as a push of the other.
      doing = down.size === 1 ? { what: 'pushing' } : { what: 'nothing' };
    },
    cancel(event: PointerEvent): void {
      down.delete(event.pointerId);
      frame.onDrag(null);
      doing = { what: 'nothing' };
    },
    wheel(event: WheelEvent): void {
      event.preventDefault();
      show(zoomed(view(), 2 ** (-event.deltaY / (event.deltaMode === 0 ? 300 : 10)), frame.placeOf(event)));
    },
    zoomBy(by: number): void {
      const { width, height } = frame.screen();
      show(zoomed(view(), by, [width / 2, height / 2]));
    },
  };
}
