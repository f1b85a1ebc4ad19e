import { type Catalogue, entry } from '../../core/catalogue.ts';
import type { HatBlock } from '../../core/records.ts';
import { escaped } from '../html.ts';
import { REPORT_CSS } from '../report-css.ts';

export interface ListedReport {
  readonly block: HatBlock;
  /** From the folder of the reports. */
  readonly link: string;
  readonly volume: number;
}

/** A page that leads to the reports by number and name, since their files are named by ids. */
export function contentsPage(reports: readonly ListedReport[], made: string, catalogue: Catalogue): string {
  const volumes = new Set(reports.map(({ volume }) => volume)).size;
  const rows = [...reports]
    .sort((a, b) => a.block.objectNumber.localeCompare(b.block.objectNumber, 'en', { numeric: true }))
    .map(({ block, link, volume }) => {
      const type = entry(catalogue.types, block.blockType)?.term ?? '';
      const name = block.name.trim() || type || 'Hat block';
      const cells = [escaped(block.objectNumber), `<a href="${escaped(link)}">${escaped(name)}</a>`, escaped(type)];
      return `<tr>${[...cells, ...(volumes > 1 ? [String(volume)] : [])].map((cell) => `<td>${cell}</td>`).join('')}</tr>`;
    });
  const head = ['Number', 'Report', 'Type', ...(volumes > 1 ? ['Volume'] : [])];
  return (
    '<!doctype html><html lang="en-GB"><head><meta charset="utf-8">' +
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">` +
    '<meta name="viewport" content="width=device-width, initial-scale=1">' +
    `<title>Hat blocks: reports</title><style>${REPORT_CSS}</style></head><body>` +
    `<header><h1>Hat blocks: reports</h1><p>Written ${escaped(made.slice(0, 10))}</p></header><main>` +
    (rows.length > 0
      ? `<table><caption>One page for each hat block</caption><thead><tr>${head.map((name) => `<th scope="col">${name}</th>`).join('')}</tr></thead><tbody>${rows.join('')}</tbody></table>`
      : '<p>No hat block in this archive has been looked at, so there are no reports.</p>') +
    '</main></body></html>\n'
  );
}
