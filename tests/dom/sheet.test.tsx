import { afterEach, expect, it } from 'vitest';
import { Sheet } from '../../src/ui/sheet.tsx';
import { type Drawn, drawn } from '../support/dom.tsx';

let page: Drawn;
afterEach(() => page.clear());

it('opens a sheet at its head, where it says what it is, and not at the first thing to press', async () => {
  page = await drawn(
    <Sheet title="The answer and its working" onClose={() => undefined}>
      <a href="#/somewhere">A way on, far down</a>
    </Sheet>,
  );
  expect(document.activeElement?.textContent).toBe('The answer and its working');
  expect(document.activeElement?.tagName).toBe('H2');
});
