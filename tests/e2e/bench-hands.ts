import type { Page } from 'playwright-core';
import type { Hands } from './hands.ts';

type Px = readonly [number, number];

/** Hands on the measuring bench: its labels stand here, and taps fall on places of the photograph, wherever it is shown. */
export function benchHands({ page, tap }: Pick<Hands, 'page' | 'tap'>, size: { width: number; height: number }) {
  const picture = page.getByRole('application');
  const panel = page.getByRole('main');
  const button = (name: string | RegExp) => page.getByRole('button', { name, exact: true });

  /** Where a pixel of the photograph is on the screen now. */
  const screenOf = ([x, y]: Px): Promise<[number, number]> =>
    picture.evaluate(
      (svg, [u, v]) => {
        const { left, top, width, height } = svg.getBoundingClientRect();
        const seen = (svg as SVGSVGElement).viewBox.baseVal;
        return [left + ((u - seen.x) / seen.width) * width, top + ((v - seen.y) / seen.height) * height] as [
          number,
          number,
        ];
      },
      [x, y] as const,
    );

  return {
    picture,
    panel,
    open: page.getByRole('link', { name: 'Mark and measure' }),
    done: page.getByRole('link', { name: 'Done' }),
    undo: button(/^Undo/),
    larger: button('Larger'),
    fit: button('Fit'),
    tool: (name: 'Scale' | 'Mark' | 'Crack' | 'Holes' | 'Area' | 'Colour') =>
      page.getByRole('navigation', { name: 'Tools' }).getByRole('button', { name, exact: true }),
    findIt: button('Find it for me'),
    useScale: button('Use this scale'),
    takeInto: page.getByRole('combobox', { name: 'Take into' }),
    take: button('Take into the finding'),
    count: button('Count the holes'),
    suggest: button('Show lines that may be cracks'),
    shape: (name: string) => button(name),
    reference: page.getByRole('combobox', { name: 'What lies in the picture' }),
    lengthBetween: page.getByRole('textbox', { name: 'Length between them' }),
    limit: page.getByRole('slider', { name: 'What counts as stained' }),
    spot: (name: string) => button(new RegExp(`^${name}( ✓, placed)?$`)),
    next: button('Next point'),
    nudge: (way: 'Left' | 'Right' | 'Up' | 'Down') => button(`Nudge: ${way}`),
    /** The figure that stands beside a label of the result. */
    figure: (label: string) =>
      page
        .locator('dl > div')
        .filter({ has: page.getByText(label, { exact: true }) })
        .locator('b'),
    said: (words: string | RegExp) => page.getByRole('status').filter({ hasText: words }),
    /** Numbers on the photograph. */
    labels: picture.locator('text'),
    size,
    async tapAt(place: Px): Promise<void> {
      await page.touchscreen.tap(...(await screenOf(place)));
    },
    async drag(from: Px, by: Px): Promise<void> {
      const [x, y] = await screenOf(from);
      await page.mouse.move(x, y);
      await page.mouse.down();
      for (let step = 1; step <= 5; step++) await page.mouse.move(x + (by[0] * step) / 5, y + (by[1] * step) / 5);
      await page.mouse.up();
    },
    tap,
  };
}

/** `155 ± 3 mm` as numbers. */
export function figureOf(words: string | null): { readonly value: number; readonly plusMinus: number } {
  const [, value, plusMinus] = /^([\d.]+) ± ([\d.]+)/.exec(words ?? '') ?? [];
  if (value === undefined || plusMinus === undefined) throw new Error(`No figure with its doubt: ${words}`);
  return { value: Number(value), plusMinus: Number(plusMinus) };
}

/** Long tasks of the page since it was last asked, ms. */
export async function watchLongTasks(page: Page): Promise<() => Promise<number[]>> {
  await page.addInitScript(() => {
    const tasks: number[] = [];
    Object.assign(globalThis, { longTasks: tasks });
    new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries()) tasks.push(duration);
    }).observe({ type: 'longtask' });
  });
  return () =>
    page.evaluate(() => (globalThis as unknown as { longTasks: number[] }).longTasks.splice(0).map(Math.round));
}
