import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { catalogue } from '../../src/catalogue/index.ts';
import { entry } from '../../src/core/catalogue.ts';
import type { ReportDocument } from '../../src/core/report.ts';
import { figureShapes } from '../../src/drawings/figure-shapes.ts';
import { drawings } from '../../src/drawings/index.ts';
import { openPaper } from '../../src/exports/pdf/paper.ts';
import { writerSteps } from '../../src/exports/pdf/steps.ts';
import { columnWidths } from '../../src/exports/pdf/table.ts';
import { LOOKS, typeFor } from '../../src/exports/pdf/type.ts';
import { xmpOf } from '../../src/exports/pdf/xmp.ts';
import type { ReportKindId } from '../../src/reports/index.ts';
import { benchCase, CYRILLIC, GREEK, PLACE, SELLER } from '../support/report-cases.ts';
import { aPicture, bytesOf, faces, MADE, readPdf, reportOf, withTools } from '../support/written-pdf.ts';

const pictures = [aPicture(320, 240, 1), aPicture(320, 240, 2), aPicture(240, 320, 3)];
const facts = benchCase('L02', pictures);
const KINDS: readonly ReportKindId[] = ['asFound', 'beforeAfter', 'provenance'];
const written = new Map<ReportKindId, { readonly report: ReportDocument; readonly bytes: Buffer }>();
const pdf = (kind: ReportKindId) => {
  const found = written.get(kind);
  if (!found) throw new Error(`No ${kind} was written.`);
  return { ...found, read: readPdf(found.bytes) };
};

/** A document of one kind of part. */
const plain = (parts: ReportDocument['parts'], more: Partial<ReportDocument> = {}): ReportDocument => ({
  ...{ title: 'A test', subtitle: '', identifier: 'a-test', lang: 'en-GB', author: '', made: MADE, paper: 'a4' },
  ...{ parts, data: {} },
  ...more,
});

beforeAll(async () => {
  for (const kind of KINDS) {
    const report = reportOf(kind, facts);
    written.set(kind, { report, bytes: await bytesOf(report, pictures) });
  }
}, 60_000);

describe('a report as PDF', () => {
  // Reader: qpdf, which knows nothing of the writer.
  withTools(['qpdf'], 'is sound in every stream and reference', async () => {
    for (const kind of KINDS) expect(pdf(kind).read.check()).toContain('No syntax or stream encoding errors found');
  });

  // ISO 14289-1 §7 (from memory): tagged, titled, with its language; ISO 19005-3 §6: output intent, no script, not encrypted.
  withTools(
    ['qpdf', 'pdfinfo'],
    'is tagged, has title, language, bookmarks and output intent, and no script',
    async () => {
      for (const kind of KINDS) {
        const { report, read } = pdf(kind);
        expect(read.info()).toMatch(/^Tagged:\s+yes$/m);
        expect(read.info()).toContain(report.title);
        expect(read.info()).toMatch(/^JavaScript:\s+no$/m);
        expect(read.info()).toMatch(/^Encrypted:\s+no$/m);
        const bare = read.unpacked();
        expect(bare).toMatch(/\/Lang \(en-GB\)/);
        expect(bare).toMatch(/\/DisplayDocTitle true/);
        expect(bare).toMatch(/\/OutputIntents/);
        expect(bare).toMatch(/\/Outlines/);
      }
    },
  );

  // Reader: poppler. A face that is not embedded, or whole, or without its Unicode map shows as "no".
  withTools(['pdffonts'], 'embeds every face, as a subset, with its way back to Unicode', async () => {
    for (const kind of KINDS) {
      const fonts = pdf(kind).read.fonts();
      expect(fonts.length).toBeGreaterThanOrEqual(2);
      for (const line of fonts) expect(line).toMatch(/ yes yes yes /);
    }
  });

  withTools(
    ['pdftotext'],
    'has every finding’s words, and names in Greek and Cyrillic, in text that can be searched',
    async () => {
      const text = pdf('asFound').read.text();
      for (const { kind, number } of facts.findings) {
        expect(text).toContain(`${number} `);
        for (const word of (entry(catalogue.damage, kind)?.term ?? '').split(' ')) expect(text).toContain(word);
      }
      for (const word of [GREEK, CYRILLIC, 'Wren Hallowby']) expect(text).toContain(word);
    },
  );

  withTools(
    ['pdfinfo'],
    'has one title, headings without a level left out, and a description of every picture',
    async () => {
      for (const kind of KINDS) {
        const levels = [
          ...pdf(kind)
            .read.info('-struct')
            .matchAll(/^\s*(H\d)/gm),
        ].map(([, tag]) => Number(tag?.[1]));
        expect(levels.filter((level) => level === 1)).toHaveLength(1);
        expect(levels[0]).toBe(1);
        for (const [index, level] of levels.entries()) expect(level - (levels[index - 1] ?? 0)).toBeLessThanOrEqual(1);
      }
      const bare = pdf('asFound').read.unpacked();
      const figures = bare.match(/\/S \/Figure/g) ?? [];
      expect(figures.length).toBeGreaterThanOrEqual(pictures.length + 1);
      expect(bare.match(/\/Alt [(<]/g)).toHaveLength(figures.length);
    },
  );

  withTools(['pdfinfo'], 'tags tables with heads for rows and columns, and lists with their signs', async () => {
    const tree = pdf('asFound').read.info('-struct-text');
    for (const tag of ['Table', 'TR', 'TH', 'TD', 'L', 'LI', 'Lbl', 'LBody', 'Caption', 'Figure'])
      expect(tree).toMatch(new RegExp(`^\\s*${tag}\\b`, 'm'));
    expect(pdf('asFound').read.unpacked()).toMatch(/\/Scope \/Column/);
    expect(pdf('asFound').read.unpacked()).toMatch(/\/Scope \/Row/);
  });

  withTools(['pdfdetach'], 'carries its records, to be read by a machine', async () => {
    for (const kind of KINDS) {
      const { report, read } = pdf(kind);
      expect(JSON.parse(read.attached())).toEqual(JSON.parse(JSON.stringify(report.data)));
    }
  });

  // Reader: pdfimages -all writes a JPEG out as it lies in the file.
  withTools(
    ['pdfimages', 'qpdf'],
    'passes photographs on untouched, and draws the block in lines and not as a picture',
    async () => {
      const hashes = pdf('asFound').read.pictures();
      for (const { sha256 } of pictures) expect(hashes).toContain(sha256);
      // Shown in a pair and among the photographs, it lies in the file once.
      const streams = pdf('asFound')
        .read.unpacked()
        .match(/\/Subtype \/Image/g);
      expect(streams).toHaveLength(pictures.length);
      const bare = readPdf(await bytesOf(reportOf('asFound', benchCase('L02'))));
      expect(bare.pictures()).toEqual([]);
      expect(bare.info('-struct')).toMatch(/^\s*Figure/m);
    },
  );

  it('tells every step of its writing, and the last one makes the bar full', async () => {
    for (const kind of KINDS) {
      const report = reportOf(kind, facts);
      const steps: number[] = [];
      await bytesOf(report, pictures, (done) => steps.push(done));
      expect(steps).toEqual(Array.from({ length: writerSteps(report) }, (_, index) => index + 1));
    }
  }, 60_000);

  it('is the same to the byte for the same report, and another for another day', async () => {
    const again = await bytesOf(reportOf('asFound', facts), pictures);
    expect(again.equals(pdf('asFound').bytes)).toBe(true);
    const later = await bytesOf(reportOf('asFound', facts, {}, '2026-11-29T15:00:00Z'), pictures);
    expect(later.equals(pdf('asFound').bytes)).toBe(false);
  }, 60_000);

  withTools(
    ['qpdf', 'pdftotext', 'pdfdetach'],
    'says nothing of private people, their places or where a photograph was taken, unless ticked',
    async () => {
      for (const kind of KINDS) {
        const { read, bytes } = pdf(kind);
        const everything = [bytes.toString('latin1'), read.unpacked(), read.text(), read.attached()].join('\n');
        for (const secret of [SELLER, 'Odile', 'Ferncastle', PLACE, '51.17725', '2.98764'])
          expect(everything.includes(secret), `${kind}: ${secret}`).toBe(false);
      }
      const told = readPdf(await bytesOf(reportOf('provenance', facts, { privateNames: true })));
      expect(told.text()).toContain(SELLER);
      expect(told.text()).toContain(PLACE);
      expect(told.attached()).not.toContain('51.17725');
    },
  );

  withTools(
    ['pdftotext', 'pdfinfo'],
    'breaks a long table between rows and says its head again on every page',
    async () => {
      const rows = Array.from({ length: 120 }, (_, n) => [
        `row${n + 1}row`,
        'Prose that goes on for a while. '.repeat(1 + (n % 3)),
      ]);
      const table = { kind: 'table' as const, caption: 'Long', head: ['Headword', 'What'], rows, numeric: [] };
      const read = readPdf(await bytesOf(plain([{ kind: 'heading', level: 2, text: 'A long table' }, table])));
      const pages = read.pageTexts();
      expect(pages.length).toBeGreaterThan(2);
      for (const page of pages) expect(page).toContain('Headword');
      for (const [name] of rows) expect(pages.join(' ').split(name ?? '').length - 1).toBe(1);
      // Said again for the eye only: in the tree the head stands once.
      expect(read.info('-struct-text').split('Headword').length - 1).toBe(1);
    },
  );

  withTools(['pdftotext', 'pdfinfo'], 'sets a cell taller than a page over as many pages as it takes', async () => {
    const long = Array.from({ length: 4000 }, (_, n) => `word${n}`).join(' ');
    const table = { kind: 'table' as const, caption: 'Tall', head: ['A', 'B'], rows: [['x', long]], numeric: [] };
    const read = readPdf(await bytesOf(plain([table])));
    const text = read.text();
    expect(read.pageTexts().length).toBeGreaterThan(1);
    for (const n of [0, 999, 2000, 3999]) expect(text).toContain(`word${n} `.trim());
  });

  withTools(['pdftotext', 'pdfinfo'], 'never ends a page with a heading', async () => {
    // Every height of text before the heading, a line at a time, so that it meets the foot of the page somewhere.
    for (let lines = 39; lines < 45; lines++) {
      const parts: ReportDocument['parts'] = [
        { kind: 'list', items: Array.from({ length: lines }, (_, n) => `line ${n}`) },
        { kind: 'heading', level: 2, text: 'Headword' },
        { kind: 'paragraph', text: 'Follower of the heading.' },
      ];
      const read = readPdf(await bytesOf(plain(parts)));
      const pages = read.pageTexts();
      expect(
        pages.findIndex((page) => page.includes('Headword')),
        `${lines} lines`,
      ).toBe(pages.findIndex((page) => page.includes('Follower')));
    }
  });

  withTools(['pdfinfo'], 'is as large as the paper in the settings', async () => {
    const size = async (paper: 'a4' | 'letter') => readPdf(await bytesOf(plain([], { paper }))).info();
    expect(await size('a4')).toMatch(/595\.28 x 841\.89 pts \(A4\)/);
    expect(await size('letter')).toMatch(/612 x 792 pts \(letter\)/);
  });

  withTools(['pdftotext'], 'sets every hash whole on one line with its name, on either paper', async () => {
    for (const paper of ['a4', 'letter'] as const) {
      // Of all hashes the one with the broadest signs.
      const widest = pictures.map((picture) => ({ ...picture, sha256: '0'.repeat(64) }));
      const report = reportOf('asFound', { ...benchCase('L02', widest), settings: { ...facts.settings, paper } });
      const lines = readPdf(await bytesOf(report, [])).lines();
      expect(lines.filter((line) => /SHA-256 0{64}$/.test(line)).length).toBeGreaterThan(0);
      expect(lines.filter((line) => /SHA-256$/.test(line))).toEqual([]);
    }
  });

  withTools(['pdftotext'], 'says which findings the drawing has no place for', async () => {
    const damageMap = reportOf('asFound', facts).parts.find(({ kind }) => kind === 'damageMap');
    if (damageMap?.kind !== 'damageMap') throw new Error('A damage map was expected.');
    const mark = { part: null, mechanism: 'surface', grade: 2 } as const;
    const marks = [1, 2, 3].map((number) => ({ ...mark, number, zone: number === 2 ? 'tip' : 'key' }));
    const read = async (of: typeof marks) =>
      readPdf(await bytesOf(plain([{ ...damageMap, drawing: 'domeCrown', marks: of }]))).text();
    expect(await read(marks)).toContain('+2: findings 1 and 3 have no place of their own on it.');
    expect(await read(marks.slice(0, 2))).toContain('+1: finding 1 has no place of its own on it.');
    expect(await read(marks.slice(1, 2))).not.toContain('no place');
  });

  withTools(['pdftotext'], 'says where a photograph’s bytes are not here, and which signs no face has', async () => {
    const broken = pictures.map(({ sha256 }, index) => ({ sha256, file: Uint8Array.of(0xff, 0xd8, index) }));
    for (const here of [[], broken]) {
      const read = readPdf(await bytesOf(reportOf('asFound', facts), here));
      expect(read.text()).toContain('not on the device that wrote the report');
    }
    const strange = readPdf(await bytesOf(plain([{ kind: 'paragraph', text: 'Hut 帽子 ready' }])));
    expect(strange.text()).toContain('Hut \uFFFD\uFFFD ready');
    expect(strange.text()).toContain('Some signs are in none of the faces');
  });
});

describe('drawings on paper', () => {
  it('use only path commands that pdfkit draws as SVG 2 §9.3 has them: its quadratic curves are not', () => {
    const marks = [{ number: 1, zone: 'whole' as const, mechanism: 'repair', grade: 4 as const }];
    for (const drawing of Object.values(drawings))
      for (const shape of figureShapes(drawing, marks, { width: 240, across: true }).shapes)
        if (shape.kind === 'path') expect(shape.d).toMatch(/^[MLHVCAZmlhvcaz0-9\s.,e-]*$/);
  });
});

describe('text cut into lines', () => {
  it('loses no sign and goes over no margin, whatever was typed', () => {
    const type = typeFor(openPaper(plain([]), faces));
    const word = fc.stringMatching(/^[a-zA-Z0-9–—/ .,½§%-]{0,40}$/);
    fc.assert(
      fc.property(word, fc.integer({ min: 30, max: 400 }), (text, width) => {
        const { lines, look } = type.set(text, LOOKS.plain, width);
        expect(lines.join('').replace(/\u00A0/g, ' ')).toBe(text);
        for (const line of lines) expect(type.width(line.trimEnd(), look)).toBeLessThanOrEqual(width + 0.01);
      }),
      { numRuns: 300 },
    );
  });

  it('keeps a number with its unit', () => {
    const type = typeFor(openPaper(plain([]), faces));
    for (let width = 40; width < 200; width += 4) {
      const { lines } = type.set('a gap of 40 mm and then 2½ h of work', LOOKS.plain, width);
      expect(lines.some((line) => /(40|2½)\s*$/.test(line) && !/\u00A0$/.test(line))).toBe(false);
    }
  });
});

describe('columns of a table', () => {
  it('fill the width together, none narrower than its longest word where there is room for all of them', () => {
    const reach = fc.tuple(fc.integer({ min: 1, max: 80 }), fc.integer({ min: 0, max: 900 }));
    fc.assert(
      fc.property(fc.array(reach, { minLength: 1, maxLength: 6 }), (columns) => {
        const reaches = columns.map(([least, more]) => ({ least, whole: least + more }));
        const widths = columnWidths(reaches, 482);
        const gaps = 11 * (columns.length - 1);
        expect(widths.reduce((sum, width) => sum + width, 0) + gaps).toBeCloseTo(482, 6);
        if (reaches.reduce((sum, { least }) => sum + least, 0) + gaps <= 482)
          for (const [index, width] of widths.entries())
            expect(width).toBeGreaterThanOrEqual((reaches[index]?.least ?? 0) - 1e-9);
      }),
    );
  });
});

describe('what the document says of itself', () => {
  it('spells out the signs of XML, and leaves out what XML cannot say', () => {
    const xml = xmpOf({
      Title: `<b>&"tall"\u0001`,
      Producer: 'x',
      Creator: 'y',
      Keywords: '',
      CreationDate: new Date(0),
    });
    expect(xml).toContain('&#60;b&#62;&#38;&#34;tall&#34;<');
    expect(xml).toContain('<xmp:CreateDate>1970-01-01T00:00:00Z</xmp:CreateDate>');
  });
});
