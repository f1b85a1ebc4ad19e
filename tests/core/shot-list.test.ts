import { describe, expect, it } from 'vitest';
import { catalogue } from '../../src/catalogue/index.ts';
import type { Stage } from '../../src/core/records.ts';
import { nextView, shotList, usualStage } from '../../src/core/shot-list.ts';
import { aPhoto, id } from '../store/make.ts';

const photo = (n: number, view: string, stage: Stage, findingId: string | null = null) =>
  aPhoto({ id: id(n), view, stage, findingId });
const taken = (photos: ReturnType<typeof aPhoto>[], stage: Stage, findingId: string | null = null) =>
  shotList(catalogue.views, photos, stage, findingId)
    .filter((shot) => shot.taken > 0)
    .map(({ view }) => view);

/** The sixteen views of the trade handbook, §4.2, under the app's names. */
const HANDBOOK =
  'top front right back left under threeQuarter marks damageContext damageClose rake1 rake2 uv partsLaid assembled paper';

describe('the shot list of a block', () => {
  it('has every standard view of the handbook, none done on a block nobody photographed', () => {
    const shots = shotList(catalogue.views, [], 'before', null);
    expect(shots.map(({ view }) => view).sort()).toEqual(HANDBOOK.split(' ').sort());
    expect(shots.filter((shot) => shot.taken > 0)).toEqual([]);
  });

  it('ticks a view for the stage of the work it was taken at, and no other', () => {
    const photos = [photo(10, 'top', 'before'), photo(11, 'front', 'during')];
    expect(taken(photos, 'before')).toEqual(['top']);
    expect(taken(photos, 'during')).toEqual(['front']);
    expect(taken(photos, 'after')).toEqual([]);
  });

  it('of a finding ticks its own photographs only, and the block’s list leaves those out', () => {
    const photos = [photo(10, 'damageClose', 'before', id(3)), photo(11, 'top', 'before')];
    expect(taken(photos, 'before', id(3))).toEqual(['damageClose']);
    expect(taken(photos, 'before', id(4))).toEqual([]);
    expect(taken(photos, 'before')).toEqual(['top']);
  });

  it('lends the newest before photograph as a ghost, to an after and to nothing else', () => {
    const photos = [photo(10, 'top', 'before'), photo(11, 'top', 'before'), photo(12, 'top', 'after')];
    const ghost = (stage: Stage, view = 'top') =>
      shotList(catalogue.views, photos, stage, null).find((shot) => shot.view === view)?.ghost?.id;
    expect(ghost('after')).toBe(id(11));
    expect(ghost('before')).toBeUndefined();
    expect(ghost('during')).toBeUndefined();
    expect(ghost('after', 'front')).toBeUndefined();
  });
});

describe('the next view', () => {
  const next = (photos: ReturnType<typeof aPhoto>[], stage: Stage, inHand?: string) =>
    nextView(shotList(catalogue.views, photos, stage, null), inHand);

  it('before the work is the first one missing', () => {
    const [first, second] = Object.keys(catalogue.views) as [string, string];
    expect(next([], 'before')).toBe(first);
    expect(next([photo(10, first, 'before')], 'before')).toBe(second);
  });

  it('after the work is one that has a before to compare with, as long as there is one', () => {
    const photos = [photo(10, 'back', 'before')];
    expect(next(photos, 'after')).toBe('back');
    expect(next([...photos, photo(11, 'back', 'after')], 'after')).toBe(Object.keys(catalogue.views)[0]);
  });

  it('stays where it is when all are taken', () => {
    const all = Object.keys(catalogue.views).map((view, i) => photo(10 + i, view, 'before'));
    expect(next(all, 'before', 'marks')).toBe('marks');
  });
});

it('takes a photograph of a block on the bench for one during the work, of a ready one for an after', () => {
  expect(
    ['lookingAt', 'quarantine', 'toDo', 'onTheBench', 'ready', 'letGo'].map((place) => usualStage(place as never)),
  ).toEqual(['before', 'before', 'before', 'during', 'after', 'after']);
});
