import { describe, expect, it } from 'vitest';
import { BENCH_TASKS } from '../../../src/core/physics/bench-times.ts';
import { CAUTION_IDS, CAUTIONS, type CautionId } from '../../../src/core/physics/cautions.ts';
import { CLEANING_AGENTS } from '../../../src/core/physics/cleaning-agents.ts';
import { CRACK_ACTION_DETAILS } from '../../../src/core/physics/crack-advice.ts';
import { FILLERS } from '../../../src/core/physics/fillers.ts';
import { FINISHES } from '../../../src/core/physics/finishes.ts';
import { FREEZE_OBSTACLES, FREEZING } from '../../../src/core/physics/freezing.ts';
import { GLUES } from '../../../src/core/physics/glues.ts';
import { HUMIDIFYING } from '../../../src/core/physics/humidifying.ts';
import { MOULD_CLEANING } from '../../../src/core/physics/mould-risk.ts';
import {
  OILS,
  OTHER_MATERIALS,
  SELF_HEATING,
  SHELLAC,
  SPARTERIE_BINDER,
} from '../../../src/core/physics/oils-and-waxes.ts';
import { OLD_GLUE } from '../../../src/core/physics/old-glue.ts';
import { OTHER_TREATMENTS } from '../../../src/core/physics/other-treatments.ts';
import { ROPE_EDGE } from '../../../src/core/physics/rope-edge.ts';
import { SANDING } from '../../../src/core/physics/sanding.ts';
import { NEW_BLOCK_MOISTURE_PCT } from '../../../src/core/physics/woods.ts';

const rows = <T extends object>(...tables: T[]) =>
  tables.flatMap((table) => Object.values(table) as { readonly cautions: readonly CautionId[] }[]);
const methods = [
  ...rows<object>(
    OLD_GLUE,
    BENCH_TASKS,
    CLEANING_AGENTS,
    CRACK_ACTION_DETAILS,
    FILLERS,
    FINISHES,
    FREEZE_OBSTACLES,
    GLUES,
    OILS,
    OTHER_MATERIALS,
    OTHER_TREATMENTS,
  ),
  ...MOULD_CLEANING,
  FREEZING,
  ROPE_EDGE,
  HUMIDIFYING,
  SANDING,
  SELF_HEATING,
  SHELLAC,
  SPARTERIE_BINDER,
  NEW_BLOCK_MOISTURE_PCT,
];

describe('cautions', () => {
  it('each say what, when, what to do and whom to believe first', () => {
    for (const id of CAUTION_IDS) {
      const { hazard, when, line, deferTo, source } = CAUTIONS[id];
      for (const text of [hazard, when, line, deferTo, source]) expect(text.length, id).toBeGreaterThan(2);
    }
  });

  it('are every one named by a method, so that a screen can show it beside the step', () => {
    const named = new Set(methods.flatMap(({ cautions }) => cautions));
    expect(CAUTION_IDS.filter((id) => !named.has(id))).toEqual([]);
  });

  it.each([
    ['peroxide', CLEANING_AGENTS.peroxide.cautions, ['peroxidePinsOut', 'neverMix']],
    ['freezing', FREEZING.cautions, ['freezeRefused', 'freezeAnimalGlue', 'staySealed', 'freezeCanFail']],
    ['closing a crack with damp', CRACK_ACTION_DETAILS.humidifyFirst.cautions, ['looseWhileDamp', 'dampSlowly']],
    ['drying oil', BENCH_TASKS.oilDrying.cautions, ['oilyRags']],
    ['sanding', SANDING.cautions, ['hardwoodDust', 'leadPaint', 'mercury']],
    ['heat', OTHER_TREATMENTS.heat.cautions, ['noOven']],
    ['insecticide', OTHER_TREATMENTS.surfaceInsecticide.cautions, ['insecticide']],
  ])('stand beside %s', (_method, has, needs) => {
    expect(has).toEqual(expect.arrayContaining(needs));
  });
});
