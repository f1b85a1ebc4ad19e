import type { Calculator } from './calculator.ts';

const found = import.meta.glob<{ default: Calculator }>('./calculators/*.tsx', { eager: true });

/** Every calculator there is, in page order. */
export const calculators: readonly Calculator[] = Object.values(found)
  .map((module) => module.default)
  .sort((a, b) => a.order - b.order);
