import type { BenchTaskId } from '../../../../src/core/physics/bench-times.ts';
import type { BorerId } from '../../../../src/core/physics/insects.ts';
import type { WoodId } from '../../../../src/core/physics/woods.ts';

/** The handbook's names for woods, and ours. */
export const WOOD_NAMES: Readonly<Record<string, WoodId>> = {
  alder_red: 'redAlder',
  ash_white: 'whiteAsh',
  aspen_quaking: 'quakingAspen',
  basswood_american: 'americanBasswood',
  beech_american: 'americanBeech',
  birch_paper: 'paperBirch',
  birch_yellow: 'yellowBirch',
  cherry_black: 'blackCherry',
  chestnut_american: 'americanChestnut',
  cottonwood_eastern: 'easternCottonwood',
  elm_american: 'americanElm',
  maple_sugar: 'sugarMaple',
  maple_red: 'redMaple',
  maple_silver: 'silverMaple',
  oak_white: 'whiteOak',
  oak_red: 'redOak',
  sycamore_american_platanus: 'americanSycamore',
  tupelo_black: 'blackTupelo',
  walnut_black: 'blackWalnut',
  willow_black: 'blackWillow',
  yellow_poplar: 'yellowPoplar',
  pine_eastern_white: 'easternWhitePine',
  pine_ponderosa: 'ponderosaPine',
  pine_sugar: 'sugarPine',
  balsa: 'balsa',
  khaya_african_mahogany: 'africanMahogany',
  mahogany_swietenia: 'mahogany',
  obeche: 'obeche',
  limba: 'limba',
  okoume: 'okoume',
  spanish_cedar: 'spanishCedar',
  teak: 'teak',
  // Short names of the property tables.
  basswood: 'americanBasswood',
  alder: 'redAlder',
  beech: 'americanBeech',
  mahogany: 'mahogany',
  walnut: 'blackWalnut',
  yellow_birch: 'yellowBirch',
  sugar_maple: 'sugarMaple',
};

export const GENUS_NAMES: Readonly<Record<string, WoodId>> = {
  lime_linden_tilia: 'lime',
  alder_alnus: 'alder',
  beech_fagus: 'beech',
  maple_sycamore_acer: 'maple',
  poplar_populus: 'poplar',
  walnut_juglans_regia: 'walnut',
  ash_fraxinus: 'ash',
  oak_white_quercus: 'oak',
  mahogany_swietenia: 'mahoganyGenus',
  cherry_prunus: 'cherry',
  chestnut_castanea: 'chestnut',
  willow_salix: 'willow',
  elm_ulmus: 'elm',
  scots_pine: 'scotsPine',
  spruce_picea: 'spruce',
};

export const BORER_NAMES: Readonly<Record<string, BorerId>> = {
  furniture_beetle: 'furnitureBeetle',
  powderpost_lyctus: 'powderpost',
  deathwatch: 'deathwatch',
  house_longhorn: 'houseLonghorn',
  fan_bearing_ptilinus: 'fanBearingBorer',
  wood_weevil: 'woodWeevil',
  ambrosia_pinhole: 'ambrosiaBeetle',
  bark_borer_ernobius: 'barkBorer',
  drywood_termite: 'drywoodTermite',
  false_powderpost_bostrichid: 'falsePowderpost',
  parasitic_wasp: 'parasiticWasp',
};

/** `crack_glue_run` → `crackGlueRun`. */
export const taskName = (name: string): BenchTaskId =>
  name.replace(/_(\w)/g, (_, letter: string) => letter.toUpperCase()) as BenchTaskId;
