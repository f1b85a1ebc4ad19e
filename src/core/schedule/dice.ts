import { uniforms } from '../simulate/random.ts';

/** Numbers in (0, 1), one at each call. */
export type Dice = () => number;

const BATCH = 2_048;

/** The same numbers for the same purpose and seed, without end. */
export function diceOf(purpose: string, seed: number): Dice {
  let batch = 0;
  let values = uniforms(`${purpose} 0`, seed, BATCH);
  let at = 0;
  return () => {
    if (at === BATCH) {
      batch += 1;
      values = uniforms(`${purpose} ${batch}`, seed, BATCH);
      at = 0;
    }
    at += 1;
    return values[at - 1] as number;
  };
}
