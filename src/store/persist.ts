import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { Space } from './repository.ts';

/** Share of the quota from which the owner is told, and from which camera originals are no longer kept. Source: house rule. */
export const LOW = 0.7;
export const FULL = 0.9;

export type Room = 'unknown' | 'enough' | 'low' | 'full';
/** Whether the browser promised not to clear this storage by itself. `cannot`: it knows no such promise. */
export type Persistence = 'notAsked' | 'granted' | 'refused' | 'cannot';

/** How full a storage is, or would be with so many bytes more. */
export function roomIn(space: Space | null, moreBytes = 0): Room {
  if (!space || space.quota <= 0) return 'unknown';
  const share = (space.usage + moreBytes) / space.quota;
  if (share >= FULL) return 'full';
  return share >= LOW ? 'low' : 'enough';
}

/** What the browser says about keeping: asked for once there is a photograph to lose, and shown. */
export interface Keeping {
  readonly persistence: ReadonlySignal<Persistence>;
  /** As last measured. */
  readonly space: ReadonlySignal<Space | null>;
  readonly room: ReadonlySignal<Room>;
  /** Measures again. */
  look(): Promise<void>;
  /** Whether a camera original of so many bytes should be kept beside its copies. Text and copies always are. */
  mayKeepOriginal(bytes: number): Promise<boolean>;
  /** A photograph was saved: measures again, and asks for the promise if it is not given yet, once a run. */
  photoSaved(): Promise<void>;
}

type StorageManagerLike = Partial<Pick<StorageManager, 'persist' | 'persisted' | 'estimate'>>;

/** @param storage `navigator.storage`, or undefined where the page is not secure */
export function createKeeping(storage: StorageManagerLike | undefined): Keeping {
  const persistence = signal<Persistence>(storage?.persist ? 'notAsked' : 'cannot');
  const space = signal<Space | null>(null);
  let isAsked = false;

  async function measure(): Promise<void> {
    const { usage, quota } = (await storage?.estimate?.().catch(() => undefined)) ?? {};
    space.value = usage === undefined || quota === undefined ? null : { usage, quota };
  }

  return {
    persistence,
    space,
    room: computed(() => roomIn(space.value)),
    async look() {
      await measure();
      if (await storage?.persisted?.().catch(() => false)) persistence.value = 'granted';
    },
    async mayKeepOriginal(bytes) {
      await measure();
      return roomIn(space.value, bytes) !== 'full';
    },
    async photoSaved() {
      await this.look();
      if (isAsked || persistence.value === 'granted' || !storage?.persist) return;
      isAsked = true;
      persistence.value = (await storage.persist().catch(() => false)) ? 'granted' : 'refused';
    },
  };
}
