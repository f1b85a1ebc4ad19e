import type { Page } from 'playwright-core';

/** House rule: what a thumb must hit is at least so high, in CSS pixels. WCAG 2.2 asks for 24 (AA) or 44 (AAA). */
export const THUMB = 48;

/**
 * Interactive elements lower than the house wants, as `tag “name” height`. Not counted: links in the middle of a sentence
 * (WCAG 2.5.8 excepts them as well) and the zones of a drawing, which are as large as the block leaves them and have the
 * list beside them for a thumb.
 */
export const smallTargets = (page: Page, least = THUMB): Promise<string[]> =>
  page.evaluate((least) => {
    const SOUGHT = 'a[href], button, input, select, textarea, summary, [role="radio"], [role="button"], [tabindex="0"]';
    const inSentence = (element: Element): boolean =>
      element instanceof HTMLAnchorElement &&
      getComputedStyle(element).display === 'inline' &&
      (element.parentElement?.textContent ?? '').trim().length > (element.textContent ?? '').trim().length;
    return [...document.querySelectorAll<HTMLElement>(SOUGHT)].flatMap((element) => {
      if (element instanceof SVGElement || !element.checkVisibility() || inSentence(element)) return [];
      const labels = element instanceof HTMLInputElement ? [...(element.labels ?? [])] : [];
      const boxes = [element, ...labels].map((one) => one.getBoundingClientRect());
      const height = Math.max(...boxes.map(({ bottom }) => bottom)) - Math.min(...boxes.map(({ top }) => top));
      const name = element.getAttribute('aria-label') ?? labels[0]?.textContent ?? element.textContent ?? '';
      if (height >= least - 0.5 || height === 0) return [];
      return [`${element.tagName.toLowerCase()} “${name.trim().slice(0, 40)}” ${Math.round(height)}`];
    });
  }, least);

/** What sticks out to the right where the page is so narrow, as selectors of a kind. Empty when nothing scrolls sideways. */
export const overflowing = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const width = document.documentElement.clientWidth;
    if (document.documentElement.scrollWidth <= width) return [];
    const out = [...document.body.querySelectorAll('*')].filter(
      (element) => element.getBoundingClientRect().right > width + 1 && element.checkVisibility(),
    );
    return [
      `scrolls to ${document.documentElement.scrollWidth} of ${width}`,
      ...out.slice(0, 6).map((element) => `${element.tagName.toLowerCase()}.${element.getAttribute('class') ?? ''}`),
    ];
  });
