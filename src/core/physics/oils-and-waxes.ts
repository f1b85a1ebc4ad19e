import type { WithCautions } from './cautions.ts';
import type { SourcedRow, Span } from './sourced.ts';

type Oil = SourcedRow & WithCautions & { readonly iodineValue: Span; readonly hardens: boolean };
const REMEMBERED = { source: 'oil handbooks, as remembered', confidence: 'memory' } as const;

/** Oils by iodine value, g/100 g: high ones harden, low ones never do. */
export const OILS = {
  linseed: { iodineValue: { low: 170, high: 204 }, hardens: true, cautions: ['oilyRags'], ...REMEMBERED },
  tung: { iodineValue: { low: 160, high: 175 }, hardens: true, cautions: ['oilyRags'], ...REMEMBERED },
  walnut: { iodineValue: { low: 132, high: 162 }, hardens: true, cautions: ['oilyRags'], ...REMEMBERED },
  olive: { iodineValue: { low: 75, high: 94 }, hardens: false, goesRancid: true, cautions: [], ...REMEMBERED },
  /** Never hardens, never rancid, but creeps into felt and straw. */
  whiteMineral: { iodineValue: { low: 0, high: 0 }, hardens: false, goesRancid: false, cautions: [], ...REMEMBERED },
} as const satisfies Record<string, Oil>;

/** The heat of hardening doubles its own pace about every 10 °C, which is how a rag sets itself alight. */
export const SELF_HEATING = {
  fasterPer10C: 2,
  cautions: ['oilyRags'],
  source: "fire investigators' note on drying-oil rags",
  confidence: 'looked-up',
} as const satisfies SourcedRow & WithCautions;

/** Shellac under heat. */
export const SHELLAC = {
  softensC: 65,
  meltsC: 80,
  cautions: ['solvents'],
  source: 'conservation handbooks, as remembered',
  confidence: 'memory',
} as const satisfies SourcedRow & WithCautions;

/** Friction of wood on wood in a puzzle joint. No oil in joints: it swells and creeps; no wax where glue must hold. */
export const JOINT_FRICTION = {
  dry: { low: 0.25, high: 0.5 },
  waxed: { low: 0.1, high: 0.25 },
  source: 'engineering tables, as remembered',
  confidence: 'memory',
} as const satisfies SourcedRow;

/** What holds sparterie together: starch, so water and steam loosen it. */
export const SPARTERIE_BINDER = {
  binder: 'starch',
  steam: false,
  cautions: ['sparterieNoWater'],
  source: 'costume-shop notes on esparterie, 2010; a millinery handbook',
  confidence: 'looked-up',
} as const satisfies SourcedRow & WithCautions;

/** How other block materials take pins, steam and water. SOURCE: common practice; aluminium from memory. */
export const OTHER_MATERIALS = {
  aluminium: { pins: 'none', steam: 'condenses', cautions: ['aluminiumCleaners'] },
  cork: { pins: 'pull out', steam: 'brief', cautions: [] },
  papierMache: { pins: 'surface only', steam: 'never', cautions: ['papierMacheDry'] },
  plaster: { pins: 'none', steam: 'never', cautions: ['plasterDry'] },
  sparterie: { pins: 'light', steam: 'never', cautions: ['sparterieNoWater'] },
} as const satisfies Record<string, WithCautions & { pins: string; steam: string }>;
