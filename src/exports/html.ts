import type { ReportDocument, ReportPair, ReportPart, ReportPhoto } from '../core/report.ts';
import { figureShapes } from '../drawings/figure-shapes.ts';
import { figureSvg, keySvg } from '../drawings/figure-svg.ts';
import { drawings } from '../drawings/index.ts';
import { photoOverlay } from '../drawings/photo-overlay.ts';
import { reportMarks } from '../drawings/report-marks.ts';
import { mapCaption } from '../text/map-caption.ts';
import { REPORT_CSS } from './report-css.ts';
import type { ReportFormat, WriteTools } from './report-file.ts';

/** Text for HTML: also safe inside a double-quoted attribute. */
export const escaped = (text: string): string => text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);

const cell = (tag: 'td' | 'th', text: string, numeric: boolean, attributes = ''): string =>
  `<${tag}${attributes}${numeric ? ' class="n"' : ''}>${escaped(text)}</${tag}>`;

/** Columns from which a table is set as blocks on a phone, each cell with its head before it. */
const MANY_COLUMNS = 4;

/** Rows up to which a table is not torn apart between two sheets. */
const KEPT_WHOLE = 8;

function table({ caption, head, rows, foot = [], numeric }: ReportPart & { kind: 'table' }): string {
  const line = (row: readonly string[]): string => {
    const cells = row.map((text, index) =>
      index === 0
        ? cell('th', text, numeric.includes(index), ' scope="row"')
        : cell('td', text, numeric.includes(index), ` data-head="${escaped(head[index] ?? '')}"`),
    );
    return `<tr>${cells.join('')}</tr>`;
  };
  const looks = [
    ...(rows.length + foot.length <= KEPT_WHOLE ? ['short'] : []),
    ...(head.length >= MANY_COLUMNS ? ['many'] : []),
  ];
  return (
    `<table${looks.length > 0 ? ` class="${looks.join(' ')}"` : ''}><caption>${escaped(caption)}</caption><thead><tr>` +
    `${head.map((text, index) => cell('th', text, numeric.includes(index), ' scope="col"')).join('')}</tr></thead>` +
    `<tbody>${rows.map(line).join('')}</tbody>${foot.length > 0 ? `<tfoot>${foot.map(line).join('')}</tfoot>` : ''}</table>`
  );
}

async function base64(bytes: ArrayBuffer): Promise<string> {
  // In pieces: one call with a whole photograph as arguments would overflow the stack.
  const view = new Uint8Array(bytes);
  let text = '';
  for (let at = 0; at < view.length; at += 0x8000) text += String.fromCharCode(...view.subarray(at, at + 0x8000));
  return btoa(text);
}

const dataUrl = async (bytes: ArrayBuffer): Promise<string> => `data:image/jpeg;base64,${await base64(bytes)}`;

/** Where the page takes a picture from: a file beside it, or its own text; undefined when it is not to be had. */
async function sourceOf(sha256: string, { linkTo, picture }: WriteTools): Promise<string | undefined> {
  const link = linkTo?.(sha256);
  if (link !== undefined) return escaped(link);
  const stored = await picture(sha256);
  return stored && dataUrl(stored.bytes);
}

/** Marks and scale bar over a photograph, as wide and as high as it is shown; none when there is nothing to draw. */
function overlay(photo: ReportPhoto): string {
  const shapes = photoOverlay(photo);
  if (shapes.length === 0) return '';
  const drawn = shapes.map(({ tag, attributes, text = '' }) => {
    const written = Object.entries(attributes).map(([name, value]) => ` ${name}="${escaped(String(value))}"`);
    return `<${tag}${written.join('')}>${escaped(text)}</${tag}>`;
  });
  return `<svg viewBox="0 0 ${photo.width} ${photo.height}" aria-hidden="true">${drawn.join('')}</svg>`;
}

type Progress = { done: number; readonly of: number };

async function photographs(
  { items }: ReportPart & { kind: 'photographs' },
  tools: WriteTools,
  progress: Progress,
): Promise<string> {
  const figures: string[] = [];
  for (const item of items) {
    tools.signal.throwIfAborted();
    const source = await sourceOf(item.sha256, tools);
    const picture = source
      ? `<div class="shot"><img src="${source}" width="${item.width}" height="${item.height}" alt="${escaped(item.alt)}">${overlay(item)}</div>`
      : MISSING;
    figures.push(
      `<figure>${picture}<figcaption>${[item.caption, ...item.notes].map(escaped).join('<br>')}<br><span class="hash">SHA-256 ${item.sha256}</span></figcaption></figure>`,
    );
    progress.done += 1;
    tools.onStep(progress.done, progress.of);
  }
  return `<div class="photographs">${figures.join('')}</div>`;
}

const MISSING =
  '<p class="missing">The bytes of this photograph are not on the device that wrote the report, or are damaged.</p>';

/** Both pictures of a pair side by side: cut to what both show where they were lined up, else whole. */
async function pair(item: ReportPair, tools: WriteTools, progress: Progress): Promise<string> {
  tools.signal.throwIfAborted();
  const { before, after, h } = item;
  const crops = h && (await tools.aligned({ ...item, h }));
  const sides = [
    { photo: before, source: crops ? await dataUrl(crops.before) : await sourceOf(before.sha256, tools) },
    { photo: after, source: crops ? await dataUrl(crops.after) : await sourceOf(after.sha256, tools) },
  ];
  const figures: string[] = [];
  for (const { photo, source } of sides) {
    const { width, height } = crops ?? photo;
    // The bar of a lined-up pair is laid out for what both show, and would lie on the whole pictures.
    const bar = h && !crops ? '' : overlay({ ...photo, width, height });
    const picture = source
      ? `<div class="shot"><img src="${source}" width="${width}" height="${height}" alt="${escaped(photo.alt)}">${bar}</div>`
      : MISSING;
    figures.push(
      `<div>${picture}<p>${escaped(photo.caption)}<br><span class="hash">SHA-256 ${photo.sha256}</span></p></div>`,
    );
  }
  progress.done += 1;
  tools.onStep(progress.done, progress.of);
  return `<figure class="pair"><div>${figures.join('')}</div><figcaption>${escaped(item.caption)}</figcaption></figure>`;
}

const picturesIn = (item: ReportPart): number =>
  item.kind === 'photographs' ? item.items.length : item.kind === 'pair' ? 1 : 0;

async function part(item: ReportPart, tools: WriteTools, progress: Progress): Promise<string> {
  switch (item.kind) {
    case 'heading':
      return `<h${item.level}>${escaped(item.text)}</h${item.level}>`;
    case 'paragraph':
      return `<p${item.tone ? ` class="${item.tone}"` : ''}>${escaped(item.text)}</p>`;
    case 'facts':
      return `<dl>${item.rows.map(([term, value]) => `<div><dt>${escaped(term)}</dt><dd>${escaped(value)}</dd></div>`).join('')}</dl>`;
    case 'list': {
      const tag = item.ordered ? 'ol' : 'ul';
      return `<${tag}${item.tone ? ` class="${item.tone}"` : ''}>${item.items.map((text) => `<li>${escaped(text)}</li>`).join('')}</${tag}>`;
    }
    case 'table':
      return table(item);
    case 'damageMap': {
      const known: Readonly<Record<string, (typeof drawings)[keyof typeof drawings]>> = drawings;
      const drawing = (Object.hasOwn(known, item.drawing) ? known[item.drawing] : undefined) ?? drawings.domeCrown;
      const marks = reportMarks(item.marks);
      // Side by side on paper and at a desk, one under the other on a phone; only one of them is ever there to be read.
      const drawn = [true, false].map((across) => {
        const svg = figureSvg(drawing, marks, { width: 240, title: item.alt, across });
        return `<div class="${across ? 'across' : 'stacked'}">${svg}</div>`;
      });
      const caption = mapCaption(item.caption, figureShapes(drawing, marks, { width: 240 }).left);
      const key = item.key.map(({ mechanism, term }) => `<li>${keySvg(mechanism)} ${escaped(term)}</li>`);
      return `<figure class="map">${drawn.join('')}<figcaption>${escaped(caption)}${key.length > 0 ? `<ul class="key">${key.join('')}</ul>` : ''}</figcaption></figure>`;
    }
    case 'photographs':
      return photographs(item, tools, progress);
    case 'pair':
      return pair(item, tools, progress);
  }
}

/** JSON that cannot end the element it stands in. */
const embedded = (data: unknown): string => JSON.stringify(data).replace(/</g, '\\u003c');

/**
 * One HTML file that needs nothing else, now or in fifty years: pictures and drawings inside (or in files beside it, with
 * `linkTo`), no script, no link out, its own content policy; prints on A4 or Letter. The records stand in it once more
 * as JSON for a machine.
 */
export async function writeHtml(report: ReportDocument, tools: WriteTools): Promise<Blob> {
  const of = report.parts.reduce((sum, item) => sum + picturesIn(item), 0);
  const progress: Progress = { done: 0, of };
  const body: string[] = [];
  for (const item of report.parts) body.push(await part(item, tools, progress));
  tools.signal.throwIfAborted();
  const made = report.made.slice(0, 16).replace('T', ' ');
  return new Blob(
    [
      `<!doctype html><html lang="${escaped(report.lang)}"><head><meta charset="utf-8">`,
      `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; img-src data:${tools.linkTo ? " 'self' file:" : ''}; style-src 'unsafe-inline'">`,
      '<meta name="viewport" content="width=device-width, initial-scale=1"><meta name="generator" content="Blockworth">',
      `<title>${escaped(report.title)}</title><style>@page{size:${report.paper === 'a4' ? 'A4' : 'letter'};margin:18mm}${REPORT_CSS}</style></head><body>`,
      `<header><h1>${escaped(report.title)}</h1><p>${escaped([report.subtitle, `written ${made} UTC`, report.author && `by ${report.author}`].filter(Boolean).join(' · '))}</p></header>`,
      `<main>${body.join('\n')}</main>`,
      '<footer>Written by Blockworth on the device of the one who looked. The hash under each photograph proves later that it is the same.</footer>',
      `<script type="application/json" id="survey">${embedded(report.data)}</script></body></html>`,
    ],
    { type: 'text/html' },
  );
}

export default {
  label: 'One page for any browser',
  extension: 'html',
  mimeType: 'text/html',
  write: writeHtml,
} satisfies ReportFormat;
