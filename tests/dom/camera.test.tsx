import { afterEach, describe, expect, it } from 'vitest';
import { actionsOn } from '../../src/parts/actions.ts';
import { keepPhoto, noticed } from '../../src/parts/photo-check.ts';
import { PhotoNotices } from '../../src/parts/photo-notice.tsx';
import { useCase } from '../../src/parts/use-case.ts';
import { levelOf } from '../../src/screens/camera/level.ts';
import CameraScreen from '../../src/screens/camera/screen.tsx';
import { create } from '../../src/store/edits.ts';
import type { Store } from '../../src/store/store.ts';
import { act, type Drawn, drawn, NOW, openedStore } from '../support/dom.tsx';

let page: Drawn | undefined;
afterEach(() => page?.clear());

async function aBlock() {
  const store = await openedStore();
  return { store, blockId: actionsOn(store, () => NOW).startBlock() };
}
let hashes = 0;
function photograph(store: Store, blockId: string, view: string, stage: 'before' | 'after'): string {
  const id = store.newId();
  const sha256 = (++hashes).toString(16).padStart(64, '0');
  act(() => {
    void store.change('a photograph', [create('photo', id, { blockId, view, stage, sha256, thumbnail: sha256 })]);
  });
  return id;
}
const shots = (): HTMLButtonElement[] => [
  ...(page?.root.querySelectorAll<HTMLButtonElement>('ul[aria-label="Shot list"] button') ?? []),
];
const inHand = (): string | null | undefined =>
  shots()
    .find((button) => button.getAttribute('aria-pressed') === 'true')
    ?.getAttribute('aria-label');

describe('the camera in the page', () => {
  it('holds the next missing view ready and lets another be taken in hand', async () => {
    const { store, blockId } = await aBlock();
    page = await drawn(<CameraScreen params={{ id: blockId }} />, store);
    expect(inHand()).toBe('Three-quarter, not taken yet');
    photograph(store, blockId, 'threeQuarter', 'before');
    expect(inHand()).toBe('Top, not taken yet');
    page.press('Back, not taken yet');
    expect(inHand()).toBe('Back, not taken yet');
    photograph(store, blockId, 'back', 'before');
    expect(inHand()).toBe('Back, taken');
    photograph(store, blockId, 'back', 'before');
    expect(inHand()).toBe('Back, 2 taken');
  });

  it('turns to the views that have a before once the stage is after, with nothing ticked', async () => {
    const { store, blockId } = await aBlock();
    photograph(store, blockId, 'under', 'before');
    page = await drawn(<CameraScreen params={{ id: blockId }} />, store);
    page.tick('After');
    expect(inHand()).toBe('Underneath, not taken yet');
    expect(shots().filter((button) => button.textContent?.includes('✓'))).toEqual([]);
  });

  it('offers the ghost to an after alone, and hides it at a tap', async () => {
    const { store, blockId } = await aBlock();
    photograph(store, blockId, 'top', 'before');
    page = await drawn(<CameraScreen params={{ id: blockId }} />, store);
    page.press('Top, taken');
    expect(page.text()).not.toContain('ghost');
    page.tick('After');
    page.press('Hide the ghost');
    page.press('Show the ghost');
    page.press('Front, not taken yet');
    expect(page.text()).not.toContain('ghost');
  });

  it('without a camera says so and leaves the usual way in', async () => {
    const { store, blockId } = await aBlock();
    page = await drawn(<CameraScreen params={{ id: blockId }} />, store);
    await act(() => undefined);
    await new Promise((resolve) => setTimeout(resolve, 20));
    page.draw(<CameraScreen params={{ id: blockId }} />);
    // The stand-in DOM has no camera interface at all.
    expect(page.root.querySelector('[role=alert]')?.textContent).toMatch(/gives pages no camera/);
    page.button('Take a photograph');
    page.button('Choose from the gallery');
  });
});

describe('a photograph that came out badly', () => {
  function Notices({ id }: { readonly id: string }) {
    const of = useCase(id);
    return of ? <PhotoNotices of={of} photos={of.photos} /> : null;
  }
  const note = (id: string, ...faults: string[]): void =>
    act(() => {
      noticed.value = new Map(noticed.value).set(id, faults);
    });

  it('is spoken of beside it, stays on the phone, and is left in peace once kept', async () => {
    const { store, blockId } = await aBlock();
    const [sharp, blurred] = [
      photograph(store, blockId, 'top', 'before'),
      photograph(store, blockId, 'front', 'before'),
    ];
    page = await drawn(<Notices id={blockId} />, store);
    expect(page.text()).toBe('');
    note(blurred, 'soft');
    expect(page.text()).toContain('Front Blurred – take it again?');
    expect(page.text()).not.toContain('Top');
    page.button('Take it again: Front');
    page.press('Keep it: Front');
    expect(page.text()).toBe('');
    expect(store.photosOf(blockId).map(({ id }) => id)).toEqual([sharp, blurred]);
  });

  it('may have more than one thing wrong, and a fault of a newer app is not made up', async () => {
    const { store, blockId } = await aBlock();
    const poor = photograph(store, blockId, 'top', 'before');
    page = await drawn(<Notices id={blockId} />, store);
    note(poor, 'shaken', 'dark');
    expect(page.text()).toContain('Blurred by a shake and too dark to see into the shadows – take it again?');
    note(poor, 'clipped', 'frozen');
    expect(page.text()).toContain('Burnt out in the brightest places – take it again?');
    act(() => keepPhoto(poor));
  });

  it('gives its place on the shelf to the better one, and undo brings the old one back', async () => {
    const { store, blockId } = await aBlock();
    const poor = photograph(store, blockId, 'top', 'before');
    const better = photograph(store, blockId, 'top', 'before');
    const actions = actionsOn(store, () => NOW);
    const block = () => store.get('block', blockId) as NonNullable<ReturnType<typeof store.get<'block'>>>;
    actions.setBlock(block(), { coverPhotoId: poor }, 'the cover');
    actions.replacePhoto(block(), store.get('photo', poor) as never, better);
    expect(store.photosOf(blockId).map(({ id }) => id)).toEqual([better]);
    expect(block().coverPhotoId).toBe(better);
    store.undo();
    expect(store.photosOf(blockId).map(({ id }) => id)).toEqual([poor, better]);
    expect(block().coverPhotoId).toBe(poor);
  });
});

describe('the level', () => {
  // W3C Device Orientation Event: beta 90 stands the phone on its lower edge, beta 0 lays it on its back.
  it('knows a phone held upright, and one held over the block with the lens down', () => {
    expect(levelOf(90, 0, 0)).toMatchObject({ held: 'upright' });
    expect(levelOf(90, 0, 0).offDegrees).toBeCloseTo(0, 9);
    expect(levelOf(0, 0, 0)).toMatchObject({ held: 'overhead' });
    expect(levelOf(0, 0, 0).offDegrees).toBeCloseTo(0, 9);
  });

  it('says how far an overhead lens is from straight down, and that the bubble floats to the raised side', () => {
    // Head of the phone raised by ten degrees: the bubble goes up the screen.
    const head = levelOf(10, 0, 0);
    expect(head.offDegrees).toBeCloseTo(10, 9);
    expect(head.lean[1]).toBeLessThan(0);
    // Gamma grows as the right edge goes down: the bubble goes left.
    const right = levelOf(0, 8, 0);
    expect(right.offDegrees).toBeCloseTo(8, 9);
    expect(right.lean[0]).toBeLessThan(0);
  });

  it('counts from the screen as it is read, also when the phone is held lying', () => {
    // On its long edge, head to the left, as screen.orientation calls 90: the right edge is on top, so gamma is −90.
    const lying = levelOf(0, -90, 90);
    expect(lying.held).toBe('upright');
    expect(lying.offDegrees).toBeCloseTo(0, 9);
    expect(Math.abs(levelOf(0, 90, 270).offDegrees)).toBeCloseTo(0, 9);
  });

  it('calls a phone turned clockwise turned to the right', () => {
    // Turned by 20° like a steering wheel: beta 70 and gamma 90 by the rotation order of the specification.
    expect(levelOf(70, 90, 0).offDegrees).toBeCloseTo(20, 9);
    expect(levelOf(70, -90, 0).offDegrees).toBeCloseTo(-20, 9);
  });
});
