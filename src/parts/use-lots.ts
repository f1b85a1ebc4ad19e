import { type Signal, signal } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';
import { type Assessment, assess } from '../core/assess.ts';
import { daysFor, eveningsOf } from '../core/days.ts';
import { type Lot, type LotBlock, type LotRow, rowOf, type TableFacts } from '../core/lots.ts';
import type { JobLot, Sale } from '../core/records.ts';
import { COMMON_SEED } from '../core/simulate/luck.ts';
import type { Forecast, ForecastCase } from '../core/simulate/simulate.ts';
import { copyPlan } from '../core/worth.ts';
import type { Store } from '../store/store.ts';
import { useApp } from '../ui/app.ts';

type Key = readonly unknown[];
const same = (a: Key | undefined, b: Key): boolean => a?.length === b.length && b.every((part, n) => part === a[n]);

interface Kept {
  book: { readonly key: Key; readonly is: Assessment } | undefined;
  forecast: { readonly key: Key; readonly is: Forecast } | undefined;
  asking: Key | undefined;
}

/** What was reckoned for the blocks of a store, kept over screens: walking from lot to lot, one block changes at a time. */
interface Memory {
  readonly blocks: Map<string, Kept>;
  readonly rows: Map<string, { readonly key: Key; readonly row: LotRow }>;
  /** Rises when forecasts have come. */
  readonly version: Signal<number>;
  timer: ReturnType<typeof setTimeout> | undefined;
}
const memories = new WeakMap<Store, Memory>();

function memoryOf(store: Store): Memory {
  const found = memories.get(store);
  if (found) return found;
  const made: Memory = { blocks: new Map(), rows: new Map(), version: signal(0), timer: undefined };
  memories.set(store, made);
  return made;
}

/** How long answers are gathered before the table is drawn again, ms. */
const GATHER_MS = 80;

function announce(memory: Memory): void {
  memory.timer ??= setTimeout(() => {
    memory.timer = undefined;
    memory.version.value += 1;
  }, GATHER_MS);
}

/** The lots of a sale as a table, best first knowledge first: rows by the book at once, by the forecast as each is made. */
export function useLots(sale: Sale): { readonly rows: readonly LotRow[]; readonly reckoning: number } {
  const { store, catalogue, own, forecaster } = useApp();
  const memory = memoryOf(store);
  memory.version.value;
  const settings = store.settings.value;
  const pace = own.pace.value;
  const tallies = own.tallies.value;
  // What they say, not which object says it: a block of another kind looked at elsewhere changes nothing here.
  const beliefs = useMemo(() => JSON.stringify(tallies), [tallies]);
  const copy = useMemo(() => {
    const plan = copyPlan(catalogue, pace);
    return { hours: plan.meanHours, days: daysFor(plan, eveningsOf(settings)).total };
  }, [catalogue, pace, settings]);
  const facts: TableFacts = { terms: sale.terms, currency: sale.currency, copy };

  const asks: { readonly kept: Kept; readonly key: Key; readonly facts: ForecastCase }[] = [];
  const blocks = store.blocksOf(sale.id).flatMap((block): LotBlock[] => {
    const survey = store.surveyOf(block.id);
    if (!survey) return [];
    const findings = store.findingsOf(block.id);
    const kept = memory.blocks.get(block.id) ?? { book: undefined, forecast: undefined, asking: undefined };
    memory.blocks.set(block.id, kept);
    const its = { block, survey, findings, terms: sale.terms, settings, pace };
    const key = [block, survey, findings, sale.terms, settings, pace];
    if (!kept.book || !same(kept.book.key, key)) kept.book = { key, is: assess(its, catalogue) };
    const origin = block.origin ?? sale.origin;
    const whole = [...key, origin, beliefs];
    if (!same(kept.forecast?.key, whole))
      asks.push({ kept, key: whole, facts: { ...its, origin, tallies, seed: COMMON_SEED } });
    return [{ block, survey, findings, book: kept.book.is, forecast: kept.forecast?.is }];
  });

  useEffect(() => {
    // What has no answer yet before what has an older one.
    const first = [...asks].sort(
      (a, b) => Number(a.kept.forecast !== undefined) - Number(b.kept.forecast !== undefined),
    );
    for (const { kept, key, facts: its } of first) {
      if (same(kept.asking, key)) continue;
      kept.asking = key;
      forecaster.ask(`${its.block.id} table`, its).then(
        (forecast) => {
          if (!forecast || kept.asking !== key) return;
          kept.forecast = { key, is: forecast };
          announce(memory);
        },
        // Without a worker the book's answer stands where everything was looked at.
        () => undefined,
      );
    }
  });

  const rows = lotsOf(blocks, store.lotsOf(sale.id), store).map((lot) => {
    const key = [
      ...[lot.job, lot.offers, sale.terms, sale.currency, copy],
      ...lot.blocks.flatMap(({ block, survey, book, forecast }) => [block, survey, book, forecast]),
    ];
    const before = memory.rows.get(lot.id);
    if (before && same(before.key, key)) return before.row;
    const row = rowOf(lot, facts);
    memory.rows.set(lot.id, { key, row });
    return row;
  });
  return { rows, reckoning: asks.length };
}

const byNumber = (a: LotBlock, b: LotBlock): number =>
  a.block.objectNumber.localeCompare(b.block.objectNumber, 'en-GB', { numeric: true });

/** Blocks gathered into what is sold at one price; a job lot that lost its last block stays, so that it can be filled again. */
function lotsOf(blocks: readonly LotBlock[], jobs: readonly JobLot[], store: Store): readonly Lot[] {
  const ids = new Set(jobs.map(({ id }) => id));
  const singles = blocks.filter(({ block }) => block.lotId == null || !ids.has(block.lotId));
  return [
    ...jobs.map((job) => ({
      id: job.id,
      job,
      blocks: blocks.filter(({ block }) => block.lotId === job.id).sort(byNumber),
      offers: store.offersOf(job.id),
    })),
    ...singles.map((one) => ({ id: one.block.id, job: null, blocks: [one], offers: store.offersOf(one.block.id) })),
  ];
}
