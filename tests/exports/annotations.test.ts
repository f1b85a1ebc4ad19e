import { writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { catalogue } from '../../src/catalogue/index.ts';
import type { Photo, PhotoMark, RecordOf, RecordType } from '../../src/core/records.ts';
import { annotationPage } from '../../src/exports/annotations.ts';
import { id } from '../store/make.ts';
import { pageFaults } from '../support/annotation-faults.ts';
import { archiveOf, smallShelf } from '../support/archive-fixture.ts';
import { bagIn, inFolder, run, textOf } from '../support/read-zip.ts';
import { hasTool, toolsRequired } from '../support/tools.mjs';

const shelf = smallShelf();
const of = <T extends RecordType>(type: T) =>
  shelf.records.filter((record): record is RecordOf<T> => record.type === type && record.deleted === null);
const photo = of('photo').find((one) => one.id === id(50)) as Photo;
const page = (marks: readonly PhotoMark[] = of('photoMark')) =>
  annotationPage({ photo, marks, findings: of('finding'), units: 'mm', source: '../photographs/a.jpg' }, catalogue) as {
    items: { id: string; body?: { value: string }; target: { selector: { type: string; value: string } } }[];
  };
const itemOf = (mark: string) => page().items.find((item) => item.id === `urn:uuid:${mark}`);

describe('marks on a photograph', () => {
  it('are annotations that meet every requirement of the Web Annotation Data Model', () => {
    expect(page().items).toHaveLength(4);
    expect(pageFaults(JSON.parse(JSON.stringify(page())))).toEqual([]);
  });

  it('are checked by something that sees a missing source, a wrong box and a lost id', () => {
    const changed = (change: (item: Record<string, object>) => void): string[] => {
      const copy = JSON.parse(JSON.stringify(page()));
      change(copy.items[1]);
      return pageFaults(copy);
    };
    expect(changed((item) => Reflect.deleteProperty(item.target ?? {}, 'source'))).toHaveLength(1);
    expect(
      changed((item) => Object.assign((item.target as { selector: object }).selector, { value: 'xywh=1,2' })),
    ).toHaveLength(1);
    expect(changed((item) => Reflect.deleteProperty(item, 'id'))).not.toEqual([]);
  });

  it('say where a rectangle lies in per cent, whichever corner was drawn first', () => {
    // Drawn from (0.6, 0.9) to (0.25, 0.5).
    expect(itemOf(id(81))?.target.selector).toMatchObject({
      type: 'FragmentSelector',
      value: 'xywh=percent:25,50,35,40',
    });
  });

  it('draw any other shape in the photograph’s own pixels', () => {
    // 24 × 16 px: from (0.2, 0.2) to (0.4, 0.6) is centred on (7.2, 6.4), half axes 2.4 and 3.2.
    expect(itemOf(id(82))?.target.selector.value).toContain('<ellipse cx="7.2" cy="6.4" rx="2.4" ry="3.2"/>');
    expect(itemOf(id(80))?.target.selector.value).toContain('<polyline points="2.4,3.2 7.2,4 12,6.4"');
    expect(itemOf(id(83))?.target.selector.value).toContain('<circle cx="12" cy="8"');
  });

  it('carry number, kind and words of what they mark', () => {
    expect(itemOf(id(80))?.body?.value).toBe(`Finding 1: ${catalogue.damage.check?.term}. runs & widens <here>`);
    expect(itemOf(id(83))?.body).toBeUndefined();
  });

  it('point to the photograph beside them in the archive', async () => {
    const [volume] = await archiveOf(shelf);
    const { files } = await bagIn(volume as File);
    const stored = JSON.parse(textOf(files.get(`data/marks/${id(50)}.json`)));
    expect(pageFaults(stored)).toEqual([]);
    const { source } = stored.items[0].target;
    const path = new URL(source.id, `https://bag.invalid/data/marks/${id(50)}.json`).pathname.slice(1);
    expect(files.has(path)).toBe(true);
  });

  it.skipIf(!toolsRequired && !hasTool('python3'))('are well-formed XML where they are drawn', () =>
    inFolder((place) => {
      const drawn = page().items.flatMap(({ target: { selector } }) =>
        selector.type === 'SvgSelector' ? selector.value : [],
      );
      const names = drawn.map((svg, i) => {
        writeFileSync(`${place}/${i}.svg`, svg);
        return `${i}.svg`;
      });
      expect(names).toHaveLength(3);
      run('python3', ['-c', 'import sys, xml.dom.minidom as m; [m.parse(f) for f in sys.argv[1:]]', ...names], place);
    }),
  );
});
