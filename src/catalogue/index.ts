import type { Catalogue } from '../core/catalogue.ts';
import { beforeFirstUse, storing } from './before-use.ts';
import { copyWays } from './copying.ts';
import { damage } from './damage/index.ts';
import { essentials } from './essentials.ts';
import { importRules } from './import-rules.ts';
import { marks } from './marks.ts';
import { materials } from './materials.ts';
import { measures } from './measures.ts';
import { model } from './model.ts';
import { photoRules, views } from './photographs.ts';
import { pocketReferences } from './pocket-references.ts';
import { certainties, dueDiligence, evidence, transfers } from './provenance.ts';
import { resources } from './resources.ts';
import { sources } from './sources.ts';
import { stations } from './stations.ts';
import { treatments } from './treatments/index.ts';
import { types } from './types/index.ts';
import { anatomy, channels, gradeWords, law, mechanisms, safety, shapeValues, verdicts } from './words.ts';
import { zones } from './zones.ts';

export type { DamageId } from './damage/index.ts';
export type { DrawingId, MaterialId, TreatmentId } from './ids.ts';
export type { MeasureId } from './measures.ts';
export type { ResourceId } from './resources.ts';
export type { StationId } from './stations.ts';
export type { BlockTypeId } from './types/index.ts';
export type { ZoneId } from './zones.ts';

function deepFreeze<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    for (const inner of Object.values(value)) deepFreeze(inner);
  }
  return value;
}

/** Ids that were given up, each with its successor. An id is never deleted or used again. */
export const renamed: Readonly<Record<string, string>> = {};

/** Everything the app knows about the trade, frozen. */
export const catalogue: Catalogue = deepFreeze({
  version: '1.0.0',
  types,
  materials,
  zones,
  measures,
  damage,
  treatments,
  stations,
  essentials,
  marks,
  resources,
  pocketReferences,
  gradeWords,
  mechanisms,
  verdicts,
  shapeValues,
  views,
  channels,
  transfers,
  certainties,
  evidence,
  anatomy,
  photoRules,
  beforeFirstUse,
  storing,
  copyWays,
  dueDiligence,
  importRules,
  law,
  safety,
  sources,
  model,
});
