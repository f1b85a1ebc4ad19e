// Looks at the finished pictures with the app's own measuring functions and writes what the example stores of them: hash,
// focal length, and the scale where a card or a coin lies in the picture.
//   node tests/render/measure.mjs
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { runnerImport } from 'vite';
import { loadPixels } from '../bench/pixels.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const { readPhoto } = (await runnerImport(`${root}tests/support/read-photo.ts`)).module;
const { METHOD_VERSION } = (await runnerImport(`${root}src/workers/pixel-jobs.ts`)).module;
const { pocketReferences } = (await runnerImport(`${root}src/catalogue/pocket-references.ts`)).module;
const pixels = await loadPixels();
const truth = JSON.parse(readFileSync(`${root}tests/render/truth.json`, 'utf8'));
const short = (n) => Number(n.toFixed(6));

function scaleOf(photo, { card, coin }) {
  const base = { featureAboveMm: 0, version: METHOD_VERSION };
  if (card) {
    let found = pixels.findCard(photo);
    let taps = [];
    if (!found.ok) {
      // As a person would: the four corners tapped.
      taps = card.map(([x, y]) => [short(x), short(y)]);
      found = pixels.refineCard(
        photo,
        taps.map(([x, y]) => [x * photo.width, y * photo.height]),
      );
    }
    if (!found.ok) return { why: `card ${found.why}` };
    const corners = found.corners.map(([x, y]) => [short(x / photo.width), short(y / photo.height)]);
    const scale = { ...base, kind: 'card', reference: 'bankCard', sizeMm: pocketReferences.bankCard.mm };
    return { scale: { ...scale, taps, corners, rim: null, sigmaOfWidth: short(found.sigmaPx / photo.width) } };
  }
  if (coin) {
    // Three taps of a finger on the rim.
    const taps = [coin[0], coin[3], coin[5]].map(([x, y]) => [short(x), short(y)]);
    const found = pixels.refineCoin(
      photo,
      taps.map(([x, y]) => [x * photo.width, y * photo.height]),
    );
    if (!found.ok) return { why: `coin ${found.why}` };
    const { cx, cy, a, b, theta } = found.ellipse;
    const rim = {
      ...{ centre: [short(cx / photo.width), short(cy / photo.height)] },
      ...{ a: short(a / photo.width), b: short(b / photo.width), angle: short(theta) },
    };
    const scale = { ...base, kind: 'coin', reference: 'uk2p', sizeMm: pocketReferences.uk2p.mm };
    return { scale: { ...scale, taps, corners: [], rim, sigmaOfWidth: short(found.sigmaPx / photo.width) } };
  }
  return {};
}

const rows = [];
for (const name of readdirSync(`${root}public/example`).sort()) {
  const file = name.replace(/\.jpg$/, '');
  const path = `${root}public/example/${name}`;
  const sha256 = createHash('sha256').update(readFileSync(path)).digest('hex');
  const { scale, why } = scaleOf(readPhoto(path), truth[file] ?? {});
  if (why) console.log(`${file}: no scale, ${why}.`);
  rows.push(
    `  '${file}': ${JSON.stringify({ sha256, focal35: truth[file]?.focal35 ?? null, ...(scale && { scale }) })},`,
  );
}
writeFileSync(
  `${root}src/demo/measured-pictures.ts`,
  `import type { PhotoScale } from '../core/records.ts';

/** What is known of each picture's file. Written by \`tests/render/measure.mjs\`; not by hand. */
export const measuredPictures: Readonly<
  Record<string, { readonly sha256: string; readonly focal35: number | null; readonly scale?: PhotoScale }>
> = {
${rows.join('\n')}
};
`,
);
console.log(`${rows.length} pictures.`);
