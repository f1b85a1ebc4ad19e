import { computed, type ReadonlySignal } from '@preact/signals';
import {
  type Alignment,
  type AnyRecord,
  type ColdStage,
  type Expense,
  type Finding,
  type HatBlock,
  type Job,
  type JobLot,
  type Mark,
  type Offer,
  type Photo,
  type PhotoMark,
  type Quarantine,
  type QuarantineCheck,
  type ReadyCheck,
  type RecordOf,
  type RecordType,
  type Repair,
  SETTINGS_ID,
  type Settings,
  type Statement,
  type Stint,
  type Survey,
  type WorkStep,
} from '../core/records.ts';
import { firstSettings } from './edits.ts';
import type { Shelf } from './shelf.ts';

type Many<T> = readonly T[];

/**
 * Questions to the records in memory. Each is tracked: a component or effect that asks is drawn again when the answer
 * changes, and only then; the answer is the same object until it does. Removed records are never in an answer.
 */
export interface LookUps {
  readonly records: Shelf['records'];
  /** All records of a type, oldest first. */
  all<T extends RecordType>(type: T): ReadonlySignal<Many<RecordOf<T>>>;
  get<T extends RecordType>(type: T, id: string): RecordOf<T> | undefined;
  /** Newest first. */
  readonly blocks: ReadonlySignal<Many<HatBlock>>;
  /** As chosen, or as they are before anyone has. */
  readonly settings: ReadonlySignal<Settings>;
  /** The current survey of a block: the one begun last. */
  surveyOf(blockId: string): Survey | undefined;
  /** Oldest first. */
  surveysOf(blockId: string): Many<Survey>;
  /** By number. */
  findingsOf(blockId: string): Many<Finding>;
  photosOf(blockId: string): Many<Photo>;
  photosOfFinding(findingId: string): Many<Photo>;
  /** What is drawn over all photographs of a block. */
  photoMarksOf(blockId: string): Many<PhotoMark>;
  /** What is drawn over a photograph, oldest first. */
  marksOnPhoto(photoId: string): Many<PhotoMark>;
  /** How after photographs of a block lie over before ones, oldest first. */
  alignmentsOf(blockId: string): Many<Alignment>;
  marksOf(blockId: string): Many<Mark>;
  /** By place in the chain. */
  statementsOf(blockId: string): Many<Statement>;
  /** Oldest first. */
  offersOf(blockId: string): Many<Offer>;
  /** Hours written down for a block. */
  jobsOf(blockId: string): Many<Job>;
  /** Steps of its plan that someone changed or did something of, oldest first. */
  stepsOf(blockId: string): Many<WorkStep>;
  /** Stretches of work on a block, by when they began. */
  stintsOf(blockId: string): Many<Stint>;
  stintsOfStep(stepId: string): Many<Stint>;
  photosOfStep(stepId: string): Many<Photo>;
  repairsOf(blockId: string): Many<Repair>;
  /** Oldest first; the last is the one that counts. */
  quarantinesOf(blockId: string): Many<Quarantine>;
  /** Looks of a quarantine or of all of a block, by day. */
  quarantineChecksOf(ownerId: string): Many<QuarantineCheck>;
  /** Stages of freezing of a quarantine or of all of a block, by round and step. */
  coldStagesOf(ownerId: string): Many<ColdStage>;
  readyChecksOf(blockId: string): Many<ReadyCheck>;
  /** By day. */
  expensesOf(blockId: string): Many<Expense>;
  blocksOf(saleId: string): Many<HatBlock>;
  /** Job lots of a sale, oldest first. */
  lotsOf(saleId: string): Many<JobLot>;
  blocksOfLot(lotId: string): Many<HatBlock>;
  offersAt(saleId: string): Many<Offer>;
  /** A number no finding of this block has had, removed ones included. Not tracked. */
  nextFindingNumber(blockId: string): number;
}

export function lookUps(shelf: Shelf, device: string): LookUps {
  const { records, get, listed } = shelf;
  const lists = new Map<RecordType, ReadonlySignal<Many<AnyRecord>>>();
  function all<T extends RecordType>(type: T) {
    let list = lists.get(type);
    if (!list) {
      list = computed(() => [...records[type].value.values()].sort((a, b) => (a.id < b.id ? -1 : 1)));
      lists.set(type, list);
    }
    return list as unknown as ReadonlySignal<Many<RecordOf<T>>>;
  }
  const unchosen = firstSettings(device);
  return {
    records,
    get,
    all,
    blocks: computed(() => [...all('block').value].reverse()),
    settings: computed(() => get('settings', SETTINGS_ID) ?? unchosen),
    surveyOf: (blockId) => listed('survey', blockId).at(-1),
    surveysOf: (blockId) => listed('survey', blockId),
    findingsOf: (blockId) => listed('finding', blockId),
    photosOf: (blockId) => listed('photo', blockId),
    photosOfFinding: (findingId) => listed('photo', findingId),
    photoMarksOf: (blockId) => listed('photoMark', blockId),
    marksOnPhoto: (photoId) => listed('photoMark', photoId),
    alignmentsOf: (blockId) => listed('alignment', blockId),
    marksOf: (blockId) => listed('mark', blockId),
    statementsOf: (blockId) => listed('statement', blockId),
    offersOf: (blockId) => listed('offer', blockId),
    jobsOf: (blockId) => listed('job', blockId),
    stepsOf: (blockId) => listed('step', blockId),
    stintsOf: (blockId) => listed('stint', blockId),
    stintsOfStep: (stepId) => listed('stint', stepId),
    photosOfStep: (stepId) => listed('photo', stepId),
    repairsOf: (blockId) => listed('repair', blockId),
    quarantinesOf: (blockId) => listed('quarantine', blockId),
    quarantineChecksOf: (ownerId) => listed('quarantineCheck', ownerId),
    coldStagesOf: (ownerId) => listed('coldStage', ownerId),
    readyChecksOf: (blockId) => listed('readyCheck', blockId),
    expensesOf: (blockId) => listed('expense', blockId),
    blocksOf: (saleId) => listed('block', saleId),
    lotsOf: (saleId) => listed('lot', saleId),
    blocksOfLot: (lotId) => listed('block', lotId),
    offersAt: (saleId) => listed('offer', saleId),
    nextFindingNumber: (blockId) => shelf.highestNumber(blockId) + 1,
  };
}
