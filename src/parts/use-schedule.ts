import { type ReadonlySignal, useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { AppError, type ErrorCode } from '../core/errors.ts';
import type { BenchInput, BenchSchedule } from '../core/schedule/types.ts';
import { useApp } from '../ui/app.ts';

/** How it stands with a schedule. While a new one is made, and where it cannot be, the last one stays to be seen. */
export type ScheduleState =
  | { readonly state: 'busy'; readonly schedule: BenchSchedule | undefined }
  | { readonly state: 'ready'; readonly schedule: BenchSchedule }
  | { readonly state: 'failed'; readonly schedule: BenchSchedule | undefined; readonly code: ErrorCode };

/**
 * The schedule of many blocks, made beside the page, again whenever the question changes; of several questions the last
 * one counts. Build the question with `benchBlockOf` and `benchTimeOf`; it need not be the same object each time.
 * @param input undefined while it is not known yet: the state stays busy
 * @param topic one for each place that asks: what is tried out there must not disturb the plan here
 */
export function useSchedule(input: BenchInput | undefined, topic: string): ReadonlySignal<ScheduleState> {
  const { scheduler } = useApp();
  const state = useSignal<ScheduleState>({ state: 'busy', schedule: undefined });
  const question = input && JSON.stringify(input);
  useEffect(() => {
    if (question === undefined) return undefined;
    let wanted = true;
    const { schedule } = state.peek();
    state.value = { state: 'busy', schedule };
    scheduler.ask(topic, JSON.parse(question) as BenchInput).then(
      (answer) => {
        if (wanted && answer) state.value = { state: 'ready', schedule: answer };
      },
      (error: unknown) => {
        const code = error instanceof AppError ? error.code : 'schedule-failed';
        if (wanted) state.value = { state: 'failed', schedule, code };
      },
    );
    return () => {
      wanted = false;
      scheduler.takeBack(topic);
    };
  }, [question, topic, scheduler]);
  return state;
}
