// How good and how quick schedules are: against published optima where the instances are to hand (PSPLIB=folder), and of
// benches with the plans of the example sale. Part of npm run bench, or alone: node tests/bench/schedule.mjs
import { loadavg } from 'node:os';
import { load } from './bundle.mjs';

const { benchOf, instances, scheduleBench, solve } = await load('tests/bench/schedule-cases.ts');

const sorted = (values) => values.toSorted((a, b) => a - b);
const spread = (values) =>
  `median ${sorted(values)[values.length >> 1].toFixed(0)}, most ${Math.max(...values).toFixed(0)}`;

/** A task with its wall and processor time in ms. */
function timed(task) {
  const used = process.cpuUsage();
  const began = performance.now();
  const answer = task();
  return { answer, wall: performance.now() - began, processor: process.cpuUsage(used).user / 1000 };
}

const times = (runs) =>
  `wall ${spread(runs.map(({ wall }) => wall))} ms; cpu ${spread(runs.map(({ processor }) => processor))} ms; load ${loadavg()[0].toFixed(1)}`;

const all = instances();
console.log('\nSchedules');
if (all.length === 0)
  console.log('no PSPLIB instances beside the project: skipped (PSPLIB=folder names another place)');
else {
  for (const { project } of all.slice(0, 5)) solve(project);
  for (const seed of [1, 2, 3]) {
    const runs = all.map(({ project, optimum }) => ({ ...timed(() => solve(project, { seed })), optimum }));
    const gaps = runs.map(({ answer, optimum }) => 100 * (answer.length / optimum - 1));
    const mean = gaps.reduce((sum, gap) => sum + gap, 0) / gaps.length;
    const met = gaps.filter((gap) => gap === 0).length;
    console.log(
      `${all.length} PSPLIB instances, seed ${seed}: gap to the optimum mean ${mean.toFixed(3)} %, most ${Math.max(...gaps).toFixed(2)} %, ${met} met; ${times(runs)}`,
    );
  }
}
for (const count of [9, 60]) {
  const input = benchOf(count);
  scheduleBench(input);
  const runs = Array.from({ length: 7 }, () => timed(() => scheduleBench(input)));
  const { days, inOrderDays, bound, served } = runs[0].answer;
  console.log(
    `${count} blocks, ${served.length} steps: ${days} days (in order ${inOrderDays}, bound ${bound.days}); ${times(runs)}`,
  );
}
