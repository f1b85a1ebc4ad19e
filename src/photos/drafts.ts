/** Where the note of a camera on its way is kept; survives the page. */
export interface CaptureKeeper {
  read(): string | null;
  write(note: string): void;
  clear(): void;
}

export interface PendingCapture {
  /** What the photograph was to be for, in the caller's own words. */
  readonly context: string;
  readonly begunMs: number;
}

const KEY = 'blockworth-pending-capture';
/** A note older than this belongs to a walk that is over. Trade estimate. */
const STILL_MEANT_MS = 60 * 60_000;

/** Storage may be closed in private windows; then a reload under the camera is simply not noticed. */
function quietly<Result>(attempt: () => Result): Result | null {
  try {
    return attempt();
  } catch {
    return null;
  }
}

export const inLocalStorage: CaptureKeeper = {
  read: () => quietly(() => localStorage.getItem(KEY)),
  write: (note) => void quietly(() => localStorage.setItem(KEY, note)),
  clear: () => void quietly(() => localStorage.removeItem(KEY)),
};

/**
 * Notes, before the camera or gallery opens, what the photograph is for. A phone short of memory throws the page away
 * meanwhile and loads it anew; the photograph is lost then, but its owner should stand where they stood.
 */
export function beginCapture(context: string, keeper = inLocalStorage, nowMs = Date.now()): void {
  keeper.write(JSON.stringify({ context, begunMs: nowMs } satisfies PendingCapture));
}

/** The camera came back, with or without a photograph. */
export const endCapture = (keeper = inLocalStorage): void => keeper.clear();

function parsed(note: string | null): Partial<PendingCapture> | null {
  const value: unknown = note === null ? null : quietly(() => JSON.parse(note));
  return typeof value === 'object' ? value : null;
}

/** At the start of the app: what a camera was opened for that never came back, once; otherwise null. */
export function takePendingCapture(keeper = inLocalStorage, nowMs = Date.now()): PendingCapture | null {
  const note = parsed(keeper.read());
  keeper.clear();
  const { context, begunMs } = note ?? {};
  if (typeof context !== 'string' || typeof begunMs !== 'number') return null;
  const age = nowMs - begunMs;
  return age >= 0 && age <= STILL_MEANT_MS ? { context, begunMs } : null;
}
