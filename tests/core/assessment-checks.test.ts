import { describe, expect, it } from 'vitest';
import { catalogue } from '../../src/catalogue/index.ts';
import { entry, type Grade, type ShapeValue, type TypeGroup, type ZoneClass } from '../../src/core/catalogue.ts';
import { pertMean } from '../../src/core/estimate.ts';
import { gradeFinding } from '../../src/core/grade.ts';
import { planOfTreatments } from '../../src/core/plan.ts';
import { salvage } from '../../src/core/salvage.ts';
import { ceiling } from '../../src/core/value.ts';
import { verdictOn } from '../../src/core/verdict.ts';
import { answersFor, kindOf, treatmentOf } from '../handbook/as-answers.ts';
import checks from '../handbook/trade-checks.json' with { type: 'json' };

// The trade handbook's own reference model, row by row. The rows test that this implementation is that model; they are
// no evidence that the model is right. Values: own model, from memory (each row's `confidence` says so).

interface Check {
  readonly id: string;
  readonly group: string;
  readonly inputs: Record<string, never>;
  readonly expected: number | string;
  readonly tolerance: number;
  readonly source: string;
  readonly confidence: string;
}
const rows = checks as unknown as readonly Check[];
const of = (group: string): readonly Check[] => rows.filter((row) => row.group === group);

type DamageRow = readonly [code: string, zoneClass: ZoneClass, grade: Grade];

function lossesOf(damages: readonly DamageRow[]) {
  return damages.map(([code, zoneClass, grade]) => {
    const kind = entry(catalogue.damage, kindOf(code));
    if (!kind) throw new Error(`No kind for ${code}`);
    return { kind, zoneClass, grade };
  });
}

describe('grading', () => {
  it.each(of('grading').map((row) => [`${row.id} (${row.source}; ${row.confidence})`, row] as const))(
    '%s',
    (_, row) => {
      const { damage, measures, flags } = row.inputs as unknown as {
        damage: string;
        measures: Record<string, number>;
        flags: readonly string[];
      };
      const kind = entry(catalogue.damage, kindOf(damage));
      if (!kind) throw new Error(`No kind for ${damage}`);
      const { answers, zoneClass } = answersFor(damage, measures, flags);
      const context = { group: 'crown', materials: ['lime'], parts: 'one', shapeValue: 'common', zoneClass } as const;
      expect(gradeFinding(kind, answers, context).grade).toBe(row.expected);
    },
  );
});

describe('salvage', () => {
  it.each(of('salvage').map((row) => [`${row.id} (${row.source}; ${row.confidence})`, row] as const))(
    '%s',
    (_, row) => {
      const inputs = row.inputs as unknown as {
        type_group: TypeGroup;
        damages: readonly DamageRow[];
        plan: readonly { treatment: string; quantity: number | null }[];
        shape_value: ShapeValue;
        active: boolean;
        unknowns: number;
        odds: number;
        v_ok: number;
        v_fail: number;
        cost: number;
        gain: number;
      };
      const what = row.id.split('.').at(-1);
      const near = (value: number): void =>
        expect(Math.abs(value - Number(row.expected))).toBeLessThanOrEqual(row.tolerance + 1e-9);
      if (what === 'hours') {
        const list = new Map(
          inputs.plan.map(({ treatment, quantity }) => [
            treatmentOf(treatment),
            { because: [], amount: quantity ?? 0, essential: false },
          ]),
        );
        near(pertMean(planOfTreatments(list, catalogue).hours));
        return;
      }
      if (what === 'ceiling') {
        near(
          ceiling({
            odds: inputs.odds,
            valueOk: inputs.v_ok,
            valueFail: inputs.v_fail,
            cost: inputs.cost,
            gain: inputs.gain,
          }),
        );
        return;
      }
      const losses = lossesOf(inputs.damages);
      const sums = salvage(losses, inputs.type_group, catalogue.model);
      if (what === 'score_found') near(sums.found);
      else if (what === 'score_after') near(sums.after);
      else if (what === 'odds') near(sums.odds);
      else {
        const findings = losses.map(({ kind, zoneClass, grade }, index) => ({
          id: String(index),
          grade,
          zoneClass,
          counts: kind.counts,
        }));
        const poison = inputs.damages.findIndex(([code, , grade]) => code === 'HAZ' && grade >= 2);
        const gates = [
          ...(inputs.active ? [{ effects: ['live'] as const, advice: '', findingId: '0' }] : []),
          ...(poison >= 0 ? [{ effects: ['test'] as const, advice: '', findingId: String(poison) }] : []),
        ];
        const { verdict } = verdictOn(
          {
            ...sums,
            findings,
            gates,
            unknownEssentials: inputs.unknowns,
            shapeValue: inputs.shape_value,
            copyable: true,
          },
          catalogue.model,
        );
        expect(verdict).toBe(row.expected === 'copy-only' ? 'copyOnly' : row.expected);
      }
    },
  );

  it('gives every finding its share, and the shares add up to what the score lost', () => {
    for (const row of of('salvage').filter(({ id }) => id.endsWith('score_found'))) {
      const { type_group, damages } = row.inputs as unknown as { type_group: TypeGroup; damages: readonly DamageRow[] };
      const sums = salvage(lossesOf(damages), type_group, catalogue.model);
      expect(sums.losses.reduce((sum, { points }) => sum + points, 0)).toBeCloseTo(100 - sums.found, 9);
      expect(sums.losses.reduce((sum, { pointsAfter }) => sum + pointsAfter, 0)).toBeCloseTo(100 - sums.after, 9);
    }
  });
});
