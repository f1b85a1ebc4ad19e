import type { Sourced } from '../physics/sourced.ts';
import type { WoodId } from '../physics/woods.ts';

/** Stands in for the wood nobody named: what hat blocks are most often carved from. SOURCE: trade memory, see BLOCK_WOODS. */
export const USUAL_WOODS = ['lime', 'americanBasswood'] as const satisfies readonly WoodId[];

/** Figures that stand in for measures nobody took; each use is said with the advice. SOURCE: trade estimates. */
export const USUAL = {
  /** Round a crown at its rope line. */
  circumferenceMm: 570,
  /** Across the grain of a brim board. */
  boardWidthMm: 400,
  boardThicknessMm: 30,
  /** One hand clamp or band, tight but not forced. */
  clampN: 1000,
  /** Face of a crown. */
  surfaceCm2: 1000,
} as const;

/** Where figures come from that stand in no table of their own. */
export const SOURCES = {
  equilibrium: {
    source: 'moisture of wood in air: USDA Forest Products Laboratory, Wood Handbook FPL-GTR-282 (2021), eq. 4-5',
    confidence: 'looked-up',
  },
  roundCrack: {
    source: 'gap, strain and force of a crack from rim to middle of a round block: own geometry',
    confidence: 'own',
  },
  boards: {
    source: 'swelling of boards on either side of a line: Wood Handbook eq. 13-2, turned round',
    confidence: 'looked-up',
  },
  crackRule: {
    source:
      'below 0.15 % clamp, to 0.4 % and 65 % humidity humidify first, beyond do not force: own rule, not published',
    confidence: 'own',
  },
  humidifying: { source: 'five points of humidity a week, 65 % at most: common practice', confidence: 'practice' },
  clampForce: { source: 'clamps: pressure times face, 1000 N from one hand clamp or band', confidence: 'estimate' },
  wedge: { source: 'volumes of wedge, cap and bowl: geometry', confidence: 'own' },
  ranking: { source: 'how clues about holes are weighed, and how common each insect is', confidence: 'estimate' },
  lifeSigns: {
    source: 'pale rims and light wood inside: regional museums guidance; the rest common practice',
    confidence: 'looked-up',
  },
  season: {
    source: 'a year, and one whole flight season, whichever ends later: own rule round published months',
    confidence: 'own',
  },
  missing: {
    source: 'chance that nothing comes out in a summer: own model, larvae of all ages alike',
    confidence: 'own',
  },
  eggs: {
    source: 'dryness and eggs of furniture beetle: handbook of urban insects and arachnids (2005)',
    confidence: 'looked-up',
  },
  mouldGrowth: {
    source: 'humidity at which mould grows on pine sapwood: Hukka and Viitanen 1999, Wood Sci. Technol. 33:475',
    confidence: 'looked-up',
  },
  outbreak: { source: 'outbreak sizes: Canadian Conservation Institute', confidence: 'looked-up' },
  refusal: { source: 'when to refuse a mouldy block', confidence: 'estimate' },
  dome: {
    source: 'weight against a dome of its wood, under 60 % eaten, under 80 % look for tunnels',
    confidence: 'estimate',
  },
} as const satisfies Record<string, Sourced>;
