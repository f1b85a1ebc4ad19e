import { expect, it } from 'vitest';
import type { ReportDocument } from '../../src/core/report.ts';
import photographs from '../../src/exports/formats/photographs.ts';
import { id } from '../store/make.ts';
import { picture } from '../support/archive-fixture.ts';
import { textOf, unzipped } from '../support/read-zip.ts';

const [first, second] = [picture(1), picture(2)];
const item = ({ sha256, bytes }: typeof first, alt: string) => ({
  ...{ sha256, bytes: bytes.byteLength, width: 24, height: 16, caption: `${alt}, 2026-10-17`, alt },
  ...{ marks: [], scaleBar: null, notes: ['2: 42 ± 2 mm, measured in this photograph.'] },
});
const report: ReportDocument = {
  ...{
    title: 'Cloche: condition as found',
    object: 'Cloche',
    subtitle: '',
    identifier: 'LP-014-Cloche',
    lang: 'en-GB',
    paper: 'a4',
  },
  ...{ author: 'Lanthorn Playhouse wardrobe', rights: '© 2026, all rights kept', made: '2026-10-20T08:00:00Z' },
  parts: [{ kind: 'photographs', items: [item(first, 'Three-quarter'), item(second, 'Tip of finding 2')] }],
  data: {
    block: { objectNumber: 'LP-014' },
    photographs: [
      { id: id(50), sha256: first.sha256, taken: { local: '2026-10-17T11:42:09', offset: '+01:00', from: 'camera' } },
    ],
  },
};
const toolsWith = (have: readonly (typeof first)[]) => ({
  picture: async (sha256: string) => have.find((one) => one.sha256 === sha256),
  aligned: async () => undefined,
  signal: new AbortController().signal,
  onStep: () => undefined,
});

it('the photographs of a report go out as copies that say who, when, what and which block', async () => {
  const files = await unzipped(await photographs.write(report, toolsWith([first, second])));
  expect([...files.keys()]).toEqual(['1-Three-quarter.jpg', '2-Tip-of-finding-2.jpg']);
  const copy = new TextDecoder().decode(files.get('1-Three-quarter.jpg'));
  for (const said of [
    'Lanthorn Playhouse wardrobe',
    '© 2026, all rights kept',
    '2026-10-17T11:42:09+01:00',
    'LP-014',
    '42 ± 2 mm',
    id(50),
  ])
    expect(copy, said).toContain(said);
  // The object's own name, not the report's: IPTC Photo Metadata, "Artwork or Object: Title".
  expect(copy).toMatch(/AOTitle>\s*<rdf:Alt>\s*<rdf:li[^>]*>Cloche</);
  expect(copy).not.toContain('condition as found');
});

it('a photograph that is not here is left out, the others keep their number; without any there is nothing to write', async () => {
  const files = await unzipped(await photographs.write(report, toolsWith([second])));
  expect([...files.keys()]).toEqual(['2-Tip-of-finding-2.jpg']);
  expect(() => textOf(files.get('1-Three-quarter.jpg'))).toThrow();
  await expect(photographs.write({ ...report, parts: [] }, toolsWith([]))).rejects.toMatchObject({
    code: 'export-failed',
  });
});
