import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { actionsOn } from '../../src/parts/actions.ts';
import { Arrival } from '../../src/parts/arrival.tsx';
import { PlaceField } from '../../src/parts/place-field.tsx';
import { PlanList } from '../../src/parts/plan-list.tsx';
import { useCase } from '../../src/parts/use-case.ts';
import QuarantineList from '../../src/screens/quarantine/list-screen.tsx';
import QuarantineScreen from '../../src/screens/quarantine/screen.tsx';
import { create } from '../../src/store/edits.ts';
import type { Store } from '../../src/store/store.ts';
import { act, type Drawn, drawn, NOW, openedStore } from '../support/dom.tsx';

let store: Store;
let page: Drawn;
let blockId: string;

const block = () => {
  const found = store.get('block', blockId);
  if (!found) throw new Error('The block went missing.');
  return found;
};
const actions = () => actionsOn(store, () => NOW);
const running = () => store.quarantinesOf(blockId).at(-1);

function Moving({ id }: { readonly id: string }) {
  const of = useCase(id);
  return of ? (
    <>
      <Arrival of={of} />
      <PlaceField of={of} />
    </>
  ) : null;
}
const Screen = () => <QuarantineScreen params={{ id: blockId }} />;

beforeEach(async () => {
  store = await openedStore();
  blockId = actions().startBlock({ name: 'Cloche', blockType: 'domeCrown', materials: ['lime'] });
  const survey = store.surveyOf(blockId);
  if (!survey) throw new Error('No survey.');
  const finding = actions().addFinding(block(), survey, 'flightHoles', 'sideLeft');
  const found = store.get('finding', finding);
  if (found) actions().setFinding(found, { answers: { activity: 'active', diaMm: 1.6, dust: 'gritty' } });
});
afterEach(() => page.clear());

describe('a block with live worm that comes home', () => {
  beforeEach(async () => {
    page = await drawn(<Moving id={blockId} />, store);
  });

  it('is not asked about while it is only looked at', () => {
    expect(page.text()).not.toContain('Yours now');
  });
  it('goes into quarantine with one tap once it is paid, and undo takes that back whole', () => {
    act(() => actions().addOffer(block(), 'paid', 2000));
    expect(page.text()).toContain('Yours now, and not kept apart.');
    page.press('Into quarantine');
    expect(block().place).toBe('quarantine');
    expect(running()).toMatchObject({ reason: 'alive', begunOn: '2026-10-17', left: null });
    act(() => void store.undo());
    expect(block().place).toBe('lookingAt');
    expect(running()).toBeUndefined();
  });
  it('may stay out of it only with a reason, and then nobody asks again', () => {
    act(() => actions().addOffer(block(), 'paid', 2000));
    page.press('Not this one');
    expect(page.button('No quarantine').disabled).toBe(true);
    page.type('Why not?', 'burnt for heating');
    page.press('No quarantine');
    expect(page.text()).not.toContain('Yours now');
    expect(running()?.left).toMatchObject({ early: true, reason: 'burnt for heating' });
  });
  it('does not go to the bench unnoticed while its quarantine runs', () => {
    page.choose('Where it stands', 'quarantine');
    expect(running()).toMatchObject({ reason: 'alive' });
    page.choose('Where it stands', 'onTheBench');
    expect(block().place).toBe('quarantine');
    expect(page.text()).toContain('Its quarantine runs until 17 October 2027');
    expect(page.button('On the bench, all the same').disabled).toBe(true);
    page.type('Why before its time?', 'a pattern only, in the shed');
    page.press('On the bench, all the same');
    expect(block().place).toBe('onTheBench');
    expect(running()?.left).toEqual({ on: '2026-10-17', early: true, reason: 'a pattern only, in the shed' });
  });
  it('stays where it is when the question is left', () => {
    page.choose('Where it stands', 'quarantine');
    page.choose('Where it stands', 'toDo');
    page.press('Leave it where it is');
    expect(block().place).toBe('quarantine');
    expect(running()?.left).toBeNull();
  });
  it('says so when something else has moved it while its quarantine runs', () => {
    page.choose('Where it stands', 'quarantine');
    act(() => actions().setBlock(block(), { place: 'onTheBench' }, 'where it stands'));
    expect(page.text()).toContain('Its quarantine still runs, and it does not stand there.');
    page.press('Back into quarantine');
    expect(block().place).toBe('quarantine');
  });
  it('becomes ready only with its test, or with a reason', () => {
    page.choose('Where it stands', 'ready');
    expect(block().place).toBe('lookingAt');
    page.type('Why without the test?', 'a display piece');
    page.press('Ready, all the same');
    expect(block().place).toBe('ready');
    expect(store.readyChecksOf(blockId)).toMatchObject([
      { check: 'scrapHat', outcome: 'skipped', note: 'a display piece' },
    ]);
  });
});

describe('work on a block in quarantine', () => {
  function Work({ id }: { readonly id: string }) {
    const of = useCase(id);
    return of ? (
      <>
        <PlaceField of={of} />
        <PlanList of={of} />
      </>
    ) : null;
  }
  it('leaves it there: freezing is done where it is kept apart', async () => {
    page = await drawn(<Work id={blockId} />, store);
    page.choose('Where it stands', 'quarantine');
    act(() => [...page.root.querySelectorAll('button')].find(({ textContent }) => textContent === 'Done')?.click());
    expect(store.stepsOf(blockId)).toMatchObject([{ done: { at: '2026-10-17T10:30:00.000Z' } }]);
    expect(block().place).toBe('quarantine');
    expect(running()?.left).toBeNull();
  });
});

describe('the page of a quarantine', () => {
  beforeEach(async () => {
    page = await drawn(<Screen />, store);
    page.press('Keep it apart');
  });

  it('says until when, when to look next, and what a quiet summer is worth', () => {
    expect(page.text()).toContain('Kept apart, 365 days to go');
    expect(page.text()).toContain('Look next: 16 November 2026');
    // Materials handbook §2.3: three larvae on a three-year cycle, 0.296; eight, 0.039.
    expect(page.text()).toContain('3 larvae 30 %');
    expect(page.text()).toContain('8 larvae 4 %');
    expect(page.text()).toContain('Nobody can say that it is free of worm.');
  });
  it('keeps a look; fresh signs on the day it came are no new start', () => {
    page.tick('Fresh signs');
    page.type('Seen', 'a pinch of pale dust');
    page.press('Write the look down');
    expect(store.quarantineChecksOf(blockId)).toMatchObject([
      { on: '2026-10-17', freshSigns: true, note: 'a pinch of pale dust', paperPhotoId: null },
    ]);
    expect(page.text()).toContain('Written down.');
    expect(page.text()).not.toContain('starts again');
    expect(page.text()).toContain('Since 17 October 2026, until 17 October 2027');
  });
  it('starts again on fresh signs seen later, and runs from its first day when that is put right', () => {
    page.type('Apart since', '2026-09-20');
    expect(running()?.begunOn).toBe('2026-09-20');
    expect(page.text()).toContain('until 30 September 2027');
    page.tick('Fresh signs');
    page.press('Write the look down');
    expect(page.text()).toContain('Written down. The time starts again.');
    expect(page.text()).toContain('Started again on 17 October 2026, until 17 October 2027');
  });
  it('is not left early without a reason', () => {
    expect(page.button('Leave early').disabled).toBe(true);
    page.type('Why before its time?', 'sold for firewood, buyer told');
    page.press('Leave early');
    expect(running()?.left).toMatchObject({ early: true });
    expect(block().place).toBe('toDo');
    expect(page.text()).toContain('Left early: sold for firewood, buyer told');
  });
  it('tells of a freezer that is not cold enough', () => {
    page.type('How far below zero is the freezer?', '15');
    expect(page.text()).toContain('At −15 °C nothing is killed reliably: it needs −18 °C or colder.');
  });
  it('does not offer cold for a painted block', () => {
    page.tick('It is painted or gessoed');
    expect(page.text()).toContain('Do not freeze it: it is painted or gessoed.');
    expect(running()?.bears).toEqual(['paintedOrGessoed']);
  });
  it('writes the stages of a round down and says that one taken out at once does not count', () => {
    page.press('Sealed in its bag: begin round 1');
    expect(store.coldStagesOf(blockId)).toMatchObject([{ does: 'bag', round: 1, step: 0 }]);
    page.press('It is in the freezer now');
    expect(page.text()).toContain('Not before');
    page.press('It comes out now');
    expect(page.text()).toMatch(/Too short by \d+ h. It does not count; freeze it again./);
    expect(page.text()).toContain('Round 1: does not count');
  });
  it('prepares a calendar file and remembers what it said', () => {
    page.press('Prepare a calendar file');
    expect(page.text()).toMatch(/blockworth-reminders-2026-10-17\.ics is ready: \d+ days and hours\./);
    const reminders = store.all('reminder').value;
    expect(reminders[0]).toMatchObject({ forBlockId: blockId, start: '2026-11-16', cancelled: false });
    expect(reminders.length).toBeGreaterThan(10);
  });
});

describe('the list of what is due', () => {
  it('has the looks and the waits of the bench, each with its block, and puts all of it into one calendar file', async () => {
    const wait = { since: '2026-10-17T09:00:00Z', until: '2026-10-18T09:00:00Z', offset: '+01:00' };
    const done = { at: '2026-10-17T09:00:00Z', offset: '+01:00' };
    const step = create('step', store.newId(), { blockId, treatment: 'reglue', done, wait });
    await act(() => void store.change('a step done', [step]));
    page = await drawn(<Moving id={blockId} />, store);
    page.choose('Where it stands', 'quarantine');
    page.clear();
    page = await drawn(<QuarantineList />, store);
    const lines = [...page.root.querySelectorAll('ol li')].map((line) => line.textContent);
    expect(lines).toEqual([
      expect.stringContaining('Wait is over: Re-glue'),
      expect.stringContaining('Look at it in quarantineCloche16 November 2026'),
    ]);
    page.press('Prepare a calendar file');
    expect(store.all('reminder').value.filter(({ start }) => start === wait.until)).toMatchObject([
      { words: expect.stringContaining('Cloche: wait is over') },
    ]);
  });
});
