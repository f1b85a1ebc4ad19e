import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { examplePictures } from '../../src/demo/pictures.ts';
import { examplePicture, forgetExamplePictures } from '../../src/parts/example-pictures.tsx';
import ShelfScreen from '../../src/screens/shelf/screen.tsx';
import { act, type Drawn, drawn } from '../support/dom.tsx';

/** What a request answers: no signal, or a page that is not the picture (a login page of a café's network). */
type Answer = (url: string) => Promise<Response>;
const noSignal: Answer = () => Promise.reject(new TypeError('Failed to fetch'));
const loginPage: Answer = () => Promise.resolve(new Response('<html>Accept our terms</html>'));

/** Eighteen blocks are drawn and weighed first, on a machine that may be busy. */
const PATIENT = { timeout: 20_000 };

let page: Drawn;
const asked = vi.fn<Answer>();

beforeEach(() => {
  localStorage.clear();
  asked.mockReset();
  vi.stubGlobal('fetch', asked);
});
afterEach(() => {
  page?.clear();
  forgetExamplePictures();
  vi.unstubAllGlobals();
});

const saysThey = (words: string) => vi.waitFor(() => expect(page.text()).toContain(words), PATIENT);

describe('the example opened without signal', { timeout: 60_000 }, () => {
  it('stands whole without photographs, says so, and asks again when signal comes or when told to', async () => {
    asked.mockImplementation(noSignal);
    page = await drawn(<ShelfScreen />);
    page.press('Open the example sale');
    await saysThey(`${examplePictures.length} photographs could not be fetched now`);
    expect(page.store.blocks.value).toHaveLength(18);
    expect(page.text()).toContain('They come by themselves once there is signal.');
    // Without signal one request is enough to know it.
    expect(asked).toHaveBeenCalledTimes(1);
    act(() => void dispatchEvent(new Event('online')));
    await vi.waitFor(() => expect(asked).toHaveBeenCalledTimes(2), PATIENT);
    await saysThey('could not be fetched now');
    page.press('Fetch them now');
    await vi.waitFor(() => expect(asked).toHaveBeenCalledTimes(3), PATIENT);
  });

  it('asks again at the next visit, until the example is taken away', async () => {
    asked.mockImplementation(noSignal);
    page = await drawn(<ShelfScreen />);
    page.press('Open the example sale');
    await saysThey('could not be fetched now');
    const { store } = page;
    page.clear();
    page = await drawn(<ShelfScreen />, store);
    await vi.waitFor(() => expect(asked).toHaveBeenCalledTimes(2), PATIENT);
    await saysThey('could not be fetched now');
    page.press('Take the example away');
    expect(store.blocks.value).toEqual([]);
    page.clear();
    page = await drawn(<ShelfScreen />, store);
    expect(page.text()).not.toContain('photograph');
    expect(asked).toHaveBeenCalledTimes(2);
  });
});

describe('one picture of the example', () => {
  it('is refused when the host answers with something else', async () => {
    asked.mockImplementation(loginPage);
    await expect(examplePicture('L01-top', '0'.repeat(64))).rejects.toThrow('L01-top');
  });

  it('is asked for by its hash, so that one made anew is another file', async () => {
    const bytes = new TextEncoder().encode('abc');
    asked.mockImplementation(() => Promise.resolve(new Response(bytes)));
    // Source: FIPS 180-4, example for "abc".
    const hash = 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad';
    expect(await (await examplePicture('L01-top', hash)).text()).toBe('abc');
    expect(asked.mock.calls.at(-1)?.[0]).toMatch(/\/example\/L01-top\.jpg\?r=ba7816bf8f01cfea$/);
  });
});
