import { describe, expect, it } from 'vitest';
import { DRAWING_IDS, MATERIAL_IDS, TREATMENT_IDS } from '../../src/catalogue/ids.ts';
import { catalogue, renamed } from '../../src/catalogue/index.ts';
import {
  type Amount,
  type Condition,
  type DamageKind,
  MECHANISMS,
  ORIGINS,
  TYPE_GROUPS,
  ZONE_CLASSES,
} from '../../src/core/catalogue.ts';
import { gradeOfMeasure } from '../../src/core/grade.ts';
import { WOODS } from '../../src/core/physics/woods.ts';

// One walk through everything: whatever names something else must find it there.

const kinds = Object.entries(catalogue.damage);
const treatments = Object.entries(catalogue.treatments);
const measureAsks = (kind: DamageKind) => kind.asks.filter((ask) => ask.type === 'measure');

/** Every condition inside a condition, itself included. */
function parts(condition: Condition): readonly Condition[] {
  if ('all' in condition) return [condition, ...condition.all.flatMap(parts)];
  if ('any' in condition) return [condition, ...condition.any.flatMap(parts)];
  if ('not' in condition) return [condition, ...parts(condition.not)];
  return [condition];
}

const conditionsOf = (kind: DamageKind): readonly Condition[] =>
  [
    ...kind.grading.raises.map(({ when }) => when),
    ...kind.gates.map(({ when }) => when),
    ...kind.treatments.flatMap(({ when }) => (when ? [when] : [])),
  ].flatMap(parts);

describe('the catalogue', () => {
  it('is frozen through and through', () => {
    const open: string[] = [];
    const walk = (value: unknown, path: string): void => {
      if (typeof value !== 'object' || value === null) return;
      if (!Object.isFrozen(value)) open.push(path);
      for (const [key, inner] of Object.entries(value)) walk(inner, `${path}.${key}`);
    };
    walk(catalogue, 'catalogue');
    expect(open).toEqual([]);
  });

  it('is data and nothing else: it survives a trip through JSON', () => {
    expect(JSON.parse(JSON.stringify(catalogue))).toEqual(catalogue);
  });

  it('gives every entry of a table its own name', () => {
    for (const table of [
      'damage',
      'treatments',
      'types',
      'materials',
      'zones',
      'measures',
      'stations',
      'marks',
      'resources',
      'views',
      'pocketReferences',
    ] as const) {
      const terms = Object.values(catalogue[table]).map(({ term }) => term.toLowerCase());
      expect(new Set(terms).size, table).toBe(terms.length);
    }
  });

  it('lets no alias be the name of another damage, type or material', () => {
    for (const table of ['damage', 'types', 'materials'] as const) {
      const entries = Object.entries(catalogue[table]);
      for (const [id, { aliases }] of entries) {
        for (const [other, { term }] of entries) {
          if (other !== id)
            expect(
              aliases.map((alias: string) => alias.toLowerCase()),
              `${table} ${id}`,
            ).not.toContain(term.toLowerCase());
        }
      }
    }
  });

  it('spells its ids so that a stored record can carry them', () => {
    const key = /^[A-Za-z][A-Za-z0-9]{0,63}$/;
    const seen: string[] = [];
    for (const table of Object.values(catalogue)) {
      if (typeof table === 'object' && !Array.isArray(table)) seen.push(...Object.keys(table));
    }
    for (const [, { asks }] of kinds) {
      for (const ask of asks) {
        seen.push(ask.id);
        if (ask.type === 'choice') seen.push(...ask.options.map(({ id }) => id));
      }
    }
    seen.push(...catalogue.dueDiligence.map(({ id }) => id));
    expect(seen.filter((id) => !key.test(id))).toEqual([]);
  });

  it('keeps the lists of ids and the tables together, and sends no retired id to nowhere', () => {
    expect(Object.keys(catalogue.treatments)).toEqual([...TREATMENT_IDS]);
    expect(Object.keys(catalogue.materials)).toEqual([...MATERIAL_IDS]);
    for (const [old, id] of Object.entries(renamed)) {
      const tables = [catalogue.damage, catalogue.treatments, catalogue.materials, catalogue.zones, catalogue.types];
      expect(
        tables.some((table) => Object.hasOwn(table, old)),
        old,
      ).toBe(false);
      expect(
        tables.some((table) => Object.hasOwn(table, id)),
        id,
      ).toBe(true);
    }
  });
});

describe('sources', () => {
  it('stand behind every figure, and the ones named by number exist', () => {
    const cited = new Set<string>();
    const walk = (value: unknown, path: string): void => {
      if (typeof value !== 'object' || value === null) return;
      const { kind, text } = value as { kind?: unknown; text?: unknown };
      if (path.endsWith('.source')) {
        expect(['published', 'estimate', 'practice', 'memory', 'own'], path).toContain(kind);
        expect(String(text).length, path).toBeGreaterThan(3);
      }
      for (const [key, inner] of Object.entries(value)) {
        if (typeof inner === 'string') for (const [id] of inner.matchAll(/\bS\d\d\b/g)) cited.add(id);
        walk(inner, `${path}.${key}`);
      }
    };
    walk(catalogue, 'catalogue');
    for (const id of cited) expect(catalogue.sources, id).toHaveProperty(id);
    expect(cited.size).toBeGreaterThan(20);
  });

  it('are given by everything that holds figures', () => {
    for (const table of [
      'damage',
      'treatments',
      'types',
      'materials',
      'measures',
      'marks',
      'pocketReferences',
    ] as const) {
      for (const [id, entry] of Object.entries(catalogue[table]))
        expect(entry.source.text, `${table} ${id}`).toBeTruthy();
    }
    for (const [id, { newPrice, usedShare }] of Object.entries(catalogue.types)) {
      expect(newPrice.source.text, id).toBeTruthy();
      expect(usedShare.source.text, id).toBeTruthy();
    }
  });

  it('published ones name what was read', () => {
    for (const [, { source }] of [...kinds, ...treatments]) {
      if (source.kind === 'published') expect(source.text).toMatch(/\bS\d\d\b/);
    }
  });
});

describe.each(kinds)('damage %s', (_, kind) => {
  it('names mechanism, places, materials, stations and treatments that exist', () => {
    expect(MECHANISMS).toContain(kind.mechanism);
    for (const zoneClass of kind.appliesTo.zoneClasses) expect(ZONE_CLASSES).toContain(zoneClass);
    for (const group of kind.appliesTo.groups ?? []) expect(TYPE_GROUPS).toContain(group);
    if (kind.appliesTo.materials !== 'all') {
      expect(new Set(kind.appliesTo.materials).size).toBe(kind.appliesTo.materials.length);
      for (const id of kind.appliesTo.materials) expect(catalogue.materials).toHaveProperty(id);
    }
    expect(kind.stations.length).toBeGreaterThan(0);
    for (const id of kind.stations) expect(catalogue.stations).toHaveProperty(id);
    for (const { treatment } of kind.treatments) expect(catalogue.treatments).toHaveProperty(treatment);
  });

  it('asks every question once, grades by measures it asks for, and can be answered from its chips', () => {
    const ids = kind.asks.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const { ask, from } of kind.grading.by) {
      const asked = measureAsks(kind).find(({ id }) => id === ask);
      expect(asked, ask).toBeDefined();
      for (const [index, bound] of from.entries())
        if (index > 0) expect(bound).toBeGreaterThanOrEqual(from[index - 1] ?? 0);
      const reachable = new Set(asked?.chips.map((chip) => gradeOfMeasure(chip, from)));
      // Bounds that fall together name one grade only: the highest of them.
      const wanted = new Set(from.map((bound) => gradeOfMeasure(bound, from)));
      for (const grade of wanted) expect([...reachable], `grade ${grade} of ${ask}`).toContain(grade);
    }
  });

  it('offers chips that rise, lie on the scale and fit its steps', () => {
    for (const ask of measureAsks(kind)) {
      expect([...ask.chips], ask.id).toEqual([...ask.chips].sort((a, b) => a - b));
      expect(ask.chips.at(-1), ask.id).toBeLessThanOrEqual(ask.max);
      expect(ask.chips.length, ask.id).toBeLessThanOrEqual(5);
      expect(ask.step).toBeGreaterThan(0);
      expect(ask.max / ask.step, `${ask.id}: steps from one end to the other`).toBeLessThanOrEqual(2000);
      if (ask.unit === 'level') expect(ask.steps).toHaveLength(ask.max);
    }
  });

  it('has conditions about questions it asks, with answers that can be given', () => {
    for (const condition of conditionsOf(kind)) {
      if ('material' in condition) for (const id of condition.material) expect(catalogue.materials).toHaveProperty(id);
      if (!('ask' in condition)) continue;
      const ask = kind.asks.find(({ id }) => id === condition.ask);
      expect(ask, condition.ask).toBeDefined();
      if (!ask) continue;
      if (!('is' in condition)) expect(ask.type).toBe('measure');
      else if (typeof condition.is === 'boolean') expect(ask.type).toBe('yesNo');
      else expect(ask.type === 'choice' && ask.options.map(({ id }) => id)).toContain(condition.is);
    }
  });

  it('takes amounts from its measures, and only where the treatment’s time depends on one', () => {
    for (const { treatment, amount } of kind.treatments) {
      const per = catalogue.treatments[treatment]?.per;
      expect(per !== null, `${treatment} has an amount`).toBe(amount !== undefined);
      if (amount && 'from' in amount) {
        expect(measureAsks(kind).map(({ id }) => id)).toContain(amount.from);
        expect(amount.else).toBeGreaterThan(0);
      }
    }
  });

  it('has shares and chances that are shares and chances', () => {
    for (const share of [kind.treatability, kind.baseSuccess, kind.scoreFactor]) {
      expect(share).toBeGreaterThanOrEqual(0);
      expect(share).toBeLessThanOrEqual(1);
    }
    expect(kind.prior.grades.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
    const groups = new Set(
      Object.entries(catalogue.materials)
        .filter(([id]) => kind.appliesTo.materials === 'all' || kind.appliesTo.materials.includes(id))
        .map(([, { group }]) => group),
    );
    for (const group of Object.keys(kind.prior.presentIn ?? {})) expect([...groups]).toContain(group);
    for (const chances of [kind.prior.present, ...Object.values(kind.prior.presentIn ?? {})]) {
      expect(Object.keys(chances).sort()).toEqual([...ORIGINS].sort());
      for (const chance of Object.values(chances)) {
        expect(chance).toBeGreaterThan(0);
        expect(chance).toBeLessThan(1);
      }
    }
  });

  it('never gives a grade in its prior that its words say it cannot have', () => {
    for (const [index, word] of kind.grading.words.entries()) {
      expect(word.length).toBeGreaterThan(0);
      if (word.startsWith('Not used')) expect(kind.prior.grades[index]).toBe(0);
    }
  });

  it('says itself in one sentence and has a phrase for the report', () => {
    expect(kind.definition).toMatch(/^[A-Z].*\.$/);
    expect(kind.phrase).toContain('{measures}');
    if (kind.appliesTo.zoneClasses.some((zoneClass) => zoneClass !== 'whole')) expect(kind.phrase).toContain('{where}');
    expect(Object.keys(kind.detect).length).toBeGreaterThan(0);
  });
});

describe('treatments', () => {
  it('depend on one another without a circle', () => {
    const done = new Set<string>();
    const visit = (id: string, path: readonly string[]): void => {
      expect(path, `${[...path, id].join(' → ')}`).not.toContain(id);
      if (done.has(id)) return;
      for (const before of catalogue.treatments[id]?.after ?? []) visit(before, [...path, id]);
      done.add(id);
    };
    for (const [id] of treatments) visit(id, []);
  });

  it('are each reachable: part of every plan, for marks, called for by a damage, or brought by one that is', () => {
    const reached = new Set(treatments.filter(([, { always, forMarks }]) => always || forMarks).map(([id]) => id));
    for (const [, kind] of kinds) for (const { treatment } of kind.treatments) reached.add(treatment);
    for (const id of reached)
      for (const { treatment } of catalogue.treatments[id]?.brings ?? []) reached.add(treatment);
    expect([...TREATMENT_IDS].filter((id) => !reached.has(id))).toEqual([]);
  });

  it('bring others with fixed amounts, under conditions about the block alone', () => {
    const amountOf = (amount: Amount | undefined): boolean => amount === undefined || 'fixed' in amount;
    for (const [id, { brings }] of treatments) {
      for (const brought of brings) {
        expect(amountOf(brought.amount), id).toBe(true);
        const per = catalogue.treatments[brought.treatment]?.per;
        expect(per !== null, `${id} brings ${brought.treatment} with an amount`).toBe(brought.amount !== undefined);
        for (const condition of brought.when ? parts(brought.when) : []) {
          expect('ask' in condition || 'grade' in condition || 'zoneClass' in condition, id).toBe(false);
        }
      }
    }
  });

  it('name resources that exist, wait somewhere when they wait, and rise from optimistic to pessimistic', () => {
    for (const [id, { handsResources, waitResource, waitHours, setUpHours, per }] of treatments) {
      expect(handsResources).toContain('hands');
      for (const resource of handsResources) expect(catalogue.resources, id).toHaveProperty(resource);
      expect(waitResource !== null, id).toBe(waitHours.p > 0);
      if (waitResource) expect(catalogue.resources).toHaveProperty(waitResource);
      for (const { o, m, p } of [setUpHours, waitHours, ...(per ? [per.hours] : [])]) {
        expect(o).toBeLessThanOrEqual(m);
        expect(m).toBeLessThanOrEqual(p);
      }
    }
  });

  it('say how, why, and when they are done, and what to beware of', () => {
    for (const [id, { how, why, doneWhen, skipWhen, cautions }] of treatments) {
      for (const words of [how, why, doneWhen, skipWhen, ...cautions]) expect(words, id).toMatch(/[.:]$/);
      expect(cautions.length, id).toBeGreaterThan(0);
    }
  });

  it('warn wherever a step can hurt somebody', () => {
    const dangers: readonly (readonly [what: RegExp, caution: RegExp])[] = [
      [/acetone|white spirit|alcohol|shellac|varnish/i, /flame|alight|burn/i],
      [
        /chisel|gouge|saw|scraper|thin blade|plane|router|wire cutters/i,
        /cut|sharp|blade|slip|hand|finger|goggles|clamp/i,
      ],
      [/epoxy/i, /gloves|skin/i],
      [/steam|iron\b/i, /scald|steam/i],
      [/paper(s)? 120|wet-and-dry|vacuum/i, /mask|dust|goggles/i],
      [/mould/i, /mask|mould/i],
      [/freezer/i, /bag|open/i],
    ];
    for (const [id, { how, tools, cautions }] of treatments) {
      const text = [how, ...tools].join(' ');
      for (const [what, caution] of dangers) {
        if (what.test(text)) expect(cautions.join(' '), `${id}: ${what}`).toMatch(caution);
      }
    }
  });
});

describe('types, materials, stations, essentials', () => {
  it('types name zones, measures and drawings that exist, once each', () => {
    for (const [id, { zones, measures, drawing, newPrice, usedShare, parts: count }] of Object.entries(
      catalogue.types,
    )) {
      expect(new Set(zones).size, id).toBe(zones.length);
      expect(new Set(measures).size, id).toBe(measures.length);
      expect(zones).toContain('whole');
      for (const zone of zones) expect(catalogue.zones).toHaveProperty(zone);
      for (const measure of measures) expect(catalogue.measures).toHaveProperty(measure);
      expect(DRAWING_IDS).toContain(drawing);
      expect(newPrice.low).toBeLessThan(newPrice.high);
      expect(Number.isInteger(newPrice.low) && Number.isInteger(newPrice.high)).toBe(true);
      expect(usedShare.low).toBeLessThan(usedShare.high);
      expect(count.several).toBe(count.usual > 1);
    }
  });

  it('every zone is on some type, and every class of a type’s critical zones too', () => {
    const used = new Set(Object.values(catalogue.types).flatMap(({ zones }) => zones));
    expect(Object.keys(catalogue.zones).filter((id) => !used.has(id))).toEqual([]);
    for (const [id, { zones, criticalZones }] of Object.entries(catalogue.types)) {
      const classes = zones.map((zone) => catalogue.zones[zone]?.zoneClass);
      for (const zoneClass of criticalZones) expect(classes, id).toContain(zoneClass);
    }
  });

  it('usual faults of a material can occur in it, and its wood is in the movement table', () => {
    for (const [id, { usualFaults, wood, drawing }] of Object.entries(catalogue.materials)) {
      for (const fault of usualFaults) {
        const materials = catalogue.damage[fault]?.appliesTo.materials;
        expect(materials === 'all' || materials?.includes(id), `${id} ${fault}`).toBe(true);
      }
      if (wood) expect(WOODS).toHaveProperty(wood);
      if (drawing) expect(DRAWING_IDS).toContain(drawing);
    }
  });

  it('every measure is taken at a station', () => {
    const taken = new Set(Object.values(catalogue.stations).flatMap(({ measures }) => measures));
    expect(Object.keys(catalogue.measures).filter((id) => !taken.has(id))).toEqual([]);
  });

  it('every station shows something, and the walk takes about four minutes before photographs and talk', () => {
    for (const [id, { measures, asksAbout }] of Object.entries(catalogue.stations)) {
      const shows = kinds.some(([, { stations }]) => stations.includes(id));
      expect(shows || measures.length > 0 || asksAbout !== undefined, id).toBe(true);
    }
    const { photographs, talk, ...walk } = catalogue.stations;
    expect([photographs, talk]).not.toContain(undefined);
    const seconds = Object.values(walk).reduce((sum, station) => sum + station.seconds, 0);
    // "About four minutes for a plain block": trade handbook 1.7, from memory.
    expect(seconds).toBeGreaterThan(200);
    expect(seconds).toBeLessThan(280);
  });

  it('essentials can be met by ways that exist', () => {
    for (const { ways } of Object.values(catalogue.essentials)) {
      expect(ways.length).toBeGreaterThan(0);
      for (const way of ways) {
        if ('measure' in way) expect(catalogue.measures).toHaveProperty(way.measure);
        if ('station' in way) expect(catalogue.stations).toHaveProperty(way.station);
        if ('kind' in way) expect(catalogue.damage).toHaveProperty(way.kind);
      }
    }
  });

  it('the plan that only copies is made of treatments', () => {
    for (const id of catalogue.model.copyPlan) expect(catalogue.treatments).toHaveProperty(id);
  });
});
