import type { Resource } from '../core/catalogue.ts';

/** What a schedule must share out. Capacities are a one-person workshop's, a trade estimate. */
export const resources = {
  hands: {
    term: 'The restorer',
    capacity: 1,
    note: '2.5 h an evening by default; only hands-on hours count here.',
  },
  bench: {
    term: 'Dry bench with vise',
    capacity: 1,
    note: 'One block at a time while being worked or held in the vise.',
  },
  clamps: {
    term: 'Clamp set (4 cramps, band, cauls)',
    capacity: 2,
    note: 'A set stays on the block through the whole clamp time.',
  },
  wet: { term: 'Wet and steam corner', capacity: 1, note: 'Steam, soaking, paste.' },
  freezer: {
    term: 'Domestic chest freezer at −20 °C or colder',
    capacity: 1,
    note: 'Counted in loads; a usual chest takes 2–4 crowns if air can move.',
  },
  quarantine: { term: 'Quarantine box or sealed bags', capacity: 6, note: 'Away from felt, straw, timber.' },
  dryRack: { term: 'Airy shelf, 18–22 °C, 45–60 % humidity', capacity: 9, note: 'Drying and curing.' },
  finish: { term: 'Dust-free finishing spot', capacity: 3, note: 'Nothing sanded in the same evening.' },
  outdoors: {
    term: 'Shaded, ventilated outside place',
    capacity: 4,
    note: 'Airing, solvent and mould work in dry weather.',
  },
} as const satisfies Record<string, Resource>;
export type ResourceId = keyof typeof resources;
