import type { BenchInput, BenchSchedule } from '../core/schedule/types.ts';
import { type Asker, createAsker } from './asker.ts';

export type BenchScheduler = Asker<BenchInput, BenchSchedule>;

export const createBenchScheduler = (startWorker: () => Worker): BenchScheduler =>
  createAsker<BenchInput, BenchSchedule>(startWorker, 'schedule', { listens: true });
