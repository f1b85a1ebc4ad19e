import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const src = fileURLToPath(new URL('../../src', import.meta.url));

/** Who may import whom inside `src/`; the map of DEVELOPERS.md. Types count too: a type is knowledge. */
const mayImport: Readonly<Record<string, readonly string[]>> = {
  core: ['core'],
  pixels: ['pixels'],
  catalogue: ['catalogue', 'core'],
  drawings: ['drawings', 'core'],
  text: ['text', 'core'],
  reports: ['reports', 'core', 'text'],
  imports: ['imports', 'core', 'store', 'photos'],
  workers: ['workers', 'core', 'pixels', 'catalogue', 'imports'],
  store: ['store', 'core', 'text', 'photos'],
  photos: ['photos', 'core', 'text', 'ui'],
  exports: ['exports', 'core', 'text', 'drawings', 'photos', 'workers'],
  demo: ['demo', 'core', 'store'],
  ui: ['ui', 'core', 'text', 'store', 'workers'],
  parts: [
    'parts',
    'ui',
    'store',
    'photos',
    'exports',
    'imports',
    'reports',
    'drawings',
    'text',
    'core',
    'workers',
    'demo',
    '',
  ],
  screens: [
    'screens',
    'parts',
    'ui',
    'store',
    'photos',
    'exports',
    'imports',
    'reports',
    'drawings',
    'text',
    'core',
    'workers',
    'pixels',
    '',
  ],
};

const ringOf = (file: string): string => (file.includes(sep) ? (file.split(sep)[0] ?? '') : '');

const files = readdirSync(src, { recursive: true, encoding: 'utf8' }).filter(
  (file) => /\.tsx?$/.test(file) && !file.endsWith('.d.ts'),
);

/** Relative imports of a file, as paths below `src/`. */
function importsOf(file: string): string[] {
  const text = readFileSync(join(src, file), 'utf8');
  const found = [
    ...text.matchAll(/(?:from|import|import\()\s*'(\.[^']+)'/g),
    ...text.matchAll(/new URL\('(\.[^']+)'/g),
  ];
  return found.map(([, path = '']) => relative(src, resolve(src, dirname(file), path)));
}

describe('rings', () => {
  for (const [ring, allowed] of Object.entries(mayImport)) {
    it(`${ring} imports only ${allowed.map((name) => name || 'the composition root').join(', ')}`, () => {
      const strays = files
        .filter((file) => ringOf(file) === ring)
        .flatMap((file) =>
          importsOf(file)
            .filter((path) => !allowed.includes(ringOf(path)))
            .map((path) => `${file} → ${path}`),
        );
      expect(strays).toEqual([]);
    });
  }

  it('knows every folder of src', () => {
    const rings = new Set(files.map(ringOf).filter(Boolean));
    rings.delete('serve');
    expect([...rings].filter((ring) => !(ring in mayImport))).toEqual([]);
  });

  it('lets screens take of each other only their routes', () => {
    const strays = files
      .filter((file) => ringOf(file) === 'screens')
      .flatMap((file) =>
        importsOf(file)
          .filter((path) => ringOf(path) === 'screens')
          .filter((path) => path.split(sep)[1] !== file.split(sep)[1] && !path.endsWith(`${sep}route.ts`))
          .map((path) => `${file} → ${path}`),
      );
    expect(strays).toEqual([]);
  });

  it('keeps clock and chance out of the rules', () => {
    const strays = files
      .filter((file) => ['core', 'pixels', 'catalogue'].includes(ringOf(file)))
      .filter((file) =>
        /Math\.random|Date\.now|new Date\(\)|performance\.now/.test(readFileSync(join(src, file), 'utf8')),
      );
    expect(strays).toEqual([]);
  });
});
