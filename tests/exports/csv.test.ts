import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { catalogue } from '../../src/catalogue/index.ts';
import type { ArchiveIndex } from '../../src/core/archive-layout.ts';
import { blank } from '../../src/core/blank.ts';
import { RECORDS, type RecordType } from '../../src/core/records.ts';
import { readme } from '../../src/exports/archive/readme.ts';
import { type Cell, csv, guarded, unguarded } from '../../src/exports/csv.ts';
import { csvTables } from '../../src/exports/csv-tables.ts';
import { id, make } from '../store/make.ts';
import { smallShelf } from '../support/archive-fixture.ts';

/** Rows as an independent reader sees them; any complaint of its fails. */
function parsed(text: string): string[][] {
  // The byte order mark is for spreadsheets; what reads bytes takes it off as it decodes.
  const { data, errors } = Papa.parse<string[]>(new TextDecoder().decode(new TextEncoder().encode(text)), {
    delimiter: ',',
    newline: '\r\n',
  });
  expect(errors).toEqual([]);
  expect(data.pop()).toEqual(['']);
  return data;
}

const awkward = fc.oneof(
  fc.string({ unit: 'grapheme' }),
  fc.string(),
  fc.constantFrom(
    'a,b',
    'say "ah"',
    'two\nlines',
    'two\r\nlines',
    '=1+1',
    '+44 20',
    '-',
    '@x',
    '\tx',
    '\rx',
    "'=1",
    ' x ',
  ),
);

// Source: RFC 4180, section 2; the guard: OWASP, CSV injection.
describe('a table', () => {
  it('is read back cell for cell by another reader, whatever is in it', () => {
    const rows = fc.array(fc.tuple(awkward, awkward, awkward), { maxLength: 8 });
    fc.assert(
      fc.property(rows, (of) => {
        const [head, ...body] = parsed(csv(['a', 'b', 'c'], of));
        expect(head).toEqual(['a', 'b', 'c']);
        expect(body.map((row) => row.map(unguarded))).toEqual(of);
      }),
      { numRuns: 300 },
    );
  });

  it('begins no cell of text with a sign a spreadsheet runs', () => {
    fc.assert(
      fc.property(awkward, (text) => {
        const [, [cell = ''] = []] = parsed(csv(['a'], [[text]]));
        expect(/^[=+\-@\t\r\n]/.test(cell)).toBe(false);
        expect(unguarded(guarded(text))).toBe(text);
      }),
    );
    expect(csv(['a'], [['=HYPERLINK("x")']])).toContain(`"'=HYPERLINK(""x"")"`);
  });

  it('leaves numbers alone, also below zero, and says yes and no', () => {
    const row: Cell[] = [-2.5, 0, true, false, null, Number.NaN];
    expect(parsed(csv(['a', 'b', 'c', 'd', 'e', 'f'], [row]))[1]).toEqual(['-2.5', '0', 'yes', 'no', '', '']);
  });

  it('ends every line with CRLF, begins with a byte order mark, and refuses a row that does not fit', () => {
    const text = csv(['a', 'b'], [['1', 'x']]);
    expect(text).toBe('\ufeffa,b\r\n1,x\r\n');
    expect(() => csv(['a'], [['1', '2']])).toThrow('2 cells');
  });
});

describe('the tables of a shelf', () => {
  const tables = new Map(csvTables(smallShelf().records, catalogue).map(({ name, text }) => [name, parsed(text)]));
  const column = (table: string, head: string): string[] => {
    const [heads = [], ...rows] = tables.get(table) ?? [];
    return rows.map((row) => row[heads.indexOf(head)] ?? 'no such column');
  };

  it('have as many fields in every line as the header names, and no header twice', () => {
    for (const [name, [head = [], ...rows]] of tables) {
      expect(new Set(head).size, name).toBe(head.length);
      for (const row of rows) expect(row.length, name).toBe(head.length);
    }
  });

  it('say money as people write it, lengths as plain numbers, and terms in words', () => {
    expect(column('blocks', 'asked')).toEqual(['42.5', '']);
    expect(column('blocks', 'new')).toEqual(['180', '']);
    expect(column('blocks', 'made (EDTF)')).toEqual(['1940~/1949~', '']);
    expect(column('measures', 'value')).toEqual(['572', '118.5']);
    expect(column('findings', 'damage')).toEqual([catalogue.damage.check?.term, catalogue.damage.flightHoles?.term]);
    expect(column('marks', 'text as seen')).toContain('57 +½');
  });

  it('leave removed records out and defuse what was typed', () => {
    expect(column('findings', 'number')).toEqual(['1', '2']);
    expect(column('blocks', 'note')[0]).toMatch(/^'=HYPERLINK/);
  });

  it('hold every type of record but those the readme names', () => {
    const only = ['alignment', 'reminder', 'settings'];
    for (const type of Object.keys(RECORDS) as RecordType[]) {
      // A list of nothing but this one: where it has a line, it is in a table.
      const filled = csvTables([make(type, { id: id(7) })], catalogue).filter(({ text }) => text.includes(id(7)));
      expect(filled.length > 0, type).toBe(!only.includes(type));
    }
    const index = { made: '', scope: { kind: 'shelf' }, isWhole: true, volume: 1, volumes: 1, counts: {} };
    const words = readme({ ...index, photographs: [], originals: [] } as unknown as ArchiveIndex, []);
    expect(words.replace(/\s+/g, ' ')).toContain(
      "In no table, only among the records: how photographs before and after were lined up, what was last written to a calendar, the owner's settings.",
    );
  });

  it('say what was paid with what came on top, and which job lot a block goes with', () => {
    const some = new Map(
      csvTables(
        [
          make('lot', { id: id(1), title: 'Box of ten', priceAsked: 6000, disposal: 500, notBought: 'outbid' }),
          make('block', { id: id(2), name: 'Cloche', lotId: id(1), estimateLow: 3000, estimateHigh: 5000 }),
          make('offer', { id: id(3), blockId: id(1), what: 'paid', amount: 5200, fees: 1523 }),
          make('sale', {
            id: id(4),
            terms: {
              ...blank.sale.terms,
              premium: [
                { upTo: 50_000, rate: 0.24 },
                { upTo: null, rate: 0.2 },
              ],
            },
          }),
        ],
        catalogue,
      ).map(({ name, text }) => [name, parsed(text)]),
    );
    const row = (table: string): Record<string, string> => {
      const [heads = [], cells = []] = some.get(table) ?? [];
      return Object.fromEntries(heads.map((head, n) => [head, cells[n] ?? '']));
    };
    expect(row('offers')).toMatchObject({ block: 'Box of ten', amount: '52', 'fees on top': '15.23' });
    expect(row('lots')).toMatchObject({
      title: 'Box of ten',
      asked: '60',
      'cost of disposal': '5',
      'not bought': 'Outbid',
    });
    expect(row('blocks')).toMatchObject({ lot: 'Box of ten', 'estimate from': '30', 'estimate to': '50' });
    expect(row('sales').premium).toBe('24 % up to 500; 20 %');
  });
});
