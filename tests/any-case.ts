import fc from 'fast-check';
import { catalogue } from '../src/catalogue/index.ts';
import type { Case } from '../src/core/assess.ts';
import { applicableKinds, type Setting, settingOf, zonesFor } from '../src/core/block.ts';
import { type Ask, type DamageKind, entry, type Grade, SHAPE_VALUES, type Treatment } from '../src/core/catalogue.ts';
import { VAT_BASES } from '../src/core/fees.ts';
import type { PaceBook } from '../src/core/plan.ts';
import type { Finding, HatBlock, SaleTerms, Settings } from '../src/core/records.ts';
import { aBlock, aFinding, aSurvey, someSettings, someTerms } from './make.ts';

/*
 * Random cases from the real catalogue: any type and material, every kind that can occur there, in zones that fit, its
 * answers over their whole range. Everything is built from plain numbers taken modulo what there is to choose from, so
 * that fast-check can shrink a failure to a small one.
 */

const pick = <T>(list: readonly T[], n: number): T => {
  const one = list[n % list.length];
  if (one === undefined) throw new Error('Nothing to pick from.');
  return one;
};

const typeIds = Object.keys(catalogue.types);
const materialIds = Object.keys(catalogue.materials);
const kindIds = Object.keys(catalogue.damage);

const index = fc.nat({ max: 9_999 });
const money = fc.option(fc.nat({ max: 60_000 }));

/** Blocks, known and unknown, whole and in parts, with the owner's figures or without. */
export const anyBlock: fc.Arbitrary<HatBlock> = fc
  .record({
    type: index,
    typeKnown: fc.nat({ max: 19 }),
    materials: fc.array(index, { maxLength: 2 }),
    parts: fc.option(fc.tuple(fc.nat({ max: 6 }), fc.nat({ max: 6 }))),
    shapeValue: fc.option(fc.constantFrom(...SHAPE_VALUES)),
    copyable: fc.boolean(),
    priceAsked: money,
    newPrice: money,
    equalUsedPrice: money,
    fallbackPrice: money,
    use: fc.option(fc.tuple(fc.nat({ max: 20 }), fc.nat({ max: 8_000 }), fc.nat({ max: 100 }))),
  })
  .map(({ type, typeKnown, materials, parts, use, ...rest }) =>
    aBlock({
      ...rest,
      blockType: typeKnown === 19 ? 'notInThisCatalogue' : typeKnown === 18 ? null : pick(typeIds, type),
      materials: [...new Set(materials.map((n) => pick(materialIds, n)))],
      partsFound: parts?.[0] ?? null,
      partsExpected: parts?.[1] ?? null,
      hatsPerYear: use?.[0] ?? null,
      marginPerHat: use?.[1] ?? null,
      blockShare: use === null ? null : use[2] / 100,
    }),
  );

interface RawFinding {
  readonly kind: number;
  readonly zone: number;
  readonly strange: number;
  readonly hand: number;
  /** For each ask: last digit 8 or 9 leaves it unanswered, the rest chooses the answer. */
  readonly answers: readonly number[];
}

/** What one finding is made from. `strange` of 0 is an ordinary finding, so that a shrunk one is too. */
export const rawFinding: fc.Arbitrary<RawFinding> = fc.record({
  kind: index,
  zone: index,
  strange: fc.nat({ max: 39 }),
  hand: fc.nat({ max: 24 }),
  answers: fc.array(fc.nat({ max: 99_999 }), { minLength: 5, maxLength: 5 }),
});

/** An answer from anywhere in an ask's range: as often a value on or beside a bound as one from the whole of it. */
function answerTo(ask: Ask, kind: DamageKind, value: number): number | boolean | string {
  if (ask.type === 'yesNo') return value % 2 === 1;
  if (ask.type === 'choice') return pick(ask.options, value).id;
  const bounds = [...(kind.grading.by.find((one) => one.ask === ask.id)?.from ?? []), ...ask.chips, 0];
  const steps = Math.floor(ask.max / ask.step);
  if (value % 2 === 0) return Math.min(ask.max, pick(bounds, value >> 1));
  return Math.min(ask.max, ((value >> 1) % (steps + 1)) * ask.step);
}

const known = new WeakMap<HatBlock, { readonly setting: Setting; readonly kinds: readonly string[] }>();

/** What the rules make of a block, worked out once for all its findings. */
function aboutBlock(block: HatBlock) {
  const before = known.get(block);
  if (before) return before;
  const setting = settingOf(block, catalogue);
  const about = { setting, kinds: applicableKinds(setting, catalogue) };
  known.set(block, about);
  return about;
}

/** The n-th finding on a block. */
export function findingFrom(raw: RawFinding, block: HatBlock, number: number): Finding {
  const { setting, kinds: here } = aboutBlock(block);
  // One in forty is of a kind of a newer catalogue, one in a zone of it, one of a kind that cannot occur here.
  const id =
    raw.strange === 39 ? 'ofANewerCatalogue' : raw.strange === 38 ? pick(kindIds, raw.kind) : pick(here, raw.kind);
  const kind = entry(catalogue.damage, id);
  const zones = kind ? zonesFor(kind, setting, catalogue) : [];
  const zone = raw.strange === 37 ? 'zoneOfANewerCatalogue' : zones.length > 0 ? pick(zones, raw.zone) : 'whole';
  const answers: Record<string, number | boolean | string> = {};
  for (const [n, ask] of (kind?.asks ?? []).entries()) {
    const digits = raw.answers[n] ?? 0;
    if (digits % 10 < 8) answers[ask.id] = answerTo(ask, kind as DamageKind, Math.floor(digits / 10));
  }
  return aFinding({ number, kind: id, zone, answers, gradeByHand: raw.hand >= 20 ? ((raw.hand - 20) as Grade) : null });
}

const anyTerms: fc.Arbitrary<SaleTerms> = fc
  .record({
    rate: fc.nat({ max: 40 }),
    above: fc.option(fc.tuple(fc.integer({ min: 1, max: 500 }), fc.nat({ max: 40 }))),
    minimumPremium: fc.nat({ max: 1_000 }),
    platform: fc.nat({ max: 8 }),
    vat: fc.nat({ max: 25 }),
    vatOn: fc.constantFrom(...VAT_BASES),
    fixed: fc.nat({ max: 3_000 }),
    step: fc.option(fc.constantFrom(100, 200, 500)),
  })
  .map(({ rate, above, minimumPremium, platform, vat, vatOn, fixed, step }) =>
    someTerms({
      way: 'auction',
      premium: above
        ? [
            { upTo: above[0] * 100, rate: rate / 100 },
            { upTo: null, rate: above[1] / 100 },
          ]
        : [{ upTo: null, rate: rate / 100 }],
      minimumPremium,
      platformRate: platform / 100,
      vatRate: vat / 100,
      vatOn,
      fixedCosts: [{ what: 'Post', amount: fixed }],
      bidSteps: step === null ? [] : [{ from: 0, step }],
    }),
  );

const anySettings: fc.Arbitrary<Settings> = fc
  .record({
    hourlyRate: fc.nat({ max: 5_000 }),
    gain: fc.nat({ max: 60 }),
    discount: fc.nat({ max: 20 }),
    horizonYears: fc.nat({ max: 15 }),
    eveningHours: fc.integer({ min: 1, max: 16 }),
    evenings: fc.array(fc.boolean(), { minLength: 7, maxLength: 7 }),
  })
  .map(({ gain, discount, eveningHours, evenings, ...rest }) =>
    someSettings({
      ...rest,
      gain: gain / 100,
      discountRate: discount / 100,
      eveningHours: eveningHours / 4,
      // A week without an evening is refused, and tested elsewhere.
      evenings: evenings.map((one, day) => one || day === 2),
    }),
  );

const spread = fc.oneof(
  fc.nat({ max: 50 }).map((n) => ({ kind: 'logNormal' as const, sigma: n / 100 })),
  fc
    .tuple(fc.nat({ max: 50 }), fc.integer({ min: 4, max: 40 }))
    .map(([n, freedom]) => ({ kind: 'logStudent' as const, scale: n / 100, freedom })),
);
const ownPace = fc
  .tuple(fc.integer({ min: 50, max: 200 }), spread)
  .map(([n, one]) => ({ median: n / 100, spread: one }));

export const anyPace: fc.Arbitrary<PaceBook> = fc
  .record({ cleanAndSeal: fc.option(ownPace), glueAndFill: fc.option(ownPace), sparterie: fc.option(ownPace) })
  .map((pace) => Object.fromEntries(Object.entries(pace).filter(([, own]) => own !== null)) as PaceBook);

const REFERENCES = [
  'record',
  'cleanAndSeal',
  'glueAndFill',
  'joinery',
  'puzzle',
  'sparterie',
  'pests',
  'metal',
] as const satisfies readonly Treatment['reference'][];

/** The same pace whatever the work. */
export const onePace: fc.Arbitrary<PaceBook> = ownPace.map((own) =>
  Object.fromEntries(REFERENCES.map((reference) => [reference, own])),
);

const BITS = 25;
/** A set of numbers below 50 as bits; shrinks to the empty one. */
const someOf50 = fc.tuple(fc.nat({ max: 2 ** BITS - 1 }), fc.nat({ max: 2 ** BITS - 1 }));
const isIn = ([low, high]: readonly [number, number], n: number): boolean =>
  (((n % 50 < BITS ? low : high) >> (n % BITS)) & 1) === 1;

/** What a failing case is printed as: what matters of it, without the envelopes of its records. */
function inShort({ block, survey, findings, terms, settings, pace }: Case): string {
  const { name, objectNumber, place, stamps, id, device, schema, type, made, maker, note, ...said } = block;
  const blockSaid = Object.fromEntries(Object.entries(said).filter(([, value]) => value !== null));
  return JSON.stringify({
    block: blockSaid,
    noneSeen: Object.keys(survey.noneSeen).length,
    findings: findings.map(({ number, kind, zone, answers, gradeByHand }) => ({
      number,
      kind,
      zone,
      answers,
      gradeByHand,
    })),
    terms,
    settings: { rate: settings.hourlyRate, gain: settings.gain, evening: settings.eveningHours },
    pace,
  });
}

interface Extent {
  readonly maxFindings?: number;
  /** Every kind looked for, so that a finding more is a finding and not also a doubt less. */
  readonly everythingLookedAt?: boolean;
  readonly pace?: fc.Arbitrary<PaceBook>;
}

/** Any case at all. */
export function anyCase({
  maxFindings = 8,
  everythingLookedAt = false,
  pace = anyPace,
}: Extent = {}): fc.Arbitrary<Case> {
  return fc
    .record({
      block: anyBlock,
      raw: fc.array(rawFinding, { maxLength: maxFindings }),
      skipped: someOf50,
      alsoSkipped: someOf50,
      stationsSkipped: someOf50,
      taped: fc.boolean(),
      terms: anyTerms,
      settings: anySettings,
      pace,
    })
    .map(({ block, raw, skipped, alsoSkipped, stationsSkipped, taped, terms, settings, pace }) => {
      const findings = raw.map((one, n) => findingFrom(one, block, n + 1));
      const found = new Set(findings.map(({ kind }) => kind));
      const none = aboutBlock(block).kinds.filter(
        (kind, n) => !found.has(kind) && (everythingLookedAt || !(isIn(skipped, n) && isIn(alsoSkipped, n))),
      );
      const stations = Object.keys(catalogue.stations).filter(
        (_, n) => everythingLookedAt || !isIn(stationsSkipped, n),
      );
      const facts: Case = {
        block,
        survey: aSurvey({
          noneSeen: Object.fromEntries(none.map((kind) => [kind, true as const])),
          stationsDone: Object.fromEntries(stations.map((station) => [station, true as const])),
          measures: taped ? { circRopeMm: 570 } : {},
        }),
        findings,
        terms,
        settings,
        pace,
      };
      return Object.defineProperty(facts, fc.toStringMethod, { value: () => inShort(facts) });
    });
}

/** One step worse: a measure that grades, or a count, raised where it was taken; or the grade set by hand raised. */
export function worse(finding: Finding, which: number, by: number): Finding | null {
  if (finding.gradeByHand !== null && finding.gradeByHand < 4)
    return { ...finding, gradeByHand: (finding.gradeByHand + 1) as Grade };
  const kind = entry<DamageKind>(catalogue.damage, finding.kind);
  const raisable = (kind?.asks ?? []).filter(
    (ask) =>
      ask.type === 'measure' &&
      (ask.unit === 'count' || kind?.grading.by.some((one) => one.ask === ask.id)) &&
      typeof finding.answers[ask.id] === 'number' &&
      (finding.answers[ask.id] as number) < ask.max,
  );
  if (!kind || raisable.length === 0) return null;
  const ask = pick(raisable, which);
  if (ask.type !== 'measure') return null;
  const now = finding.answers[ask.id] as number;
  const higher = [...(kind.grading.by.find((one) => one.ask === ask.id)?.from ?? []), ...ask.chips, ask.max]
    .filter((value) => value > now && value <= ask.max)
    .sort((a, b) => a - b);
  const next = by % 2 === 0 ? Math.min(ask.max, now + ask.step) : pick(higher, by >> 1);
  return { ...finding, answers: { ...finding.answers, [ask.id]: next } };
}

/** Freezes a value and all it holds: what a pure function may be given. */
export function deepFreeze<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    for (const inner of Object.values(value)) deepFreeze(inner);
  }
  return value;
}
