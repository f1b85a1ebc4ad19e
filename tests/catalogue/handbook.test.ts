import { describe, expect, it } from 'vitest';
import { catalogue } from '../../src/catalogue/index.ts';
import { camel, kindOf, materialOf, treatmentOf, typeOf, zoneOf } from '../handbook/as-answers.ts';
import { checksOf, titleOf } from '../handbook/checks.ts';
import * as codes from '../handbook/codes.ts';
import damages from '../handbook/trade-damages.json' with { type: 'json' };
import treatments from '../handbook/trade-treatments.json' with { type: 'json' };
import vocabulary from '../handbook/trade-vocabulary.json' with { type: 'json' };

// The catalogue against the tables of the trade handbook it was written from. The handbook marks most of these figures
// "from memory": equality here means faithful copying, not truth.

interface DamageRow {
  readonly code: string;
  readonly label: string;
  readonly grade_on: readonly string[];
  readonly combine: string;
  readonly thresholds: Readonly<Record<string, readonly number[]>>;
  readonly treatability: number;
  readonly base_success: number;
  readonly treatments: readonly string[];
  readonly flags: readonly string[];
  readonly blocks_copying: boolean;
  readonly zones: readonly string[];
  readonly applies_to: readonly string[];
  readonly source: string;
}
const damageRows = damages as unknown as readonly DamageRow[];

/** Treatments our rules use beyond the handbook's list for the kind, and those of its list they leave out; each on purpose. */
const differences: Readonly<Record<string, { more?: readonly string[]; fewer?: readonly string[] }>> = {
  // Sealing comes with scraping, scraping with filling: brought, not listed again.
  CRK: { fewer: ['T26'] },
  // The spline's seam is filled; truing comes with it. A clamped split is glued as part of closing it.
  SPL: { more: ['T16'], fewer: ['T13', 'T24'] },
  DEL: { fewer: ['T24'] },
  // Fittings are a kind of their own.
  JNT: { fewer: ['T37'] },
  BRK: { more: ['T16', 'T38'] },
  LOS: { more: ['T32'], fewer: ['T24'] },
  GOU: { fewer: ['T24'] },
  // Resin bends pins: no consolidant where pins go.
  PIN: { fewer: ['T12'] },
  STF: { more: ['T38'] },
  ROU: { fewer: ['T26'] },
  FIN: { more: ['T36', 'T38'] },
  SCO: { more: ['T32'], fewer: ['T26'] },
  // Dusting is part of every plan.
  WRM: { fewer: ['T03'] },
  GRZ: { fewer: ['T03'] },
  ROT: { more: ['T40'] },
  // Truing comes with a flattened board; a crown's base is planed without one.
  KEY: { fewer: ['T19'] },
  HRD: { fewer: ['T09'] },
  FIL: { more: ['T32'] },
  DEC: { more: ['T24', 'T36'], fewer: ['T26'] },
  // Stiffening comes with a patch.
  SPT: { fewer: ['T33'] },
  SPD: { fewer: ['T33'] },
  PMD: { fewer: ['T31', 'T33'] },
};

describe.each(damageRows.map((row) => [`${row.code} ${row.label} (${row.source})`, row] as const))('%s', (_, row) => {
  const kind = catalogue.damage[kindOf(row.code)];
  if (!kind) throw new Error(`No kind for ${row.code}`);

  it('has the handbook’s bounds, shares and reach', () => {
    expect(kind.grading.combine).toBe(row.combine);
    expect(Object.fromEntries(kind.grading.by.map(({ ask, from }) => [ask, [...from]]))).toEqual(
      Object.fromEntries(row.grade_on.map((name) => [camel(name), row.thresholds[name]])),
    );
    expect(kind.treatability).toBe(row.treatability);
    expect(kind.baseSuccess).toBe(row.base_success);
    expect(kind.blocksCopying).toBe(row.blocks_copying);
    expect([...kind.appliesTo.zoneClasses]).toEqual(row.zones);
    const materials = kind.appliesTo.materials === 'all' ? 'all' : [...kind.appliesTo.materials].sort();
    expect(materials).toEqual(row.applies_to[0] === '*' ? 'all' : [...new Set(row.applies_to.map(materialOf))].sort());
  });

  it('raises grades at least where the handbook’s flags do', () => {
    expect(kind.grading.raises.length).toBeGreaterThanOrEqual(row.flags.length);
  });

  it('calls for the handbook’s treatments, save where a reason is written down', () => {
    const ours = new Set(kind.treatments.map(({ treatment }) => treatment));
    const { more = [], fewer = [] } = differences[row.code] ?? {};
    const theirs = [...row.treatments, ...more].filter((code) => !fewer.includes(code)).map(treatmentOf);
    expect([...ours].sort()).toEqual([...new Set(theirs)].sort());
  });
});

describe.each(treatments.map((row) => [`${row.code} ${row.label} (${row.source})`, row] as const))('%s', (_, row) => {
  const treatment = catalogue.treatments[treatmentOf(row.code)];
  if (!treatment) throw new Error(`No treatment for ${row.code}`);

  it('has the handbook’s hours, waits and consumables', () => {
    expect(treatment.setUpHours).toEqual(row.setup_h);
    expect(treatment.per).toEqual(
      row.per ? { unit: camel(row.per.measure), size: row.per.unit, hours: row.per.h } : null,
    );
    expect(treatment.waitHours).toEqual(row.wait_h);
    expect(treatment.waitResource).toBe(row.wait_resource ? camel(row.wait_resource) : null);
    expect([...treatment.handsResources]).toEqual(row.hands_resource.map(camel));
    expect(treatment.consumables).toBe(Math.round(row.consumables_gbp * 100));
  });

  it('comes after all the handbook puts before it', () => {
    for (const code of row.after) expect(treatment.after).toContain(treatmentOf(code));
  });

  it('keeps every caution of the handbook', () => {
    // By their longer words, since ours name damage in words where the handbook has codes.
    const said = treatment.cautions.join(' ').toLowerCase();
    for (const caution of row.cautions) {
      const words = caution.toLowerCase().match(/[a-z°]{5,}/g) ?? [];
      const kept = words.filter((word) => said.includes(word));
      expect(kept.length / Math.max(1, words.length), caution).toBeGreaterThanOrEqual(0.8);
    }
  });
});

describe('the model', () => {
  const { model } = vocabulary;

  it('has the reference figures', () => {
    expect(catalogue.model.severity).toEqual(model.severity);
    expect(catalogue.model.zoneWeight).toEqual(model.zone_weight);
    expect(catalogue.model.successMultiplier).toEqual(model.success_multiplier_by_grade);
    expect(catalogue.model.copyShare).toEqual(model.copy_share);
  });

  it('weighs lightly what the handbook weighs lightly, and not at all what has no function', () => {
    for (const { code } of damageRows) {
      const light = (model.light as Readonly<Record<string, number>>)[code];
      const factor = model.no_function_weight.includes(code) ? 0 : (light ?? 1);
      expect(catalogue.damage[kindOf(code)]?.scoreFactor, code).toBe(factor);
    }
  });

  it('draws its lines where the verdict rules do', () => {
    const [, copy, risky, repairable] = model.verdict_rules as readonly string[];
    const { verdict } = catalogue.model;
    expect(copy).toContain(`score_after < ${verdict.copyBelowScore} or odds < ${verdict.copyBelowOdds}`);
    expect(risky).toContain(`score_after < ${verdict.riskyBelowScore}, or odds < ${verdict.riskyBelowOdds}`);
    expect(risky).toContain(`${verdict.riskyFromUnknowns}+ unknown essentials`);
    expect(repairable).toContain(`score_found < ${verdict.repairableBelowScore}`);
    expect(model.odds).toContain(`max(${catalogue.model.leastSuccess},`);
    const excepted = (rule: string | undefined, code: string) =>
      rule?.match(/\(([^)]*) excepted\)/)?.[1]?.includes(code) ?? false;
    for (const { code } of damageRows) {
      const counts = catalogue.damage[kindOf(code)]?.counts;
      expect(counts?.critical, `${code} critical`).toBe(!excepted(risky, code));
      expect(counts?.repair, `${code} repair`).toBe(!excepted(repairable, code));
    }
  });

  it('has as many essentials as the handbook', () => {
    expect(Object.keys(catalogue.essentials)).toHaveLength(model.essentials.length);
  });

  it('makes a copy for what the handbook charges for one', () => {
    // Copy ceiling of lot L01: (1 − 0.15)·0.05·150 − C = −92.56 at 14 an hour, so C = 98.935.
    const { copyPlan } = catalogue.model;
    const cost = copyPlan.reduce((sum, id) => {
      const { setUpHours, consumables } = catalogue.treatments[id] ?? {
        setUpHours: { o: 0, m: 0, p: 0 },
        consumables: 0,
      };
      return sum + 14 * ((setUpHours.o + 4 * setUpHours.m + setUpHours.p) / 6) + consumables / 100;
    }, 0);
    expect(cost).toBeCloseTo(0.85 * 0.05 * 150 + 92.56, 1);
  });
});

describe('the vocabulary', () => {
  it('maps every code of the handbook, and has nothing beyond it but what is listed', () => {
    const pairs = [
      [damageRows.map(({ code }) => code), codes.damageIds, catalogue.damage, []],
      // The handbook says “never sand marks”; here it is a step of its own.
      [treatments.map(({ code }) => code), codes.treatmentIds, catalogue.treatments, ['protectMarks']],
      [vocabulary.types.map(({ code }) => code), codes.typeIds, catalogue.types, []],
      [vocabulary.materials.map(({ code }) => code), codes.materialIds, catalogue.materials, []],
      // A brim has four quarters, as a crown has four sides.
      [
        vocabulary.zones.map(({ code }) => code),
        codes.zoneIds,
        catalogue.zones,
        ['brimFront', 'brimRight', 'brimBack', 'brimLeft'],
      ],
      [vocabulary.measures.map(({ code }) => code), codes.measureIds, catalogue.measures, []],
      [vocabulary.marks.map(({ code }) => code), codes.markIds, catalogue.marks, []],
      [vocabulary.resources.map(({ code }) => code), codes.resourceIds, catalogue.resources, []],
      [vocabulary.stations.map(({ code }) => code), codes.stationIds, catalogue.stations, []],
      [vocabulary.views, codes.viewIds, catalogue.views, []],
    ] as const;
    for (const [theirs, map, table, more] of pairs) {
      expect(Object.keys(map).sort()).toEqual([...theirs].sort());
      expect([...Object.values(map), ...more].sort()).toEqual(Object.keys(table).sort());
    }
    expect(vocabulary.sources.filter((id) => id !== 'M').sort()).toEqual(Object.keys(catalogue.sources).sort());
  });

  it.each(vocabulary.types.map((row) => [row.code, row] as const))('type %s', (code, row) => {
    const type = catalogue.types[typeOf(code)];
    if (!type) throw new Error(`No type for ${code}`);
    expect(type.group).toBe(row.group);
    expect(type.undercut).toBe(row.undercut);
    expect([...type.mustHave]).toEqual(row.must_have);
    expect([...type.criticalZones]).toEqual(row.critical_zones);
    for (const measure of row.measures) expect(type.measures).toContain(camel(measure));
    expect([type.newPrice.low, type.newPrice.high]).toEqual([
      row.replacement_new_gbp.low * 100,
      row.replacement_new_gbp.high * 100,
    ]);
    expect([type.usedShare.low, type.usedShare.high]).toEqual([row.used_share_of_new.low, row.used_share_of_new.high]);
  });

  it.each(vocabulary.materials.map((row) => [row.code, row] as const))('material %s', (code, row) => {
    const material = catalogue.materials[materialOf(code)];
    if (!material) throw new Error(`No material for ${code}`);
    expect([...material.densityKgM3]).toEqual(row.density_kg_m3);
    expect(material.insectFood).toBe(row.insect_food);
    expect(material.steam).toBe(row.tolerates_steam);
    expect(material.pins).toBe(row.holds_pins);
    expect(material.properties).toBe(row.properties);
    expect(material.recognise).toBe(row.how_to_recognise);
  });

  it('zones have the handbook’s classes, measures its unit and precision, resources its capacity', () => {
    for (const row of vocabulary.zones)
      expect(catalogue.zones[zoneOf(row.code)]?.zoneClass, row.code).toBe(row.zone_class);
    for (const row of vocabulary.measures) {
      const measure = catalogue.measures[camel(row.code)];
      expect(measure?.unit, row.code).toBe(row.unit === '%' ? 'pct' : row.unit);
      expect(measure?.precision, row.code).toBe(row.expected_precision);
    }
    for (const row of vocabulary.resources)
      expect(catalogue.resources[camel(row.code)]?.capacity, row.code).toBe(row.capacity);
  });

  it('stations come in the handbook’s order and show what it says they show', () => {
    expect(Object.keys(catalogue.stations)).toEqual(vocabulary.stations.map(({ code }) => codes.stationIds[code]));
    for (const { code, finds } of vocabulary.stations) {
      for (const found of finds) {
        expect(catalogue.damage[kindOf(found)]?.stations, `${found} at ${code}`).toContain(codes.stationIds[code]);
      }
    }
  });
});

describe('pocket references', () => {
  const { pocketReferences: own } = catalogue;
  const ids: Readonly<Record<string, string>> = {
    'uk.1p': 'uk1p',
    'uk.2p': 'uk2p',
    'uk.5p': 'uk5p',
    'uk.10p': 'uk10p',
    'uk.20p': 'uk20p',
    'uk.50p': 'uk50p',
    'uk.gbp1': 'ukPound',
    'uk.gbp2': 'ukTwoPounds',
    'eu.1c': 'euro1c',
    'eu.2c': 'euro2c',
    'eu.5c': 'euro5c',
    'eu.10c': 'euro10c',
    'eu.20c': 'euro20c',
    'eu.50c': 'euro50c',
    'eu.1e': 'euro1',
    'eu.2e': 'euro2',
    'us.1c': 'usCent',
    'us.5c': 'usNickel',
    'us.10c': 'usDime',
    'us.25c': 'usQuarter',
    'us.50c': 'usHalf',
    'us.1d': 'usDollar',
  };
  const sheets: Readonly<Record<string, string>> = {
    'iso216.a4': 'a4',
    'iso216.a5': 'a5',
    'iso216.a6': 'a6',
    'us.letter': 'usLetter',
  };

  function measured(code: string): number | undefined {
    if (code === 'iso7810.id1.w') return own.bankCard?.mm[0];
    if (code === 'iso7810.id1.h') return own.bankCard?.mm[1];
    if (code === 'iso7810.id1.t') return own.bankCard?.thicknessMm;
    if (code === 'iso7810.id1.r') return own.bankCard?.cornerRadiusMm;
    if (code === 'uk.gbp1_flat') return own.ukPound?.acrossFlatsMm;
    // The handbook calls a sheet's short side w and its long side h; we put the long side first.
    const sheet = sheets[code.slice(0, -2)];
    if (sheet) return own[sheet]?.mm[code.endsWith('.h') ? 0 : 1];
    return own[ids[code] ?? '']?.mm[0];
  }

  it.each(checksOf('reference_object').map((row) => [titleOf(row), row] as const))('%s', (_, row) => {
    expect(measured(row.id.replace(/^ref\./, ''))).toBe(row.expected);
  });

  it('covers all 35 rows of the table', () => {
    expect(checksOf('reference_object')).toHaveLength(35);
  });

  it('says of seven-sided coins that they are not round', () => {
    const constantWidth = Object.entries(own).filter(([, { kind }]) => kind === 'coinOfConstantWidth');
    expect(constantWidth.map(([id]) => id).sort()).toEqual(['uk20p', 'uk50p']);
  });
});
