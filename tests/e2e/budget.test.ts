import { readdir, readFile } from 'node:fs/promises';
import { join, posix, relative } from 'node:path';
import { gzipSync } from 'node:zlib';
import { describe, expect, inject, it } from 'vitest';

const kB = (bytes: number): string => `${(bytes / 1000).toFixed(1)} kB`;
const packed = async (name: string): Promise<number> =>
  gzipSync(await readFile(join(inject('dist'), name)), { level: 9 }).length;
const sum = (numbers: readonly number[]): number => numbers.reduce((all, one) => all + one, 0);

/** A chunk and all it imports before it runs. `import(…)` comes later and is not counted. */
async function withStaticImports(name: string, known = new Set<string>()): Promise<Set<string>> {
  if (known.has(name)) return known;
  known.add(name);
  const code = await readFile(join(inject('dist'), name), 'utf8');
  for (const [, other = ''] of code.matchAll(/(?:\bfrom|\bimport)\s*["'](\.[^"']+\.js)["']/g)) {
    await withStaticImports(posix.join(posix.dirname(name), other), known);
  }
  return known;
}

/** What the page names in its head and body: scripts, their preloads, styles. */
async function namedByThePage(): Promise<{ scripts: string[]; styles: string[] }> {
  const page = await readFile(join(inject('dist'), 'index.html'), 'utf8');
  const named = [...page.matchAll(/(?:src|href)="\.\/(assets\/[^"]+\.(js|css))"/g)];
  const names = (end: string): string[] => named.flatMap(([, name = '', kind]) => (kind === end ? [name] : []));
  return { scripts: names('js'), styles: names('css') };
}

describe('what a first visit costs', () => {
  it('is at most 80 kB of script and 15 kB of style, packed, before the shelf can be used', async () => {
    const { scripts, styles } = await namedByThePage();
    const chunks = new Set<string>();
    for (const script of scripts) await withStaticImports(script, chunks);
    const script = sum(await Promise.all([...chunks].map(packed)));
    const style = sum(await Promise.all(styles.map(packed)));
    console.log(`Start: ${chunks.size} scripts ${kB(script)}, ${styles.length} styles ${kB(style)}, packed.`);
    expect(scripts.length).toBeGreaterThan(0);
    expect(styles.length).toBeGreaterThan(0);
    expect(script).toBeLessThanOrEqual(80_000);
    expect(style).toBeLessThanOrEqual(15_000);
  });

  it('is at most 1.1 MB, packed, for everything that is kept on the phone, and as much again to write a PDF', async () => {
    const entries = await readdir(inject('dist'), { recursive: true, withFileTypes: true });
    const kept = entries.filter((one) => one.isFile() && !/\.map$|^sw\.js$/.test(one.name));
    // The example's photographs come when it is opened, see `offline-update.test.ts`.
    const files = kept.filter((one) => !one.parentPath.endsWith('example'));
    expect(files.length).toBeLessThan(kept.length);
    const isForPdf = ({ name }: { readonly name: string }): boolean => /^pdf\.worker|\.ttf$/.test(name);
    const packedSize = async (some: typeof files): Promise<number> =>
      sum(
        await Promise.all(some.map(({ parentPath, name }) => packed(relative(inject('dist'), join(parentPath, name))))),
      );
    const [app, pdf] = [
      await packedSize(files.filter((one) => !isForPdf(one))),
      await packedSize(files.filter(isForPdf)),
    ];
    console.log(`On the phone: ${files.length} files, ${kB(app)} packed, and ${kB(pdf)} to write a PDF.`);
    expect(pdf).toBeGreaterThan(0);
    expect(app).toBeLessThanOrEqual(1_100_000);
    expect(pdf).toBeLessThanOrEqual(1_100_000);
  });
});
