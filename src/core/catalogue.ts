/**
 * What a catalogue is. The core knows these shapes and no single entry: nothing here or beside it asks *which* damage
 * kind, treatment or material it holds. If a rule needs to know, the shape lacks a field; add it and let every entry answer.
 */

import type { ImportRules } from './import-charges.ts';
import type { FreezeObstacle } from './physics/freezing.ts';
import type { WoodKind } from './physics/insects.ts';
import type { Watch } from './quarantine.ts';

export const GRADES = [0, 1, 2, 3, 4] as const;
/** 0 none · 1 trace · 2 minor · 3 major · 4 critical. */
export type Grade = (typeof GRADES)[number];

export const TYPE_GROUPS = ['crown', 'brim', 'full', 'puzzle', 'small', 'support', 'pan', 'last', 'head'] as const;
export type TypeGroup = (typeof TYPE_GROUPS)[number];

export const ZONE_CLASSES = ['work', 'line', 'joint', 'opening', 'base', 'whole'] as const;
export type ZoneClass = (typeof ZONE_CLASSES)[number];

export const MECHANISMS = [
  'structure',
  'loss',
  'surface',
  'biology',
  'geometry',
  'assembly',
  'repair',
  'contamination',
  'provenance',
  'sparterie',
  'shell',
  'metal',
] as const;
/** The family a damage belongs to: what did it, hence the shape of its mark on the drawing. */
export type Mechanism = (typeof MECHANISMS)[number];

/** Where a figure or statement comes from. `estimate` shows as "trade estimate". */
export interface Source {
  readonly kind: 'published' | 'estimate' | 'practice' | 'memory' | 'own';
  /** What was read, or on what the estimate rests. */
  readonly text: string;
}

/** Optimistic, most likely, pessimistic. */
export interface ThreePoint {
  readonly o: number;
  readonly m: number;
  readonly p: number;
}

/** A statement about one finding and its block, as data: printable, testable, the same for every reader. */
export type Condition =
  | { readonly ask: string; readonly atLeast: number }
  | { readonly ask: string; readonly below: number }
  | { readonly ask: string; readonly is: boolean | string }
  | { readonly grade: { readonly from?: Grade; readonly to?: Grade } }
  | { readonly zoneClass: readonly ZoneClass[] }
  | { readonly group: readonly TypeGroup[] }
  | { readonly material: readonly string[] }
  | { readonly parts: 'one' | 'several' }
  | { readonly shapeValue: readonly ShapeValue[] }
  | { readonly all: readonly Condition[] }
  | { readonly any: readonly Condition[] }
  | { readonly not: Condition };

export type AskUnit =
  | 'mm'
  | 'cm2'
  | 'pct'
  | 'count'
  | 'perCm2'
  | 'perDm2'
  /** A step of a named scale, 0–4. */
  | 'level';

/** One question of a damage kind's sheet. Its answer lies in the finding under the same id. */
export type Ask =
  | {
      readonly id: string;
      readonly type: 'measure';
      readonly label: string;
      readonly unit: AskUnit;
      /** Step of the + and − buttons. */
      readonly step: number;
      readonly max: number;
      /** Values worth one tap. */
      readonly chips: readonly number[];
      /** For `level`: the name of each step from 1. */
      readonly steps?: readonly string[];
      readonly hint?: string;
    }
  | { readonly id: string; readonly type: 'yesNo'; readonly label: string; readonly hint?: string }
  | {
      readonly id: string;
      readonly type: 'choice';
      readonly label: string;
      readonly options: readonly { readonly id: string; readonly label: string }[];
      readonly hint?: string;
    };

/** Lower bounds of grades 1–4 on one measure. */
export interface Threshold {
  readonly ask: string;
  readonly from: readonly [number, number, number, number];
}

export interface Grading {
  readonly by: readonly Threshold[];
  /** The worst measure decides, or the mildest. */
  readonly combine: 'max' | 'min';
  /** What lifts the grade beyond its measures, in order. */
  readonly raises: readonly {
    readonly when: Condition;
    readonly effect: { readonly add: number } | { readonly atLeast: Grade } | { readonly set: Grade };
    readonly why: string;
  }[];
  /** How to tell grades 1–4 apart, in words. */
  readonly words: readonly [string, string, string, string];
}

/** How much of a treatment one finding asks for, in the treatment's own unit. */
export type Amount =
  | { readonly from: string; readonly times?: number; readonly else: number }
  | { readonly fixed: number };

/** A treatment a damage calls for: at which grade, under which condition, and how much. */
export interface TreatmentUse<Treatment extends string = string> {
  readonly treatment: Treatment;
  readonly fromGrade: 1 | 2 | 3 | 4;
  readonly when?: Condition;
  readonly amount?: Amount;
  /** Why this step, in half a line; shown in the plan. */
  readonly why: string;
  /** When it fails, the restoration fails: later steps are not worth taking. */
  readonly essential: boolean;
}

/**
 * What the wood science can work out for a finding of a kind. `from` names the asks its figures come from, by what they
 * are to the sum; which steps of the plan show the outcome, each treatment says in `advises`. The sums are in `advice.ts`.
 */
export type Physics = { readonly when?: Condition } & (
  | {
      /** Whether a crack can be closed, at which humidity, by how many clamps, or whether it is to be filled. */
      readonly does: 'closeCrack';
      /** A round block with the crack towards its middle, or boards on either side of a line. */
      readonly across: 'round' | 'board';
      readonly from: {
        readonly gap: string;
        readonly length: string;
        /** How far the faces reach into the wood; without it, right through. */
        readonly depth?: string;
        readonly closesByHand?: string;
      };
    }
  /** Volume, layers and waiting for each filler. */
  | {
      readonly does: 'fill';
      readonly hollow: 'cap';
      readonly from: { readonly across: string; readonly depth: string; readonly count: string };
    }
  | {
      readonly does: 'fill';
      readonly hollow: 'wedge';
      /** Usual width where none is asked for. */
      readonly mouthMm?: number;
      readonly from: {
        readonly mouth?: string;
        readonly length: string;
        readonly depth: string;
        readonly moving?: string;
      };
    }
  | { readonly does: 'fill'; readonly hollow: 'bowl'; readonly from: { readonly area: string; readonly depth: string } }
  /** Which insect made the holes, if any did; and how long to keep the block apart. */
  | { readonly does: 'rankBorers' | 'quarantine'; readonly from: HoleAsks }
  /** Whether mould grows in the owner's room, and whether to refuse the block. */
  | { readonly does: 'mouldRisk'; readonly from: { readonly area: string; readonly moisture: string } }
  /** The scale against what the wood should weigh: the survey's own measures, no ask. */
  | { readonly does: 'weigh'; readonly from: Readonly<Record<never, string>> }
);
export type PhysicsName = Physics['does'];

/** Asks about holes: size; dust, by the physics' own names; `yes` or `no`; `active`, `inactive` or `unknown`. */
export interface HoleAsks {
  readonly hole: string;
  readonly dust: string;
  readonly pinningLine: string;
  readonly activity: string;
}

export type GateEffect =
  /** Not to be taken home at all, unless a specialist will treat it. */
  | 'refuse'
  /** Keep apart, sealed, before it comes near the workshop. */
  | 'quarantine'
  /** Alive: the verdict cannot be better than risky. */
  | 'live'
  /** To be tested first: the verdict cannot be better than risky. */
  | 'test'
  /** Dry before anything else. */
  | 'dry'
  /** No dry sanding, no heat. */
  | 'noSanding';

/** A rule that stands outside the sums. */
export interface Gate {
  readonly when: Condition;
  readonly effects: readonly GateEffect[];
  readonly advice: string;
  /** What a block kept apart for it is watched for; without it, no watching ends it. */
  readonly watch?: Watch;
}

export const ORIGINS = ['workshopInUse', 'dealer', 'dampStore', 'unknown'] as const;
/** Where a block has been kept lately: what a kind's prior depends on besides the material. */
export type Origin = (typeof ORIGINS)[number];

export const MATERIAL_GROUPS = ['wood', 'metal', 'sparterie', 'shell', 'plastic', 'covering'] as const;
export type MaterialGroup = (typeof MATERIAL_GROUPS)[number];

/** Chance that a block not yet looked at has the damage, and how bad it then is. Trade estimate, counted as 8 blocks. */
export interface Prior {
  readonly present: Readonly<Record<Origin, number>>;
  /** Where a material group differs: its own chances. */
  readonly presentIn?: Partial<Readonly<Record<MaterialGroup, Readonly<Record<Origin, number>>>>>;
  /** Shares of grades 1–4 when present; sum 1. */
  readonly grades: readonly [number, number, number, number];
}

export const SENSES = ['sight', 'raking', 'touch', 'knock', 'smell', 'uv', 'weight', 'other'] as const;
export type Sense = (typeof SENSES)[number];

export interface DamageKind<
  Treatment extends string = string,
  Material extends string = string,
  Station extends string = string,
> {
  readonly term: string;
  readonly aliases: readonly string[];
  /** One sentence: what it is. */
  readonly definition: string;
  readonly mechanism: Mechanism;
  readonly appliesTo: {
    readonly materials: readonly Material[] | 'all';
    readonly zoneClasses: readonly ZoneClass[];
    /** Only blocks of several parts can have it. */
    readonly onlySeveralParts?: true;
    readonly groups?: readonly TypeGroup[];
  };
  /** Stations of the walk that show it; the first is the main one. */
  readonly stations: readonly Station[];
  readonly detect: Partial<Record<Sense, string>>;
  readonly asks: readonly Ask[];
  readonly grading: Grading;
  /** Share of the loss that a repair that holds takes away, 0–1. */
  readonly treatability: number;
  /** Chance that the repair of a middling case holds, 0–1. */
  readonly baseSuccess: number;
  /** Multiplies the zone weight: 1 for most, 0.3 for dust and smell, 0 where use does not suffer. */
  readonly scoreFactor: number;
  /** Whether grade 4 off the base makes a block risky, and whether grade 2 or more makes it repairable rather than sound. */
  readonly counts: { readonly critical: boolean; readonly repair: boolean };
  readonly treatments: readonly TreatmentUse<Treatment>[];
  readonly gates: readonly Gate[];
  /** What can be worked out for a finding of it; in the order it is shown. */
  readonly physics?: readonly Physics[];
  readonly blocksCopying: boolean;
  readonly prior: Prior;
  /** Sentence for a finding of it in a report: `{where}` becomes the zone, `{measures}` the measures. */
  readonly phrase: string;
  readonly notes: string;
  readonly source: Source;
  readonly retired?: true;
}

export interface Treatment<Id extends string = string, Resource extends string = string> {
  readonly term: string;
  /** How it is done, one or two lines. */
  readonly how: string;
  readonly why: string;
  /** What one sees when it is done. */
  readonly doneWhen: string;
  readonly setUpHours: ThreePoint;
  readonly per: {
    /** Name of the quantity: areaPct, lengthMm, count, areaCm2, coats. */
    readonly unit: 'areaPct' | 'lengthMm' | 'areaCm2' | 'count' | 'coats';
    readonly size: number;
    readonly hours: ThreePoint;
  } | null;
  readonly waitHours: ThreePoint;
  readonly waitResource: Resource | null;
  readonly handsResources: readonly Resource[];
  /** Whole minor units of the trade's reference currency (pence). */
  readonly consumables: number;
  readonly tools: readonly string[];
  readonly after: readonly Id[];
  /** Part of every plan. */
  readonly always?: true;
  /** In the work on every block with marks worth keeping: once for each, before the first step that touches marks. */
  readonly forMarks?: true;
  /** When in a plan it brings others with it. */
  readonly brings: readonly {
    readonly treatment: Id;
    readonly when?: Condition;
    readonly amount?: Amount;
    readonly why: string;
  }[];
  /** When it may be left out, in words. */
  readonly skipWhen: string;
  /** Whether it is abrasive or wet, so that marks worth keeping are protected first. */
  readonly touchesMarks: boolean;
  readonly cautions: readonly string[];
  /** Written down day by day, or stage by stage, on the page of the block's quarantine. */
  readonly keptAt?: 'quarantine';
  /** What of a finding's physics bears on this step, and is shown with it. */
  readonly advises?: readonly PhysicsName[];
  /** Kinds of work whose pace is learnt together. */
  readonly reference:
    | 'record'
    | 'cleanAndSeal'
    | 'glueAndFill'
    | 'joinery'
    | 'puzzle'
    | 'sparterie'
    | 'pests'
    | 'metal';
  readonly source: Source;
}

export interface BlockType<
  Measure extends string = string,
  Zone extends string = string,
  Drawing extends string = string,
> {
  readonly term: string;
  readonly aliases: readonly string[];
  readonly group: TypeGroup;
  readonly purpose: string;
  readonly parts: { readonly usual: number; readonly words: string; readonly several: boolean };
  readonly undercut: boolean;
  readonly mustHave: readonly string[];
  readonly criticalZones: readonly ZoneClass[];
  readonly zones: readonly Zone[];
  readonly measures: readonly Measure[];
  readonly drawing: Drawing;
  /** Whole pence of the reference price list (GBP); the owner's own figure overrides. */
  readonly newPrice: { readonly low: number; readonly high: number; readonly source: Source };
  readonly usedShare: { readonly low: number; readonly high: number; readonly source: Source };
  readonly notes: string;
  readonly source: Source;
}

export interface Material<Damage extends string = string> {
  readonly term: string;
  readonly aliases: readonly string[];
  readonly group: MaterialGroup;
  readonly densityKgM3: readonly [number, number];
  readonly properties: string;
  readonly recognise: string;
  readonly usualFaults: readonly Damage[];
  readonly insectFood: boolean;
  readonly steam: string;
  readonly pins: string;
  /** Key into the wood movement table, where the wood is in it. */
  readonly wood?: string;
  /** What borers tell woods apart by. */
  readonly woodKind?: WoodKind;
  /** Built of thin layers, which mould goes through rather than over. */
  readonly layers?: 'laminated' | 'papierMache' | 'sparterie';
  /** What speaks against freezing it. */
  readonly freezing?: FreezeObstacle;
  /** Drawing to use instead of the type's own, for built-up shapes. */
  readonly drawing?: string;
  readonly source: Source;
}

export interface Zone {
  readonly term: string;
  readonly zoneClass: ZoneClass;
}

export interface MeasureKind {
  readonly term: string;
  readonly short: string;
  readonly unit: 'mm' | 'g' | 'count' | 'pct';
  /** Repeatable to, in its unit. */
  readonly precision: number;
  readonly step: number;
  readonly max: number;
  readonly source: Source;
}

export interface Station<Measure extends string = string> {
  readonly term: string;
  /** What to do, one line, in the imperative. */
  readonly how: string;
  readonly seconds: number;
  readonly needs: readonly string[];
  readonly measures: readonly Measure[];
  readonly asksAbout?: 'parts' | 'photographs' | 'story' | 'marks';
  readonly caution?: string;
  /** What to ask a seller one cannot visit, with the photograph that would answer it. */
  readonly askSeller: string;
  /** Whether it can be done from photographs alone. */
  readonly fromPhotographs: boolean;
}

/** Something that must not stay unknown; satisfied by any one of its ways. */
export interface Essential {
  readonly term: string;
  readonly ways: readonly (
    | { readonly measure: string }
    | { readonly station: string }
    | { readonly kind: string }
    | { readonly field: 'partsFound' }
  )[];
  /** Not asked of these groups (a stand has no rope line). */
  readonly notFor?: readonly TypeGroup[];
  /** Asked only where a material of the block is food for insects. */
  readonly onlyInsectFood?: true;
}

export interface MarkKind {
  readonly term: string;
  readonly pattern: string;
  readonly tells: string;
  readonly weight: string;
  /** Read the text as a size in the tape's company. */
  readonly isSize: boolean;
  readonly mayBePersonal: boolean;
  readonly source: Source;
}

export const SHAPE_VALUES = ['common', 'uncommon', 'rare', 'unique'] as const;
export type ShapeValue = (typeof SHAPE_VALUES)[number];

export const VERDICTS = ['sound', 'repairable', 'risky', 'copyOnly', 'leave'] as const;
export type Verdict = (typeof VERDICTS)[number];

/** The figures of the reference model; trade estimates to be tuned with logged actuals. */
export interface Model {
  readonly severity: readonly [number, number, number, number, number];
  readonly zoneWeight: Record<TypeGroup, Record<ZoneClass, number>>;
  readonly successMultiplier: readonly [number, number, number, number, number];
  /** No repair is given less than this chance. */
  readonly leastSuccess: number;
  readonly copyShare: Record<ShapeValue, number>;
  /** Share of the new price a block still fetches, as pattern or ornament, when its restoration fails. */
  readonly fallbackShare: Record<ShapeValue, number>;
  /** Families of damage that decide whether a block holds together for one careful forming. */
  readonly structural: readonly Mechanism[];
  /** Treatments of the plan that only takes a copy of the shape. */
  readonly copyPlan: readonly string[];
  readonly verdict: {
    readonly copyBelowScore: number;
    readonly copyBelowOdds: number;
    readonly riskyBelowScore: number;
    readonly riskyBelowOdds: number;
    readonly riskyFromUnknowns: number;
    readonly repairableBelowScore: number;
  };
  readonly source: Source;
}

export interface Resource {
  readonly term: string;
  readonly capacity: number;
  readonly note: string;
}

export interface PocketReference {
  readonly term: string;
  readonly kind: 'card' | 'coin' | 'paper' | 'coinOfConstantWidth';
  readonly region: 'anywhere' | 'uk' | 'euro' | 'us';
  /** Diameter (point to point where it has corners), or long side × short side, mm. */
  readonly mm: readonly number[];
  /** Of a coin with corners: flat to flat. */
  readonly acrossFlatsMm?: number;
  /** Of a card. */
  readonly thicknessMm?: number;
  readonly cornerRadiusMm?: number;
  readonly source: Source;
}

export interface Term {
  readonly term: string;
  readonly text: string;
}

/** One way to take the shape off a block and leave the block. */
export interface CopyWay {
  readonly term: string;
  readonly text: string;
  readonly wants: readonly string[];
  /** Blocks it can be done to; all without it. */
  readonly when?: Condition;
  readonly cautions: readonly string[];
  readonly source: Source;
}

/** A check before first use, or a rule of the shelf. */
export interface UseRule {
  readonly term: string;
  /** What is done and what must come of it. */
  readonly text: string;
  /** Blocks it is asked of; all without it. */
  readonly when?: Condition;
  /** Treatment that, once done, answers it. */
  readonly treatment?: string;
  /** A block becomes ready only when it was passed, or left out with a reason. */
  readonly essential?: true;
  readonly cautions: readonly string[];
  readonly source: Source;
}

export interface Catalogue {
  readonly version: string;
  readonly types: Readonly<Record<string, BlockType>>;
  readonly materials: Readonly<Record<string, Material>>;
  readonly zones: Readonly<Record<string, Zone>>;
  readonly measures: Readonly<Record<string, MeasureKind>>;
  readonly damage: Readonly<Record<string, DamageKind>>;
  readonly treatments: Readonly<Record<string, Treatment>>;
  readonly stations: Readonly<Record<string, Station>>;
  readonly essentials: Readonly<Record<string, Essential>>;
  readonly marks: Readonly<Record<string, MarkKind>>;
  readonly resources: Readonly<Record<string, Resource>>;
  readonly pocketReferences: Readonly<Record<string, PocketReference>>;
  readonly gradeWords: readonly [Term, Term, Term, Term, Term];
  readonly mechanisms: Readonly<Record<Mechanism, string>>;
  readonly verdicts: Readonly<Record<Verdict, Term>>;
  readonly shapeValues: Readonly<Record<ShapeValue, Term>>;
  /** `proves`: shows a mark or a paper, so that it belongs to the block's story. */
  readonly views: Readonly<Record<string, Term & { readonly proves?: true }>>;
  readonly channels: Readonly<Record<string, Term>>;
  readonly transfers: Readonly<Record<string, Term>>;
  readonly certainties: Readonly<
    /** `refuted`: kept to be seen, but no part of the story any more. */
    Record<string, { readonly term: string; readonly say: string; readonly needs: string; readonly refuted?: true }>
  >;
  readonly evidence: Readonly<Record<string, Term>>;
  readonly anatomy: readonly Term[];
  readonly photoRules: readonly string[];
  readonly beforeFirstUse: Readonly<Record<string, UseRule>>;
  readonly storing: Readonly<Record<string, UseRule>>;
  readonly copyWays: Readonly<Record<string, CopyWay>>;
  readonly dueDiligence: readonly { readonly id: string; readonly ask: string }[];
  /** Sets of import rules to start from, each with its day; a sale keeps its own edited copy. */
  readonly importRules: Readonly<Record<string, Term & { readonly rules: ImportRules }>>;
  readonly law: readonly {
    readonly topic: string;
    readonly text: string;
    readonly source: Source;
    /** Work beside which it is said. */
    readonly bearsOn?: 'copying';
  }[];
  readonly safety: readonly string[];
  readonly sources: Readonly<Record<string, string>>;
  readonly model: Model;
}

/** The entry under `id`, whether or not the catalogue has it. Own keys only: an id from a file is not to be trusted. */
export function entry<T>(table: Readonly<Record<string, T>>, id: string | null | undefined): T | undefined {
  return id != null && Object.hasOwn(table, id) ? table[id] : undefined;
}
