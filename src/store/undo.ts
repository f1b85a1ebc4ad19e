import { computed, type ReadonlySignal, signal } from '@preact/signals';
import { sameValue } from '../core/canonical.ts';
import { valuesByPath } from '../core/changes.ts';
import type { Take } from './edits.ts';

/** One change as it can be taken back. */
export interface Step {
  readonly label: string;
  readonly takes: readonly Take[];
  /** Never joined with what is typed before or after it. */
  readonly isWhole?: boolean;
}

/** Typing in one field, or tapping its + again, within this pause is one step. */
const PAUSE_MS = 1500;
const DEEPEST = 100;

export interface UndoStack {
  /** What undo would take back, or null. */
  readonly label: ReadonlySignal<string | null>;
  push(step: Step, atMs: number): void;
  pop(): Step | undefined;
}

/** The one text or number a step sets, as record and path; null if it does anything else. */
function typedInto({ takes, isWhole }: Step): string | null {
  if (isWhole) return null;
  const [take, ...others] = takes;
  if (!take?.before || others.length > 0 || take.before.deleted !== take.after.deleted) return null;
  // Choosing between two phones' words is more than typing.
  if (!sameValue(take.before.otherWords, take.after.otherWords)) return null;
  const was = valuesByPath(take.before);
  const paths = [...valuesByPath(take.after)].filter(([path, value]) => !Object.is(was.get(path), value));
  const [path, value] = paths[0] ?? [];
  if (paths.length !== 1 || !['string', 'number'].includes(typeof value)) return null;
  return `${take.after.id} ${path}`;
}

export function createUndoStack(): UndoStack {
  const steps = signal<readonly Step[]>([]);
  let lastMs = Number.NEGATIVE_INFINITY;

  return {
    label: computed(() => steps.value.at(-1)?.label ?? null),
    push(step, atMs) {
      const top = steps.value.at(-1);
      const field = typedInto(step);
      const goesOn = top && field !== null && field === typedInto(top) && Math.abs(atMs - lastMs) <= PAUSE_MS;
      lastMs = atMs;
      const [from] = goesOn ? top.takes : [];
      const [to] = step.takes;
      const joined = from && to ? { label: step.label, takes: [{ before: from.before, after: to.after }] } : step;
      steps.value = [...steps.value.slice(0, goesOn ? -1 : undefined), joined].slice(-DEEPEST);
    },
    pop() {
      const step = steps.value.at(-1);
      steps.value = steps.value.slice(0, -1);
      // What is typed after an undo is a step of its own.
      lastMs = Number.NEGATIVE_INFINITY;
      return step;
    },
  };
}
