import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import jpeg from 'jpeg-js';
import { it } from 'vitest';
import { catalogue } from '../../src/catalogue/index.ts';
import type { ReportDocument } from '../../src/core/report.ts';
import type { FaceFiles } from '../../src/exports/pdf/paper.ts';
import { writePdf } from '../../src/exports/pdf/write-pdf.ts';
import type { BenchCase } from '../../src/reports/case.ts';
import { type ReportKindId, reportKinds } from '../../src/reports/index.ts';
import { type ReportWishes, usualWishes } from '../../src/reports/wishes.ts';
import type { TakenPhoto } from './report-cases.ts';
import { hasTool, toolsRequired } from './tools.mjs';

/** PDFs as the app writes them, and the independent readers they are read with again (qpdf, poppler). */

const face = (path: string): Uint8Array => new Uint8Array(readFileSync(join('node_modules', path)));
export const faces: FaceFiles = {
  text: face('dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf'),
  strong: face('dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf'),
  heading: face('@fontsource/alegreya/files/alegreya-latin-700-normal.woff'),
};

export const MADE = '2026-11-28T15:00:00Z';

export const reportOf = (
  kind: ReportKindId,
  facts: BenchCase,
  wishes: Partial<ReportWishes> = {},
  made = MADE,
): ReportDocument =>
  reportKinds[kind].write(
    facts,
    { ...usualWishes, ...wishes },
    {
      ...{ catalogue, made, today: made.slice(0, 10) },
      drawing: catalogue.types[facts.block.blockType ?? '']?.drawing ?? 'domeCrown',
    },
  );

/** A small JPEG with a gradient, and what a record says of it. */
export function aPicture(width: number, height: number, seed = 0): TakenPhoto & { readonly file: Uint8Array } {
  const data = Buffer.alloc(width * height * 4, 255);
  for (let at = 0; at < width * height; at++) {
    data[4 * at] = ((at % width) + seed * 40) % 256;
    data[4 * at + 1] = 120;
    data[4 * at + 2] = Math.floor(at / width) % 256;
  }
  const file = new Uint8Array(jpeg.encode({ data, width, height }, 80).data);
  return { file, width, height, bytes: file.length, sha256: createHash('sha256').update(file).digest('hex') };
}

export async function bytesOf(
  report: ReportDocument,
  pictures: readonly { readonly sha256: string; readonly file: Uint8Array }[] = [],
  onStep: (done: number) => void = () => undefined,
): Promise<Buffer> {
  const pieces = await writePdf(report, faces, {
    reduced: false,
    onStep,
    picture: async (sha256) => pictures.find((one) => one.sha256 === sha256)?.file,
    aligned: async () => undefined,
  });
  return Buffer.concat(pieces);
}

/** A test that needs these programs: skipped with a word where they are not installed, required in CI. */
export const withTools = (tools: readonly string[], name: string, test: () => Promise<void>): void => {
  const absent = toolsRequired ? [] : tools.filter((tool) => !hasTool(tool));
  if (absent.length > 0) it.skip(`${name} (not installed here: ${absent.join(', ')})`);
  else it(name, test, 60_000);
};

function run(program: string, args: readonly string[]): string {
  const { status, stdout, stderr } = spawnSync(program, args, { encoding: 'utf8', maxBuffer: 1 << 28 });
  if (status !== 0) throw new Error(`${program} ended with ${status}: ${stderr || stdout}`);
  return stdout;
}

/** What independent readers find in a PDF. */
export function readPdf(bytes: Buffer) {
  const inFile = <T>(read: (path: string, folder: string) => T): T => {
    const folder = mkdtempSync(join(tmpdir(), 'blockworth-pdf-'));
    try {
      const path = join(folder, 'report.pdf');
      writeFileSync(path, bytes);
      return read(path, folder);
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  };
  const pageTexts = (): string[] =>
    inFile((path) =>
      run('pdftotext', [path, '-'])
        .split('\f')
        .slice(0, -1)
        .map((page) => page.replace(/\s+/g, ' ')),
    );
  return {
    check: () => inFile((path) => run('qpdf', ['--check', path])),
    /** The file with nothing packed, as text. */
    unpacked: () =>
      inFile((path, folder) => {
        run('qpdf', ['--qdf', '--object-streams=disable', path, join(folder, 'plain.pdf')]);
        return readFileSync(join(folder, 'plain.pdf'), 'latin1');
      }),
    info: (...flags: string[]) => inFile((path) => run('pdfinfo', [...flags, path])),
    /** Words of every page, with the line breaks taken out. */
    pageTexts,
    text: () => pageTexts().join(' '),
    /** Lines as a reader finds them in the file's own order. */
    lines: () => inFile((path) => run('pdftotext', ['-raw', path, '-']).split(/[\n\f]/)),
    fonts: () => inFile((path) => run('pdffonts', [path]).trim().split('\n').slice(2)),
    attached: () =>
      inFile((path, folder) => {
        run('pdfdetach', ['-save', '1', '-o', join(folder, 'data.json'), path]);
        return readFileSync(join(folder, 'data.json'), 'utf8');
      }),
    /** Hashes of the pictures as they lie in the file. */
    pictures: () =>
      inFile((path, folder) => {
        run('pdfimages', ['-all', path, join(folder, 'picture')]);
        const names = readdirSync(folder).filter((name) => name.startsWith('picture'));
        return names.sort().map((name) =>
          createHash('sha256')
            .update(readFileSync(join(folder, name)))
            .digest('hex'),
        );
      }),
  };
}
