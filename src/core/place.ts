import type { Course } from './quarantine.ts';
import type { ReadyStanding } from './ready.ts';
import type { Place } from './records.ts';

/** What must be asked before a block goes from one place to another. */
export type PlaceQuestion =
  /** Its quarantine still runs. */
  | { readonly ask: 'leaveQuarantine'; readonly endsOn: string }
  /** Essential checks before first use are open, or one has failed. */
  | { readonly ask: 'notTested'; readonly missing: readonly string[] };

/**
 * Questions before a block is moved, none where it may simply go. A running quarantine is never left unnoticed, and
 * nothing becomes ready untried.
 * @param running how its quarantine stands, if it is in one
 */
export function questionsBefore(
  to: Place,
  running: Pick<Course, 'state' | 'endsOn'> | undefined,
  ready: Pick<ReadyStanding, 'missing'>,
): readonly PlaceQuestion[] {
  const leaves = to !== 'quarantine' && running?.state === 'running';
  const missing = to === 'ready' ? ready.missing.map(({ id }) => id) : [];
  return [
    ...(leaves ? [{ ask: 'leaveQuarantine', endsOn: running.endsOn } as const] : []),
    ...(missing.length > 0 ? [{ ask: 'notTested', missing } as const] : []),
  ];
}
