import { TREATMENT_IDS, type TreatmentId } from '../ids.ts';
import { assembly } from './assembly.ts';
import { cleaning } from './cleaning.ts';
import type { Step } from './common.ts';
import { finishing } from './finishing.ts';
import { mending } from './mending.ts';
import { pests } from './pests.ts';
import { recording } from './recording.ts';
import { sparterie } from './sparterie.ts';

const byId: Record<TreatmentId, Step> = {
  ...recording,
  ...pests,
  ...cleaning,
  ...mending,
  ...assembly,
  ...sparterie,
  ...finishing,
};

/** Every treatment, in the trade's usual order. */
export const treatments = Object.fromEntries(TREATMENT_IDS.map((id) => [id, byId[id]])) as Record<TreatmentId, Step>;
