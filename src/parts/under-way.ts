import { type ReadonlySignal, signal } from '@preact/signals';

/** Work on files that goes on while its owner looks at other screens. */
export interface UnderWay {
  readonly words: string;
  /** Steps done; null for work that has come to its end and waits to be seen. */
  readonly done: number | null;
  readonly of: number;
  readonly isBad?: boolean;
}

export interface Signpost {
  readonly shown: ReadonlySignal<UnderWay | null>;
  /** An end is only said to someone who was elsewhere when it came. */
  say(sign: UnderWay | null): void;
  /** Its owner opens the screen where the work is looked after, and leaves it. */
  arrive(): void;
  leave(): void;
  putAway(): void;
}

function signpost(): Signpost {
  const shown = signal<UnderWay | null>(null);
  let isHere = false;
  return {
    shown,
    say(sign) {
      shown.value = isHere && sign?.done === null ? null : sign;
    },
    arrive() {
      isHere = true;
      if (shown.value?.done === null) shown.value = null;
    },
    leave() {
      isHere = false;
    },
    putAway() {
      shown.value = null;
    },
  };
}

/** Set by those who do the work, drawn by `under-way-bar.tsx`, which must not draw in all they need. */
export const signposts = { backup: signpost(), bring: signpost() };
