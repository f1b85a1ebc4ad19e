// npm run bench: how long the assessment and the forecast take here, in milliseconds. Other work on the machine shows in
// the wall time; the processor time is what the code itself took. Measured, never asserted: a test that times is a coin.
import { loadavg } from 'node:os';
import { load } from './bundle.mjs';

const median = (values) => values.toSorted((a, b) => a - b)[values.length >> 1];

/** Runs a task many times and gives the median of its wall and processor time in ms. */
function time(runs, task) {
  const wall = [];
  const processor = [];
  for (let n = 0; n < runs; n += 1) {
    const used = process.cpuUsage();
    const begun = performance.now();
    task(n);
    wall.push(performance.now() - begun);
    processor.push(process.cpuUsage(used).user / 1000);
  }
  return { wall: median(wall), processor: median(processor) };
}

function report(what, runs, task, warmUp = 5) {
  for (let n = 0; n < warmUp; n += 1) task(-1 - n);
  const { wall, processor } = time(runs, task);
  const ms = (value) => value.toFixed(2).padStart(9);
  console.log(`${what.padEnd(58)}${ms(wall)}${ms(processor)}   ${loadavg()[0].toFixed(1)}`);
}

const began = performance.now();
const { assess, caseWith, catalogue, forecast, forecastCase } = await load('tests/bench/cases.ts');
console.log(`Node ${process.version}, bundled in ${Math.round(performance.now() - began)} ms. Medians, ms.\n`);
console.log(`${''.padEnd(58)}     wall      cpu   load`);

const first = forecastCase(60, 'nothing');
report('first forecast of all, tables and draws made', 1, () => forecast(first, catalogue), 0);

for (const count of [30, 60]) {
  const facts = caseWith(count, 'everything');
  report(`assess, ${count} findings`, 200, () => assess(facts, catalogue), 50);
}
for (const [count, looked, words] of [
  [60, 'everything', 'forecast, 60 findings, rest looked at'],
  [60, 'nothing', 'forecast, 60 findings, rest not looked at'],
  [0, 'nothing', 'forecast, no findings, nothing looked at'],
]) {
  const warm = forecastCase(count, looked);
  report(`${words}, draws kept`, 50, () => forecast(warm, catalogue));
  // A new seed throws the kept draws away.
  report(`${words}, draws made anew`, 30, (n) => forecast({ ...warm, seed: 1000 + n }, catalogue));
}
for (const count of [0, 60]) {
  const facts = forecastCase(count, 'nothing');
  const done = Object.fromEntries(Object.keys(catalogue.stations).map((id) => [id, true]));
  const noLooks = { ...facts, survey: { ...facts.survey, stationsDone: done } };
  const book = assess(facts, catalogue);
  report(`forecast, ${count} findings, nothing looked at, without looks`, 30, () => forecast(noLooks, catalogue, book));
  report('  the same with looks: the difference is what looks cost', 30, () => forecast(facts, catalogue, book));
}

const { adviceOn, choose, randomLots, reRanked, rowsOf, sixtyLots } = await load('tests/bench/sale-cases.ts');
const lots = sixtyLots();
const rows = rowsOf(lots);
report('sale of 60 lots, every row made', 30, () => rowsOf(lots));
report('sale of 60 lots, one changed, ranked again', 200, (n) => reRanked(lots, rows, Math.abs(n)));
report('sale of 60 lots: best, two runners-up, more money, more hours', 30, () => adviceOn(rows));
report('choice of 60 random lots with copies', 40, (n) => {
  const { lots: random, purse } = randomLots(1 + (Math.abs(n) % 20));
  choose(random, purse);
});

await import('./schedule.mjs');

// The measuring of photos is a longer run, with photos the project does not carry: npm run bench -- --photos
if (process.argv.includes('--photos')) await import('./vision.mjs');
if (process.argv.includes('--archive')) await import('./archive.mjs');
if (process.argv.includes('--pdf')) await import('./pdf.mjs');
if (process.argv.includes('--import')) await import('./import.mjs');

// The built app in Chromium, six minutes on a quiet machine: left out with npm run bench -- --no-browser
if (!process.argv.includes('--no-browser')) await import('./browser.mjs');
