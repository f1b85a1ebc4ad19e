import { type ComponentChild, render } from 'preact';
import { act } from 'preact/test-utils';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { BlockFigure } from '../../src/drawings/block-figure.tsx';
import { drawings } from '../../src/drawings/index.ts';
import type { FigureMark } from '../../src/drawings/placing.ts';

const root = document.body.appendChild(document.createElement('div'));
const show = (what: ComponentChild): void => void act(() => render(what, root));
afterEach(() => show(null));

const spoken = (zone: string): string => `the ${zone}`;
const radios = (): SVGElement[] => [...root.querySelectorAll<SVGElement>('[role="radio"]')];
const radio = (name: string): SVGElement => {
  const hit = radios().find((each) => each.getAttribute('aria-label') === name);
  if (!hit) throw new Error(`No radio “${name}” among ${radios().map((each) => each.getAttribute('aria-label'))}.`);
  return hit;
};
const press = (key: string, options: KeyboardEventInit = {}): boolean => {
  const event = new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true, ...options });
  act(() => void document.activeElement?.dispatchEvent(event));
  return event.defaultPrevented;
};
const focused = (): string | null | undefined => document.activeElement?.getAttribute('aria-label');

describe('the drawing as a picker', () => {
  it('is a radio group with a name, and every zone of the block is a radio once', () => {
    show(<BlockFigure drawing={drawings.domeCrown} zoneName={spoken} onPick={() => {}} label="Where on the block" />);
    expect(root.querySelector('[role="radiogroup"]')?.getAttribute('aria-label')).toBe('Where on the block');
    const names = radios().map((each) => each.getAttribute('aria-label'));
    const zones = new Set(drawings.domeCrown.views.flatMap(({ zones }) => zones.map(({ zone }) => zone)));
    expect([...names].sort()).toEqual([...zones].map(spoken).sort());
  });

  it('says of a part which one it is', () => {
    show(<BlockFigure drawing={drawings.puzzle} zoneName={spoken} onPick={() => {}} />);
    expect(radio('the sideBack, part 3')).not.toBe(radio('the sideBack, part 4'));
  });

  it('marks the chosen zone and no other, in every view that shows it', () => {
    show(
      <BlockFigure
        drawing={drawings.domeCrown}
        zoneName={spoken}
        onPick={() => {}}
        selected={{ zone: 'sideFront', part: null }}
      />,
    );
    expect(radios().filter((each) => each.getAttribute('aria-checked') === 'true')).toEqual([radio('the sideFront')]);
    expect(root.querySelectorAll('g[data-zone="sideFront"][data-checked="true"]')).toHaveLength(2); // plan and side
  });

  it('chooses a part by its number, and nothing when no number is known', () => {
    const parts = (part: number | null): (string | null)[] => {
      show(
        <BlockFigure
          drawing={drawings.puzzle}
          zoneName={spoken}
          onPick={() => {}}
          selected={{ zone: 'sideBack', part }}
        />,
      );
      return radios()
        .filter((each) => each.getAttribute('aria-checked') === 'true')
        .map((each) => each.getAttribute('data-zone'));
    };
    expect(parts(4)).toEqual(['sideBack:4']);
    expect(parts(null)).toEqual([]);
  });

  it('has one stop for the Tab key: the chosen zone, or the first', () => {
    const stops = (): (string | null)[] =>
      radios()
        .filter((each) => each.getAttribute('tabindex') === '0')
        .map((each) => each.getAttribute('aria-label'));
    show(<BlockFigure drawing={drawings.tip} zoneName={spoken} onPick={() => {}} />);
    expect(stops()).toEqual([radios()[0]?.getAttribute('aria-label')]);
    show(<BlockFigure drawing={drawings.tip} zoneName={spoken} onPick={() => {}} selected={{ zone: 'lowerEdge' }} />);
    expect(stops()).toEqual(['the lowerEdge']);
  });

  it('moves with the arrow keys, round the end and back, and chooses nothing by that', () => {
    const onPick = vi.fn();
    show(<BlockFigure drawing={drawings.bandBlock} zoneName={spoken} onPick={onPick} />);
    const names = radios().map((each) => each.getAttribute('aria-label'));
    act(() => radios()[0]?.focus());
    for (const name of [...names.slice(1), names[0]]) {
      expect(press('ArrowRight')).toBe(true);
      expect(focused()).toBe(name);
    }
    press('ArrowUp');
    expect(focused()).toBe(names[names.length - 1]);
    press('Home');
    expect(focused()).toBe(names[0]);
    press('End');
    expect(focused()).toBe(names[names.length - 1]);
    expect(document.activeElement?.getAttribute('tabindex')).toBe('0');
    expect(onPick).not.toHaveBeenCalled();
  });

  it('chooses with Enter and with Space, and does not scroll the page doing so', () => {
    const onPick = vi.fn();
    show(<BlockFigure drawing={drawings.puzzle} zoneName={spoken} onPick={onPick} />);
    act(() => radio('the key').focus());
    expect(press('Enter')).toBe(true);
    act(() => radio('the sideBack, part 4').focus());
    expect(press(' ')).toBe(true);
    expect(onPick.mock.calls).toEqual([[{ zone: 'key' }], [{ zone: 'sideBack', part: 4 }]]);
  });

  it('leaves other keys and the browser’s own combinations alone', () => {
    const onPick = vi.fn();
    show(<BlockFigure drawing={drawings.tip} zoneName={spoken} onPick={onPick} />);
    act(() => radios()[0]?.focus());
    expect(press('Tab')).toBe(false);
    expect(press('ArrowLeft', { altKey: true })).toBe(false);
    expect(press('Enter', { ctrlKey: true })).toBe(false);
    expect(focused()).toBe(radios()[0]?.getAttribute('aria-label'));
    expect(onPick).not.toHaveBeenCalled();
  });

  it('takes a tap in any view, also on the grip round a thin zone, and moves the focus there', () => {
    const onPick = vi.fn();
    show(<BlockFigure drawing={drawings.domeCrown} zoneName={spoken} onPick={onPick} />);
    const tapped = [...root.querySelectorAll('[data-zone="ropeLine"]')];
    expect(tapped.length).toBeGreaterThan(2); // plan, side, and the grips below the drawing
    for (const target of tapped) act(() => void target.dispatchEvent(new MouseEvent('click', { bubbles: true })));
    expect(onPick).toHaveBeenCalledTimes(tapped.length);
    expect(onPick).toHaveBeenCalledWith({ zone: 'ropeLine' });
    expect(focused()).toBe('the ropeLine');
  });

  it('offers only the zones the question allows', () => {
    const onPick = vi.fn();
    show(
      <BlockFigure drawing={drawings.flatBrim} zoneName={spoken} onPick={onPick} allowed={['edgeGroove', 'collar']} />,
    );
    expect(
      radios()
        .map((each) => each.getAttribute('aria-label'))
        .sort(),
    ).toEqual(['the collar', 'the edgeGroove']);
    expect(root.querySelector('[data-zone="brimFront"]')).toBeNull();
    act(() => radio('the collar').focus());
    press('ArrowDown');
    press('ArrowDown');
    expect(focused()).toBe('the collar');
  });

  it('shows what has been looked at, and shuts what cannot be picked', () => {
    show(
      <BlockFigure
        drawing={drawings.tip}
        zoneName={spoken}
        onPick={() => {}}
        zoneStates={{ tip: 'clear', base: 'found', stemHole: 'off' }}
      />,
    );
    expect(radio('the base').getAttribute('data-state')).toBe('found');
    expect(root.querySelectorAll('path[d="M-5 0L-1.5 4L5 -5"]').length).toBe(2); // a tick in plan and side
    expect(radios().map((each) => each.getAttribute('data-zone'))).not.toContain('stemHole');
  });

  it('takes one view alone', () => {
    show(<BlockFigure drawing={drawings.domeCrown} view="under" zoneName={spoken} onPick={() => {}} />);
    expect(root.querySelectorAll('svg')).toHaveLength(1);
    expect(
      radios()
        .map((each) => each.getAttribute('data-zone'))
        .sort(),
    ).toEqual(['base', 'glueLine', 'stemHole']);
  });
});

describe('the drawing as a map of the damage', () => {
  const marks: FigureMark[] = [
    { number: 1, zone: 'tip', mechanism: 'structure', grade: 1 },
    { number: 2, zone: 'ropeLine', mechanism: 'loss', grade: 4 },
    { number: 3, zone: 'whole', mechanism: 'contamination', grade: 2 },
  ];

  it('is one picture with a name, and draws every number once', () => {
    show(
      <BlockFigure drawing={drawings.domeCrown} zoneName={spoken} marks={marks} label="Damage map: three findings" />,
    );
    expect(root.querySelector('[role="img"]')?.getAttribute('aria-label')).toBe('Damage map: three findings');
    expect(radios()).toEqual([]);
    for (const { number } of marks) {
      expect([...root.querySelectorAll('text')].filter((text) => text.textContent === String(number))).toHaveLength(1);
    }
  });

  it('is decoration without a name', () => {
    show(<BlockFigure drawing={drawings.domeCrown} view="side" zoneName={spoken} marks={marks} thumbnail />);
    expect(root.firstElementChild?.getAttribute('aria-hidden')).toBe('true');
  });

  it('counts in the corner what one view cannot show', () => {
    show(<BlockFigure drawing={drawings.domeCrown} view="side" zoneName={spoken} marks={marks} thumbnail />);
    expect([...root.querySelectorAll('text')].map((text) => text.textContent)).toContain('+1'); // the whole is only in plan
  });

  it('draws larger marks and leaves out the small words in a thumbnail', () => {
    const sizeOf = (): number =>
      Number([...root.querySelectorAll('text')].find((text) => text.textContent === '1')?.getAttribute('font-size'));
    show(<BlockFigure drawing={drawings.domeCrown} view="side" zoneName={spoken} marks={marks} label="x" />);
    const large = sizeOf();
    expect(root.textContent).toContain('front');
    show(<BlockFigure drawing={drawings.domeCrown} view="side" zoneName={spoken} marks={marks} thumbnail />);
    expect(sizeOf() / 2).toBeGreaterThanOrEqual(8); // shown at half scale
    expect(sizeOf()).toBeGreaterThan(large);
    expect(root.textContent).not.toContain('front');
  });

  it('uses no style attribute, which the content policy would refuse', () => {
    show(
      <BlockFigure
        drawing={drawings.sculptedBrim}
        zoneName={spoken}
        marks={marks}
        onPick={() => {}}
        selected={{ zone: 'collar' }}
      />,
    );
    expect(root.querySelectorAll('[style]')).toHaveLength(0);
  });
});
