import { Window } from 'happy-dom';
import { describe, expect, it } from 'vitest';
import type { ReportDocument } from '../../src/core/report.ts';
import { writeHtml } from '../../src/exports/html.ts';
import type { WriteTools } from '../../src/exports/report-file.ts';
import { benchCase } from '../support/report-cases.ts';
import { aPicture, reportOf } from '../support/written-pdf.ts';

const pictures = [aPicture(320, 240, 1), aPicture(320, 240, 2), aPicture(240, 320, 3)];
const report = reportOf('asFound', benchCase('L02', pictures));

const tools = (more: Partial<WriteTools> = {}): WriteTools => ({
  picture: async (sha256) => {
    const found = pictures.find((one) => one.sha256 === sha256);
    return found && { bytes: new Uint8Array(found.file).buffer, mime: 'image/jpeg' };
  },
  aligned: async () => undefined,
  signal: new AbortController().signal,
  onStep: () => undefined,
  ...more,
});

/** The page as a browser reads it. */
async function read(of: ReportDocument, more: Partial<WriteTools> = {}) {
  const text = await (await writeHtml(of, tools(more))).text();
  const window = new Window();
  window.document.write(text);
  return { text, document: window.document };
}

describe('a report as one page for any browser', () => {
  // HTML 5, 4.12.1: a script of another type than JavaScript is data and never run.
  it('needs nothing else and runs nothing: pictures inside, records as data, its own content policy', async () => {
    const { document } = await read(report);
    const scripts = [...document.querySelectorAll('script')].map((script) => script.getAttribute('type'));
    expect(scripts).toEqual(['application/json']);
    expect(JSON.parse(document.querySelector('#survey')?.textContent ?? '')).toEqual(
      JSON.parse(JSON.stringify(report.data)),
    );
    const policy = document.querySelector('meta[http-equiv="Content-Security-Policy"]')?.getAttribute('content');
    expect(policy).toContain("default-src 'none'");
    const sources = [...document.querySelectorAll('img')].map((image) => image.getAttribute('src'));
    expect(sources.length).toBeGreaterThanOrEqual(pictures.length);
    for (const source of sources) expect(source).toMatch(/^data:image\/jpeg;base64,/);
    expect(document.querySelectorAll('link, iframe, object, [href], [onclick], [onload], [onerror]')).toHaveLength(0);
  });

  it('holds what somebody typed as text, whatever it looks like', async () => {
    const typed = '</script><img src=x onerror=alert(1)> & "so"';
    const { document } = await read({ ...report, data: { typed }, parts: [{ kind: 'paragraph', text: typed }] });
    expect(document.querySelector('main p')?.textContent).toBe(typed);
    expect(document.querySelectorAll('img, script:not([type])')).toHaveLength(0);
    expect(JSON.parse(document.querySelector('#survey')?.textContent ?? '')).toEqual({ typed });
  });

  it('names in every cell of a broad table the head it stands under, for a phone, where the head is not above it', async () => {
    const { document } = await read(report);
    const broad = [...document.querySelectorAll('table')].filter(
      (table) => table.querySelectorAll('thead th').length > 3,
    );
    expect(broad.length).toBeGreaterThan(0);
    for (const table of broad) {
      expect(table.classList.contains('many')).toBe(true);
      const head = [...table.querySelectorAll('thead th')].map(({ textContent }) => textContent);
      for (const row of table.querySelectorAll('tbody tr'))
        expect([...row.querySelectorAll('td')].map((cell) => cell.getAttribute('data-head'))).toEqual(head.slice(1));
    }
  });

  it('draws the map of the findings side by side and one under the other, and says what found no place on it', async () => {
    const map = report.parts.find(({ kind }) => kind === 'damageMap');
    if (map?.kind !== 'damageMap') throw new Error('A damage map was expected.');
    const marks = [{ number: 7, zone: 'key', part: null, mechanism: 'assembly' as const, grade: 2 as const }];
    const { document } = await read({ ...report, parts: [{ ...map, drawing: 'domeCrown', marks }] });
    const [across, stacked] = ['.across', '.stacked'].map((look) => {
      const [, , width, height] = (document.querySelector(`${look} svg`)?.getAttribute('viewBox') ?? '').split(' ');
      return Number(width) / Number(height);
    });
    expect(across).toBeGreaterThan(1.3);
    expect(stacked).toBeLessThan(1);
    // A key belongs to blocks of several parts; a dome has none to draw it on.
    expect(document.querySelector('figcaption')?.textContent).toContain('+1: finding 7 has no place of its own on it.');
  });

  it('stands there without a photograph whose bytes are not here, and says so in its place', async () => {
    const { document } = await read(report, { picture: async () => undefined });
    expect(document.querySelectorAll('img')).toHaveLength(0);
    expect(document.querySelectorAll('.missing').length).toBeGreaterThanOrEqual(pictures.length);
    expect(document.querySelector('.photographs')?.textContent).toContain(pictures[0]?.sha256);
  });

  it('is not written once it is called off', async () => {
    const control = new AbortController();
    control.abort(new Error('enough'));
    await expect(writeHtml(report, tools({ signal: control.signal }))).rejects.toThrow('enough');
  });
});
