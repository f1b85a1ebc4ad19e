import { type ComponentChild, render } from 'preact';
import { act as acted } from 'preact/test-utils';
import { v7 } from 'uuid';
import { catalogue } from '../../src/catalogue/index.ts';
import { scheduleBench } from '../../src/core/schedule/bench.ts';
import { createOwnRecord } from '../../src/parts/own-record.ts';
import { createMemoryRepository } from '../../src/store/memory.ts';
import { createStore, type Store } from '../../src/store/store.ts';
import { AppContext } from '../../src/ui/app.ts';

/** The day of the invented sale. */
export const NOW = Date.parse('2026-10-17T10:30:00Z');

/** A store that keeps everything in memory, as an app would open it. */
export async function openedStore(): Promise<Store> {
  const store = createStore({
    repository: createMemoryRepository(),
    device: 'testdevi',
    now: () => NOW,
    newId: () => v7(),
  });
  await store.load();
  return store;
}

/** Does something and lets what it draws be drawn. */
export const act = (what: () => void): void => void acted(what);

/** Text as it reads: a number and its unit are kept on one line by a space that does not break. */
export const plainly = (text: string | null | undefined): string => (text ?? '').replaceAll('\u00a0', ' ');

/** Draws a part inside the app’s context and gives the hands and eyes of a person: by label, by name. */
export async function drawn(part: ComponentChild, store?: Store, now: () => number = () => NOW) {
  const using = store ?? (await openedStore());
  const root = document.body.appendChild(document.createElement('div'));
  const draw = (what: ComponentChild): void =>
    act(() =>
      render(
        <AppContext.Provider
          value={{
            store: using,
            catalogue,
            now,
            own: createOwnRecord(using, catalogue),
            // No worker in the stand-in DOM: the answer by the book stands.
            forecaster: { ask: () => new Promise(() => undefined) },
            // The same sums without the worker between.
            scheduler: { ask: async (_, facts) => scheduleBench(facts), takeBack: () => undefined },
          }}
        >
          {what}
        </AppContext.Provider>,
        root,
      ),
    );
  draw(part);

  const named = <E extends HTMLElement>(selector: string, name: string): E => {
    const all = [...root.querySelectorAll<E>(selector)];
    const nameOf = (element: E): string => plainly(element.getAttribute('aria-label') ?? element.textContent).trim();
    const hit = all.find((element) => nameOf(element) === name);
    if (!hit) {
      const there = all.map(nameOf);
      throw new Error(`${selector} named “${name}” came as ${JSON.stringify(there)}.`);
    }
    return hit;
  };
  const field = <E extends HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement>(label: string): E => {
    const found = named<HTMLLabelElement>('label', label);
    const control = found.htmlFor ? root.querySelector<E>(`[id="${found.htmlFor}"]`) : found.querySelector<E>('input');
    if (!control) throw new Error(`Label “${label}” came without a field.`);
    return control;
  };
  return {
    store: using,
    root,
    draw,
    text: () => plainly(root.textContent),
    field,
    button: (name: string) => named<HTMLButtonElement>('button', name),
    type(label: string, text: string) {
      const control = field<HTMLInputElement>(label);
      act(() => {
        control.value = text;
        control.dispatchEvent(new Event('input', { bubbles: true }));
      });
    },
    leave: (label: string) => act(() => void field(label).dispatchEvent(new Event('blur'))),
    choose(label: string, value: string) {
      const control = field<HTMLSelectElement>(label);
      act(() => {
        control.value = value;
        control.dispatchEvent(new Event('change', { bubbles: true }));
      });
    },
    tick(label: string) {
      const control = field<HTMLInputElement>(label);
      act(() => {
        control.checked = !control.checked;
        control.dispatchEvent(new Event('change', { bubbles: true }));
      });
    },
    press(name: string) {
      act(() => named<HTMLButtonElement>('button', name).click());
    },
    clear() {
      act(() => render(null, root));
      root.remove();
    },
  };
}
export type Drawn = Awaited<ReturnType<typeof drawn>>;
