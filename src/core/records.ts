import * as z from 'zod/mini';
import { ORIGINS, SHAPE_VALUES } from './catalogue.ts';
import { ROOM_BOUNDS } from './climate.ts';
import { VAT_BASES } from './fees.ts';
import { isDay } from './physics/civil-date.ts';

// Before any schema: zod otherwise probes `new Function`, which our content policy forbids and reports.
z.config({ jitless: true });

/** The meaning of a stored record's JSON. Raised with a named step in `store/migrations.ts` and a frozen record in the tests. */
export const SCHEMA = 1;

/**
 * Hybrid-clock stamp: 12 hex digits of Unix milliseconds, 4 of a counter, the device's id; sorts as text in causal order.
 * Source: Kulkarni et al. 2014, hybrid logical clocks (from memory).
 */
export const Stamp = z.string().check(z.regex(/^[0-9a-f]{12}-[0-9a-f]{4}-[0-9a-z]{8}$/));
export const Id = z.string().check(z.regex(/^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/));
export const Sha256 = z.string().check(z.regex(/^[0-9a-f]{64}$/));
/** Key of an entry in a catalogue that may be newer than this app: kept whether or not it is known. */
const Key = z.string().check(z.regex(/^[A-Za-z][A-Za-z0-9]{0,63}$/));
const Text = z.string().check(z.maxLength(20_000));
/** Money: whole minor units of the record's currency. */
const Money = z.nullable(z.int().check(z.gte(-1_000_000_000), z.lte(1_000_000_000)));
const Currency = z.string().check(z.regex(/^[A-Z]{3}$/));
const Finite = z.number();
/** A moment: UTC, RFC 3339. One no clock shows is refused here: sums over it would throw far from where it came in. */
const Instant = z.string().check(
  z.regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d{1,3})?Z$/),
  z.refine((at) => Number.isFinite(Date.parse(at))),
);
/** How far the clocks there and then stood from UTC, `+01:00`: an instant alone does not say what the wall clock showed. */
const Offset = z.string().check(z.regex(/^[+-]\d\d:\d\d$/));
/** A day of the calendar where the owner is, `YYYY-MM-DD`, 1900 to 2199: what is counted in days, as a quarantine is. */
const Day = z.string().check(z.regex(/^(19|20|21)\d\d-\d\d-\d\d$/), z.refine(isDay));
/** A day of the calendar, `YYYY-MM-DD`. */
const IsoDate = z.string().check(z.regex(/^[1-9]\d{3}-\d\d-\d\d$/));
/** A date that may be uncertain: what was typed, and its EDTF level-1 form where one was understood. */
export const UncertainDate = z.object({ words: Text, edtf: z.nullable(z.string().check(z.maxLength(60))) });

/**
 * Words written at a path without knowing of those that stand there, by when they were written; `text` null for words
 * that were read and written over. Put away by someone who has seen them, or taken out again.
 */
const OtherWords = z.object({
  at: Stamp,
  text: z.nullable(Text),
  putAway: z.optional(z.object({ at: Stamp, yes: z.boolean() })),
});
export type OtherWords = z.infer<typeof OtherWords>;

/** What every record carries so that two phones can be merged: who wrote which field when, and whether it is gone. */
const envelope = {
  id: Id,
  schema: z.int(),
  device: z.string().check(z.regex(/^[0-9a-z]{8}$/)),
  /** Field path → stamp of its last change. Maps are stamped per key: `measures.lengthMm`. */
  stamps: z.record(z.string(), Stamp),
  /** Tombstone: stamp of the removal. */
  deleted: z.nullable(Stamp),
  /** Field path → what `core/merge-words.ts` keeps of a merge; absent until two phones wrote in one field. */
  otherWords: z.optional(z.record(z.string(), z.array(OtherWords).check(z.maxLength(200)))),
};

export const PLACES = ['lookingAt', 'quarantine', 'toDo', 'onTheBench', 'ready', 'letGo'] as const;
export type Place = (typeof PLACES)[number];

export const PINS = ['in', 'out'] as const;
export type Pin = (typeof PINS)[number];

/** What a catalogue says of a lot at a sale and what the buyer makes of it; of a block by itself and of a job lot alike. */
const lotFigures = {
  /** The saleroom's own estimate. */
  estimateLow: z.optional(Money),
  estimateHigh: z.optional(Money),
  /** Bid that stands, somebody else's. */
  bidNow: z.optional(Money),
  /** Taken or left by hand, whatever the sums say. */
  pinned: z.optional(z.nullable(z.enum(PINS))),
  /** Why it was not bought; absent or null while that is open. */
  notBought: z.optional(z.nullable(Key)),
  /** Seen in pictures only; absent or null says what the sale's channel says. */
  fromPictures: z.optional(z.nullable(z.boolean())),
};

export const PATHS = ['restore', 'copy'] as const;
export type Path = (typeof PATHS)[number];

export const HatBlock = z.object({
  ...envelope,
  type: z.literal('block'),
  name: Text,
  /** The owner's number or the lot's ticket. */
  objectNumber: Text,
  blockType: z.nullable(Key),
  materials: z.array(Key),
  place: z.enum(PLACES),
  saleId: z.nullable(Id),
  /** Job lot it is sold with, at one price for all. Later than schema 1's first records, so it may be absent. */
  lotId: z.optional(z.nullable(Id)),
  ...lotFigures,
  /** Where it has been kept; null takes the sale's. */
  origin: z.nullable(z.enum(ORIGINS)),
  partsFound: z.nullable(z.int().check(z.gte(0), z.lte(99))),
  partsExpected: z.nullable(z.int().check(z.gte(0), z.lte(99))),
  shapeValue: z.nullable(z.enum(SHAPE_VALUES)),
  copyable: z.boolean(),
  currency: Currency,
  priceAsked: Money,
  /** The owner's own figures; null falls back to the catalogue's, which says so. */
  newPrice: Money,
  equalUsedPrice: Money,
  fallbackPrice: Money,
  /** Hats a year on this block and the margin on each: value in use. */
  hatsPerYear: z.nullable(Finite),
  marginPerHat: Money,
  blockShare: z.nullable(Finite),
  coverPhotoId: z.nullable(Id),
  made: UncertainDate,
  maker: Text,
  note: Text,
  /** What is to be done with it, where the owner has chosen: restored, or only its shape copied. */
  path: z.optional(z.nullable(z.enum(PATHS))),
  /** Part of the example sale, removable with it. */
  example: z.boolean(),
});
export type HatBlock = z.infer<typeof HatBlock>;

export const STAGES = ['before', 'during', 'after'] as const;
export type Stage = (typeof STAGES)[number];

export const Survey = z.object({
  ...envelope,
  type: z.literal('survey'),
  blockId: Id,
  stage: z.enum(STAGES),
  reason: Text,
  surveyor: Text,
  begun: Instant,
  /** Damage kinds looked for and not found. A kind absent here and without a finding was not looked for. */
  noneSeen: z.record(Key, z.literal(true)),
  /** Stations of the walk done; a skipped one is simply absent. */
  stationsDone: z.record(Key, z.literal(true)),
  measures: z.record(Key, Finite),
  note: Text,
});
export type Survey = z.infer<typeof Survey>;

const Unit = z.number().check(z.gte(0), z.lte(1));

export const Finding = z.object({
  ...envelope,
  type: z.literal('finding'),
  blockId: Id,
  surveyId: Id,
  /** Number shown on the drawing and in the report; never reused within a block. */
  number: z.int(),
  kind: Key,
  zone: Key,
  /** Part of a puzzle, from 1. */
  part: z.nullable(z.int()),
  /** Where on the drawing, if tapped exactly. */
  at: z.nullable(z.object({ view: Key, x: Unit, y: Unit })),
  /** Answers to the kind's asks: measures in the ask's unit, yes/no, or a choice's id. */
  answers: z.record(Key, z.union([Finite, z.boolean(), Key])),
  gradeByHand: z.nullable(z.union([z.literal(0), z.literal(1), z.literal(2), z.literal(3), z.literal(4)])),
  gradeReason: Text,
  note: Text,
});
export type Finding = z.infer<typeof Finding>;

export const Mark = z.object({
  ...envelope,
  type: z.literal('mark'),
  blockId: Id,
  kind: Key,
  /** Transcribed as seen. */
  text: Text,
  zone: Key,
  /** Chosen reading of a size stamp, if one was chosen. */
  reading: z.nullable(Key),
  keep: z.boolean(),
  note: Text,
});
export type Mark = z.infer<typeof Mark>;

export const Statement = z.object({
  ...envelope,
  type: z.literal('statement'),
  blockId: Id,
  /** Order in the chain, oldest first; fractions allowed so that one can go between two. */
  position: Finite,
  transfer: Key,
  /** From or by whom. */
  party: Text,
  partyIsPrivate: z.boolean(),
  place: Text,
  when: UncertainDate,
  certainty: Key,
  evidence: z.array(z.object({ kind: Key, text: Text })),
  /** Passed straight to the next owner; otherwise a gap is shown. */
  direct: z.boolean(),
  note: Text,
});
export type Statement = z.infer<typeof Statement>;

/** A place in a photograph: 0 to 1 across and down, so that it holds at whatever size the picture is shown. */
const Spot = z.tuple([Unit, Unit]);
/** The same where a fitted line may run past the picture's edge. */
const LooseSpot = z.tuple([Finite, Finite]);

/** What gives a photograph its millimetres, with all that is needed to reckon it again. */
export const PhotoScale = z.object({
  kind: z.enum(['card', 'coin', 'paper', 'twoPoints']),
  /** Of the catalogue's pocket references; null for two points. */
  reference: z.nullable(Key),
  /** Long and short side, diameter, or the typed distance, as they were taken then. */
  sizeMm: z.array(Finite).check(z.minLength(1), z.maxLength(2)),
  /** As tapped; empty when it was found without taps. */
  taps: z.array(Spot).check(z.maxLength(4)),
  /** Where the straight sides meet (four), or the two points; empty for a coin. */
  corners: z.array(LooseSpot).check(z.maxLength(4)),
  /** Rim of a coin: centre as a place, half axes as shares of the picture's width, angle in radians. */
  rim: z.nullable(z.object({ centre: LooseSpot, a: Finite, b: Finite, angle: Finite })),
  /** Standard error of a corner or of the rim, as a share of the picture's width. */
  sigmaOfWidth: Finite,
  /** How far the thing measured lies above the reference, towards the lens, mm. */
  featureAboveMm: Finite,
  /** Version of the method. */
  version: z.int(),
});
export type PhotoScale = z.infer<typeof PhotoScale>;

export const Photo = z.object({
  ...envelope,
  type: z.literal('photo'),
  blockId: Id,
  findingId: z.nullable(Id),
  /** Step of the work during which it was taken. Later than schema 1's first records, so it may be absent. */
  stepId: z.optional(Id),
  view: Key,
  stage: z.enum(STAGES),
  /** Of the stored working copy; also the key of its bytes. */
  sha256: Sha256,
  bytes: z.int(),
  mime: z.string(),
  width: z.int(),
  height: z.int(),
  thumbnail: Sha256,
  /** Local time as the camera wrote it, and its offset where it wrote one. Never turned into a Date. */
  taken: z.nullable(
    z.object({
      local: z.string().check(z.regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d$/)),
      offset: z.nullable(z.string().check(z.regex(/^[+-]\d\d:\d\d$/))),
      from: z.enum(['camera', 'thisPhone']),
    }),
  ),
  /** Focal length as 35 mm equivalent, if the camera wrote one; measuring needs it. */
  focal35: z.nullable(Finite),
  /** Only when the owner asked to keep it. */
  position: z.nullable(z.object({ latitude: Finite, longitude: Finite })),
  original: z.nullable(z.object({ sha256: Sha256, bytes: z.int(), mime: z.string(), name: Text })),
  scale: z.nullable(PhotoScale),
  caption: Text,
});
export type Photo = z.infer<typeof Photo>;

export const MARK_SHAPES = ['point', 'line', 'polyline', 'ellipse', 'rectangle', 'region', 'text'] as const;
export type MarkShape = (typeof MARK_SHAPES)[number];

/** What was measured in a photograph and accepted by the person, and from what. */
export const Measured = z.object({
  values: z.array(
    z.object({
      what: Key,
      value: Finite,
      /** One standard error, or null where none is stated. */
      sigma: z.nullable(Finite),
      unit: z.enum(['mm', 'count', 'perDm2', 'perCm2', 'pct', 'deltaE']),
    }),
  ),
  method: Key,
  version: z.int(),
  /** Settings and places the method began with; places as rows of numbers. */
  inputs: z.record(Key, z.union([Finite, z.boolean(), Key, z.array(z.array(Finite))])),
});
export type Measured = z.infer<typeof Measured>;

/** Something drawn over a photograph, never into it. Not to be confused with `Mark`: a stamp or pencilled word on the block. */
export const PhotoMark = z.object({
  ...envelope,
  type: z.literal('photoMark'),
  blockId: Id,
  photoId: Id,
  /** Numbered like it; null for a mark that belongs to no finding. */
  findingId: z.nullable(Id),
  shape: z.enum(MARK_SHAPES),
  /** In drawing order; of a rectangle and an ellipse two opposite corners of the box. */
  points: z.array(Spot).check(z.minLength(1), z.maxLength(5000)),
  text: Text,
  measured: z.nullable(Measured),
});
export type PhotoMark = z.infer<typeof PhotoMark>;

/** How an after photograph lies over the before photograph of the same face. */
export const Alignment = z.object({
  ...envelope,
  type: z.literal('alignment'),
  blockId: Id,
  beforeId: Id,
  afterId: Id,
  /** Takes a place in the before photograph to the same place of the block in the after one: row by row, the last 1. */
  h: z.array(Finite).check(z.length(9)),
  /** Likeness of the two once lined up, −1 to 1; null where only tapped places say so. */
  agreement: z.nullable(Finite),
  /** How it was found: by itself, from taps and refined, or from taps alone. */
  method: Key,
  /** Tapped pairs of places, before then after; empty where none were needed. */
  taps: z.array(z.tuple([Spot, Spot])).check(z.maxLength(100)),
  /** Version of the method. */
  version: z.int(),
});
export type Alignment = z.infer<typeof Alignment>;

const Whole = z.int().check(z.gte(0), z.lte(1_000_000_000));

/** Import rules as they were taken over and edited, and what travels with the price; the sums are in `import-charges.ts`. */
export const Customs = z.object({
  rules: z.object({
    code: Key,
    currency: Currency,
    asOf: IsoDate,
    source: Text,
    antiqueVatShare: Unit,
    bands: z
      .array(
        z.object({
          goodsUpTo: z.nullable(Whole),
          dutyRate: Unit,
          dutyOn: z.enum(['goods', 'goods-and-carriage']),
          dutyPerHeading: Whole,
          vatRate: Unit,
          handlingCharged: z.boolean(),
        }),
      )
      .check(z.minLength(1), z.maxLength(9)),
  }),
  shipment: z.object({
    freight: Whole,
    insurance: Whole,
    inland: Whole,
    handling: Whole,
    headings: z.int().check(z.gte(1), z.lte(99)),
    provedAntique: z.boolean(),
  }),
});
export type Customs = z.infer<typeof Customs>;

/** The terms of a sale as they are kept; the sums over them are in `fees.ts`. Rates are shares: 0.24 is 24 %. */
export const SaleTerms = z.object({
  way: z.enum(['haggle', 'ticket', 'auction']),
  /** Premium by rising slices of the hammer price, the last without an end. */
  premium: z.array(z.object({ upTo: Money, rate: Unit })),
  minimumPremium: z.int().check(z.gte(0)),
  platformRate: Unit,
  vatRate: Unit,
  vatOn: z.enum(VAT_BASES),
  /** Post, packing, travel share. */
  fixedCosts: z.array(z.object({ what: Text, amount: z.int() })),
  /** Bid steps: each holds from its `from` upwards. */
  bidSteps: z.array(z.object({ from: z.int(), step: z.int().check(z.gt(0)) })),
  /** Absent or null: nothing crosses a border. */
  customs: z.optional(z.nullable(Customs)),
});
export type SaleTerms = z.infer<typeof SaleTerms>;

export const Sale = z.object({
  ...envelope,
  type: z.literal('sale'),
  title: Text,
  place: Text,
  when: UncertainDate,
  channel: Key,
  origin: z.enum(ORIGINS),
  seller: Text,
  sellerIsPrivate: z.boolean(),
  /** Answers of the due-diligence card by question. */
  diligence: z.record(Key, Text),
  currency: Currency,
  terms: SaleTerms,
  budget: Money,
  hoursToSpare: z.nullable(Finite),
  neededBy: z.nullable(z.string()),
  note: Text,
  example: z.boolean(),
});
export type Sale = z.infer<typeof Sale>;

/**
 * Several blocks at one price: a pair, a box, whatever a seller will not split. The blocks carry its id as `lotId`; a
 * block without one is a lot by itself and needs no record.
 */
export const JobLot = z.object({
  ...envelope,
  type: z.literal('lot'),
  saleId: z.nullable(Id),
  title: Text,
  /** The lot's ticket. */
  objectNumber: Text,
  currency: Currency,
  priceAsked: Money,
  /** What it costs to be rid of what is not wanted. */
  disposal: Money,
  note: Text,
  ...lotFigures,
  example: z.boolean(),
});
export type JobLot = z.infer<typeof JobLot>;

export const Offer = z.object({
  ...envelope,
  type: z.literal('offer'),
  /** The block, or the job lot, it is about. */
  blockId: Id,
  saleId: z.nullable(Id),
  what: z.enum(['asked', 'offered', 'refused', 'agreed', 'paid']),
  amount: z.int(),
  currency: Currency,
  at: Instant,
  note: Text,
  /** Of a price paid: what came on top at the sale's terms, a job lot's shared by worth. Absent or null where nobody reckoned it. */
  fees: z.optional(z.nullable(z.int())),
});
export type Offer = z.infer<typeof Offer>;

/** Work done: what was estimated and what it took. The owner's pace is learnt from these. */
export const Job = z.object({
  ...envelope,
  type: z.literal('job'),
  blockId: Id,
  treatment: Key,
  /** Kind of work whose pace is learnt together. */
  reference: Key,
  /** Likely hours as estimated, at the owner's pace of that day, with the band that should hold it 8 times in 10. */
  estimateHours: Finite,
  lowHours: Finite,
  highHours: Finite,
  actualHours: Finite,
  at: Instant,
  note: Text,
  /** The step whose stints it sums. Later than schema 1's first records, so it may be absent, as may the next. */
  stepId: z.optional(Id),
  /** Pace the estimate was multiplied by: without it an owner twice as slow would come to be held for √2 times as slow. */
  pace: z.optional(Finite.check(z.gt(0))),
});
export type Job = z.infer<typeof Job>;

/**
 * What the person changed about a step of the plan, or did of it: the plan itself is derived from the findings, and a step
 * nobody touched has no record. Matched to the plan by `core/steps/work-plan.ts`.
 */
export const WorkStep = z.object({
  ...envelope,
  type: z.literal('step'),
  blockId: Id,
  /** Of the catalogue; null for a step in the owner's own words. */
  treatment: z.nullable(Key),
  /** What is to be done, of a step in own words. */
  words: Text,
  /** Put in by the person; otherwise the findings call for it. */
  added: z.boolean(),
  /** Findings it served when it was last touched, or the marks it protects: a finding made later is not among them. */
  serves: z.array(Id).check(z.maxLength(500)),
  /** In the treatment's own unit, as it was when last touched; null is the usual amount. */
  amount: z.nullable(Finite),
  /** Hands-on hours (o/m/p) of a step in own words; null takes the treatment's. */
  hours: z.nullable(z.object({ o: Finite, m: Finite, p: Finite })),
  /** Hours of waiting after a step in own words; null takes the treatment's. */
  waitHours: z.nullable(Finite),
  /** Place in the order where the person moved it, on the scale of `workingOrder` ranks; null is the plan's own place. */
  position: z.nullable(Finite),
  /** Left out, and why. */
  skipped: z.nullable(z.object({ at: Instant, reason: Text })),
  done: z.nullable(z.object({ at: Instant, offset: Offset })),
  /** The wait that began when it was done. Hours of waiting pass by the stop watch, whatever clocks are put forward or back. */
  wait: z.nullable(z.object({ since: Instant, until: Instant, offset: Offset })),
  note: Text,
});
export type WorkStep = z.infer<typeof WorkStep>;

/** A stretch of hands-on work on a step: from the timer, or minutes as written down. */
export const Stint = z.object({
  ...envelope,
  type: z.literal('stint'),
  blockId: Id,
  stepId: Id,
  began: Instant,
  /** Of the clocks where it began. */
  offset: Offset,
  /** Null while the timer runs. */
  ended: z.nullable(Instant),
  /** Minutes of work that count. Null while the timer runs, and while a span nobody would believe waits for an answer. */
  minutes: z.nullable(z.number().check(z.gte(0), z.lte(100_000))),
  by: z.enum(['timer', 'hand']),
});
export type Stint = z.infer<typeof Stint>;

/** A repair and whether it held, against the chance that was given for it. */
export const Repair = z.object({
  ...envelope,
  type: z.literal('repair'),
  blockId: Id,
  findingId: Id,
  kind: Key,
  chance: Unit,
  held: z.boolean(),
  at: Instant,
});
export type Repair = z.infer<typeof Repair>;

/**
 * A block kept apart because something may live in it. Which looks fall due and when it ends is derived in
 * `quarantine.ts`; of several of one block the one begun last counts.
 */
export const Quarantine = z.object({
  ...envelope,
  type: z.literal('quarantine'),
  blockId: Id,
  begunOn: Day,
  /** Of the watches in `quarantine.ts`. */
  reason: Key,
  why: Text,
  /** Box, bag, shelf. */
  where: Text,
  /** What the person says it bears that speaks against freezing: obstacles of the physics. */
  bears: z.array(Key),
  /** Null while it runs. */
  left: z.nullable(z.object({ on: Day, early: z.boolean(), reason: Text })),
});
export type Quarantine = z.infer<typeof Quarantine>;

/** One look at a block in quarantine. */
export const QuarantineCheck = z.object({
  ...envelope,
  type: z.literal('quarantineCheck'),
  blockId: Id,
  quarantineId: Id,
  on: Day,
  /** Fresh dust, new growth, droppings: starts the clock again. */
  freshSigns: z.boolean(),
  /** The paper that lay beneath. Not `photoId`: the look stays when its photograph is removed. */
  paperPhotoId: z.nullable(Id),
  note: Text,
});
export type QuarantineCheck = z.infer<typeof QuarantineCheck>;

export const COLD_STAGES = ['bag', 'freeze', 'thaw', 'warmInBag'] as const;

/** One stage of a round of freezing, as it was really done. Whether it was long and cold enough is derived in `cold.ts`. */
export const ColdStage = z.object({
  ...envelope,
  type: z.literal('coldStage'),
  blockId: Id,
  quarantineId: Id,
  /** Of the freezing regimes of the physics. */
  regime: Key,
  /** Round of freezing within this quarantine, from 1; place in the round, from 0. */
  round: z.int().check(z.gte(1), z.lte(99)),
  step: z.int().check(z.gte(0), z.lte(99)),
  does: z.enum(COLD_STAGES),
  begun: Instant,
  /** Null while it runs. */
  ended: z.nullable(Instant),
  /** What the thermometer in the freezer said; null when nobody looked. */
  freezerC: z.nullable(z.number().check(z.gte(-90), z.lte(40))),
  note: Text,
});
export type ColdStage = z.infer<typeof ColdStage>;

/**
 * What was last written to a calendar file about one thing that falls due, so that the next file can change or cancel it.
 * Its block is not named `blockId`: it outlives the block, whose reminders are still in somebody's calendar.
 */
export const Reminder = z.object({
  ...envelope,
  type: z.literal('reminder'),
  forBlockId: Id,
  /** As in `due.ts`; the calendar's UID is made of it. */
  key: z.string().check(z.maxLength(200)),
  /** A day or a moment. */
  start: z.union([Day, Instant]),
  words: Text,
  /** Rises with every change: RFC 5545, 3.8.7.4. */
  sequence: z.int().check(z.gte(0), z.lte(2_147_483_647)),
  cancelled: z.boolean(),
});
export type Reminder = z.infer<typeof Reminder>;

/** One of the checks before first use, done or left out with a reason. */
export const ReadyCheck = z.object({
  ...envelope,
  type: z.literal('readyCheck'),
  blockId: Id,
  check: Key,
  outcome: z.enum(['passed', 'failed', 'skipped']),
  on: Day,
  /** Why it was left out, or what was seen. */
  note: Text,
});
export type ReadyCheck = z.infer<typeof ReadyCheck>;

/** Money spent on a block besides its price: consumables, a laboratory, a professional. */
export const Expense = z.object({
  ...envelope,
  type: z.literal('expense'),
  blockId: Id,
  what: Text,
  /** The step it was for, so that the catalogue's estimate gives way; null for anything else. */
  treatment: z.nullable(Key),
  amount: z.int().check(z.gte(0), z.lte(1_000_000_000)),
  currency: Currency,
  on: Day,
});
export type Expense = z.infer<typeof Expense>;

export const Settings = z.object({
  ...envelope,
  type: z.literal('settings'),
  ownerName: Text,
  /** Stands in photographs handed on: whose they are and what may be done with them. */
  photoRights: z.optional(Text),
  currency: Currency,
  units: z.enum(['mm', 'inch']),
  hand: z.enum(['right', 'left']),
  /** Minor units per hour of the owner's own work. */
  hourlyRate: z.int(),
  /** Required gain on the value, as a share. */
  gain: Unit,
  discountRate: Unit,
  horizonYears: Finite,
  eveningHours: Finite,
  /** Evenings a week at the bench, Monday first. */
  evenings: z.array(z.boolean()).check(z.minLength(7), z.maxLength(7)),
  /** Units of what a schedule shares out, by resource of the catalogue; absent ones are the catalogue's. See `benchTimeOf`. */
  capacities: z.optional(z.record(Key, z.int().check(z.gte(0), z.lte(99)))),
  /** Dates without an evening at the bench. */
  datesOff: z.optional(z.array(IsoDate).check(z.maxLength(1_000))),
  /** Order of the walk: as at a stall, or what could change the decision first. */
  walkOrder: z.enum(['stall', 'telling']),
  /** Air of the room where the blocks live. Later than schema 1's first records, so it may be absent: see `climateOf`. */
  roomTemperatureC: z.optional(z.number().check(z.gte(ROOM_BOUNDS.coldestC), z.lte(ROOM_BOUNDS.hottestC))),
  roomHumidityPct: z.optional(z.number().check(z.gte(ROOM_BOUNDS.driestPct), z.lte(ROOM_BOUNDS.dampestPct))),
  /** Decides the beetles' season. */
  hemisphere: z.optional(z.enum(['north', 'south'])),
  ukHatScale: z.enum(['eighthBelowUs', 'asUs']),
  keepOriginals: z.boolean(),
  keepPosition: z.boolean(),
  /** Head sizes the owner works in, mm round. Later than schema 1's first records, so it may be absent. */
  usualSizes: z.optional(z.array(z.number().check(z.gte(400), z.lte(750))).check(z.maxLength(60))),
  paper: z.enum(['a4', 'letter']),
});
export type Settings = z.infer<typeof Settings>;

export const RECORDS = {
  block: HatBlock,
  survey: Survey,
  finding: Finding,
  mark: Mark,
  statement: Statement,
  photo: Photo,
  photoMark: PhotoMark,
  alignment: Alignment,
  sale: Sale,
  lot: JobLot,
  offer: Offer,
  job: Job,
  step: WorkStep,
  stint: Stint,
  repair: Repair,
  quarantine: Quarantine,
  quarantineCheck: QuarantineCheck,
  coldStage: ColdStage,
  reminder: Reminder,
  readyCheck: ReadyCheck,
  expense: Expense,
  settings: Settings,
} as const;
export type RecordType = keyof typeof RECORDS;
export type RecordOf<T extends RecordType> = z.infer<(typeof RECORDS)[T]>;
export type AnyRecord = { [T in RecordType]: RecordOf<T> }[RecordType];
export type Envelope = Pick<HatBlock, 'id' | 'schema' | 'device' | 'stamps' | 'deleted' | 'otherWords'>;

/** The fields of a record a person can change. */
export type Fields<T extends RecordType> = Omit<RecordOf<T>, keyof Envelope | 'type'>;

/** The settings record's fixed id: one per owner, merged like any other. */
export const SETTINGS_ID = '00000000-0000-7000-8000-000000000001';
