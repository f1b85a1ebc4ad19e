import { afterEach, expect, it, vi } from 'vitest';
import type { BenchInput } from '../../src/core/schedule/types.ts';
import { useSchedule } from '../../src/parts/use-schedule.ts';
import { aBench, aStep } from '../core/schedule/any-bench.ts';
import { drawn } from '../support/dom.tsx';

afterEach(() => document.body.replaceChildren());

function Told({ input }: { readonly input: BenchInput | undefined }) {
  const state = useSchedule(input, 'test').value;
  const code = state.state === 'failed' ? state.code : '';
  return (
    <p>
      {state.state} {state.schedule?.days ?? 'none'} {code}
    </p>
  );
}

const bench = (hours: number): BenchInput => aBench([{ blockId: 'A', steps: [aStep('sand', hours)] }]);

it('tells of being busy, the schedule, and a failure that leaves the last schedule to be seen', async () => {
  const { root, draw } = await drawn(<Told input={undefined} />);
  const said = (): string => root.textContent?.trim() ?? '';
  expect(said()).toBe('busy none');
  draw(<Told input={bench(5)} />);
  await vi.waitFor(() => expect(said()).toBe('ready 2'));
  draw(<Told input={bench(1e12)} />);
  await vi.waitFor(() => expect(said()).toBe('failed 2 schedule-too-long'));
  draw(<Told input={bench(10)} />);
  await vi.waitFor(() => expect(said()).toBe('ready 4'));
});
