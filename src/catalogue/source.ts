import type { Source } from '../core/catalogue.ts';

/** Read in a public source; `S20` and the like are keys of `sources`. */
export const published = (text: string): Source => ({ kind: 'published', text });
/** Our own judgement of the trade, to be tuned with logged work. */
export const estimate = (text: string): Source => ({ kind: 'estimate', text });
/** How it is commonly done; no source. */
export const practice = (text: string): Source => ({ kind: 'practice', text });
/** From memory, not looked up. */
export const memory = (text: string): Source => ({ kind: 'memory', text });
/** Our own definition or rule. */
export const own = (text: string): Source => ({ kind: 'own', text });

export const fromMemory = memory('Trade knowledge, from memory.');
