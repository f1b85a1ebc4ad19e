import { render } from 'preact';
import { act } from 'preact/test-utils';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { AppError } from '../../src/core/errors.ts';
import { beginCapture, type CaptureKeeper, takePendingCapture } from '../../src/photos/drafts.ts';
import { createObjectUrlCache, type PictureBytes } from '../../src/photos/object-url-cache.ts';
import { usePhotoUrl } from '../../src/photos/object-urls.ts';
import { PhotoInput } from '../../src/photos/photo-input.tsx';
import type { PhotoOptions } from '../../src/photos/prepare-photo.ts';
import type { PreparedPhoto } from '../../src/photos/prepared-photo.ts';
import '../../src/ui/tokens.css';
import '../../src/ui/reset.css';

const page = document.createElement('div');
beforeEach(() => void document.body.append(page));
afterEach(async () => {
  await act(() => render(null, page));
  page.remove();
  localStorage.clear();
});

const settle = (): Promise<void> => act(() => new Promise<void>((resolve) => setTimeout(resolve, 20)));
const find = <Kind extends Element>(selector: string): Kind => {
  const found = page.querySelector<Kind>(selector);
  if (!found) throw new Error(`No ${selector} in ${page.innerHTML}`);
  return found;
};
const button = (name: string): HTMLButtonElement => {
  const found = [...page.querySelectorAll('button')].find(({ textContent }) => textContent === name);
  if (!found) throw new Error(`No button “${name}” in ${page.innerHTML}`);
  return found;
};
const camera = (): HTMLInputElement => find('input[capture="environment"]');
const gallery = (): HTMLInputElement => find('input[multiple]');

async function choose(input: HTMLInputElement, ...names: string[]): Promise<void> {
  const transfer = new DataTransfer();
  for (const name of names) transfer.items.add(new File([name], name, { type: 'image/jpeg' }));
  input.files = transfer.files;
  input.dispatchEvent(new Event('change', { bubbles: true }));
  await settle();
}

/** A preparer whose photographs come when they are let through. */
function slowPreparer() {
  const waiting: { name: string; options: PhotoOptions; finish: (outcome?: Error) => Promise<void> }[] = [];
  const prepare = (file: File | Blob, options: PhotoOptions): Promise<PreparedPhoto> =>
    new Promise((resolve, reject) => {
      options.signal?.addEventListener('abort', () => reject(options.signal?.reason));
      waiting.push({
        name: (file as File).name,
        options,
        finish: (outcome) => {
          if (outcome) reject(outcome);
          else resolve({ sha256: (file as File).name } as PreparedPhoto);
          return settle();
        },
      });
    });
  return { waiting, prepare };
}

async function show() {
  const { waiting, prepare } = slowPreparer();
  const stored: string[] = [];
  const onDone = vi.fn();
  const options = { keepOriginal: true, keepPosition: false };
  await act(() =>
    render(
      <PhotoInput
        context="crown of lot 14"
        options={options}
        prepare={prepare}
        onPrepared={(photo) => void stored.push(photo.sha256)}
        onDone={onDone}
      />,
      page,
    ),
  );
  return { waiting, stored, onDone };
}

describe('the way in for photographs', () => {
  it('is a camera button and a gallery button, each big enough for a thumb', async () => {
    await show();
    for (const name of ['Take a photograph', 'Choose from the gallery']) {
      const { height, width } = button(name).getBoundingClientRect();
      expect(height).toBeGreaterThanOrEqual(48);
      expect(width).toBeGreaterThanOrEqual(48);
    }
    expect(camera().multiple).toBe(false);
    expect(gallery().hasAttribute('capture')).toBe(false);
  });

  it('notes what the photograph is for before the camera opens, and forgets it when the camera comes back', async () => {
    await show();
    const opened: (string | undefined)[] = [];
    const open = vi.spyOn(HTMLInputElement.prototype, 'click').mockImplementation(function (this: HTMLInputElement) {
      opened.push(localStorage.getItem('blockworth-pending-capture') ?? undefined);
    });
    button('Take a photograph').click();
    expect(JSON.parse(opened[0] ?? '').context).toBe('crown of lot 14');
    camera().dispatchEvent(new Event('cancel', { bubbles: true }));
    expect(takePendingCapture()).toBeNull();
    button('Choose from the gallery').click();
    expect(takePendingCapture()?.context).toBe('crown of lot 14');
    open.mockRestore();
  });

  it('counts through the files, stores each in turn and can take more meanwhile', async () => {
    const { waiting, stored, onDone } = await show();
    await choose(gallery(), 'front.jpg', 'left.jpg');
    expect(find('[role=status]').textContent).toBe('Photograph 1 of 2');
    await waiting[0]?.finish();
    expect(stored).toEqual(['front.jpg']);
    expect(find('[role=status]').textContent).toBe('Photograph 2 of 2');
    await choose(camera(), 'stamp.jpg');
    expect(find('[role=status]').textContent).toBe('Photograph 2 of 3');
    await waiting[1]?.finish();
    await waiting[2]?.finish();
    expect(stored).toEqual(['front.jpg', 'left.jpg', 'stamp.jpg']);
    expect(waiting.map(({ options }) => options.fromCamera)).toEqual([false, false, true]);
    expect(find('[role=status]').textContent).toBe('3 photographs saved on this phone');
    expect(onDone.mock.calls).toEqual([[3, 0]]);
  });

  it('lets the same photograph be chosen twice', async () => {
    const { waiting } = await show();
    await choose(gallery(), 'front.jpg');
    expect(gallery().value).toBe('');
    await waiting[0]?.finish();
    await choose(gallery(), 'front.jpg');
    expect(waiting.length).toBe(2);
  });

  it('names each file that failed and why, without holding up the others, and tries again what may succeed', async () => {
    const { waiting, stored, onDone } = await show();
    await choose(gallery(), 'list.txt', 'front.jpg', 'left.jpg');
    await waiting[0]?.finish(new AppError('photo-not-an-image'));
    await waiting[1]?.finish(new AppError('storage-full'));
    await waiting[2]?.finish();
    expect(stored).toEqual(['left.jpg']);
    expect(onDone.mock.calls).toEqual([[1, 2]]);
    const said = [...page.querySelectorAll('[role=alert] li')].map(({ textContent }) => textContent);
    expect(said[0]).toMatch(/^list\.txt .*not a photograph/);
    expect(said[1]).toMatch(/^front\.jpg .*no room/);
    button('Try again').click();
    await settle();
    expect(waiting.length).toBe(4);
    await waiting[3]?.finish();
    expect(stored).toEqual(['left.jpg', 'front.jpg']);
  });

  it('stops at once when told to; what is stored stays and nothing counts as failed', async () => {
    const { waiting, stored, onDone } = await show();
    await choose(gallery(), 'a.jpg', 'b.jpg', 'c.jpg');
    await waiting[0]?.finish();
    button('Stop').click();
    await settle();
    expect(waiting[1]?.options.signal?.aborted).toBe(true);
    expect(waiting.length).toBe(2);
    expect(stored).toEqual(['a.jpg']);
    expect(page.querySelector('[role=alert]')).toBeNull();
    expect(find('[role=status]').textContent).toBe('Photograph saved on this phone');
    expect(onDone).not.toHaveBeenCalled();
  });
});

describe('the note of a camera on its way', () => {
  const keeper = (): CaptureKeeper => {
    let note: string | null = null;
    return {
      read: () => note,
      write: (text) => {
        note = text;
      },
      clear: () => {
        note = null;
      },
    };
  };

  it('is handed over once after a reload, and not when it is an hour old', () => {
    const kept = keeper();
    beginCapture('crown', kept, 1000);
    expect(takePendingCapture(kept, 61_000)).toEqual({ context: 'crown', begunMs: 1000 });
    expect(takePendingCapture(kept, 61_000)).toBeNull();
    beginCapture('crown', kept, 0);
    expect(takePendingCapture(kept, 3_600_001)).toBeNull();
  });

  it('is nothing when unreadable', () => {
    for (const note of ['', 'no json', 'null', '7', '{"context":7,"begunMs":0}', '{"context":"crown"}']) {
      const kept = keeper();
      kept.write(note);
      expect(takePendingCapture(kept, 0)).toBeNull();
    }
  });
});

describe('object URLs', () => {
  const picture = (text: string): PictureBytes => ({
    bytes: new TextEncoder().encode(text).buffer,
    mime: 'image/jpeg',
  });
  const tick = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

  it('are made once per picture and revoked when the last user is gone', async () => {
    const [made, gone]: [string[], string[]] = [[], []];
    const cache = createObjectUrlCache({
      make: () => `blob:${made.push('')}`,
      revoke: (url) => void gone.push(url),
    });
    const load = vi.fn(async (sha256: string) => picture(sha256));
    const seen: unknown[] = [];
    const first = cache.use('aa', load, ({ url }) => seen.push(url));
    const second = cache.use('aa', load, ({ url }) => seen.push(url));
    await tick();
    expect([seen, load.mock.calls.length]).toEqual([['blob:1', 'blob:1'], 1]);
    first();
    await tick();
    expect(gone).toEqual([]);
    second();
    const third = cache.use('aa', load, () => {});
    await tick();
    // Given back and asked for in one go, as a redrawn list does: the same address.
    expect(gone).toEqual([]);
    third();
    await tick();
    expect([gone, cache.live()]).toEqual([['blob:1'], 0]);
  });

  it('are never more than 120 at a time; the next gets its place when one is given back', async () => {
    const cache = createObjectUrlCache();
    const releases = Array.from({ length: 121 }, (_, i) =>
      cache.use(
        `picture ${i}`,
        async (sha256) => picture(sha256),
        () => {},
      ),
    );
    await tick();
    expect(cache.live()).toBe(120);
    expect(cache.peek('picture 120').url).toBeUndefined();
    releases[0]?.();
    await tick();
    expect(cache.live()).toBe(120);
    expect(cache.peek('picture 120').url).toMatch(/^blob:/);
    for (const release of releases.slice(1)) release();
    await tick();
    expect(cache.live()).toBe(0);
  });

  it('are not made for a picture nobody waits for any more, and an error is told and may be tried anew', async () => {
    const make = vi.fn(() => 'blob:x');
    const cache = createObjectUrlCache({ make, revoke: () => {} });
    cache.use(
      'aa',
      () => tick().then(() => picture('aa')),
      () => {},
    )();
    await tick();
    await tick();
    expect(make).not.toHaveBeenCalled();
    const seen: unknown[] = [];
    const release = cache.use(
      'bb',
      async () => undefined,
      ({ error }) => seen.push(error),
    );
    await tick();
    expect(seen[0]).toMatchObject({ code: 'photo-damaged', facts: { sha256: 'bb' } });
    release();
    await tick();
    cache.use(
      'bb',
      async () => picture('bb'),
      ({ url }) => seen.push(url),
    );
    await tick();
    expect(seen[1]).toBe('blob:x');
  });

  it('reach a component as url or error, and follow it from picture to picture', async () => {
    const revoked = vi.spyOn(URL, 'revokeObjectURL');
    const load = async (sha256: string): Promise<PictureBytes> => {
      if (sha256 === 'damaged') throw new AppError('photo-damaged');
      return picture(sha256);
    };
    const Picture = ({ of }: { of: string | null }) => {
      const { url, error } = usePhotoUrl(of, load);
      return <p>{error ? 'cannot be shown' : (url ?? 'on its way')}</p>;
    };
    const draw = async (of: string | null): Promise<string> => {
      await act(() => render(<Picture of={of} />, page));
      await settle();
      return find('p').textContent ?? '';
    };
    const first = await draw('front');
    expect(first).toMatch(/^blob:/);
    const second = await draw('left');
    expect(second).toMatch(/^blob:/);
    expect(second).not.toBe(first);
    expect(await draw('damaged')).toBe('cannot be shown');
    expect(await draw(null)).toBe('on its way');
    expect(revoked.mock.calls.map(([url]) => url)).toEqual([first, second]);
    revoked.mockRestore();
  });
});
