import { useMemo } from 'preact/hooks';
import type { Patch } from '../core/changes.ts';
import type {
  Alignment,
  Fields,
  Finding,
  HatBlock,
  Job,
  Mark,
  Offer,
  Photo,
  PhotoMark,
  Repair,
  Sale,
  Statement,
  Survey,
} from '../core/records.ts';
import { create, remove, set, setSettings } from '../store/edits.ts';
import type { Store } from '../store/store.ts';
import { useApp } from '../ui/app.ts';
import type { Placed } from './chain-order.ts';

/**
 * The edits a person makes, each with the words under which it can be undone. In memory at once, saved at once; how the
 * saving goes is in `store.saving`, so nobody waits for the promise here.
 */
export function actionsOn(store: Store, now: () => number) {
  const instant = (): string => new Date(now()).toISOString();
  const change = (label: string, ...edits: Parameters<Store['change']>[1]): void => {
    // A failed save is shown by `store.saving` with its sentence; the rejection needs no second reader.
    store.change(label, edits).catch(() => undefined);
  };
  return {
    /** A new block with an empty survey. */
    startBlock(fields: Partial<Fields<'block'>> = {}): string {
      const block = store.newId();
      const { currency, ownerName } = store.settings.value;
      change(
        'looking at a block',
        create('block', block, { currency, ...fields }),
        create('survey', store.newId(), {
          blockId: block,
          begun: instant(),
          surveyor: ownerName,
          reason: 'Before buying',
        }),
      );
      return block;
    },
    setBlock: (block: HatBlock, patch: Patch<'block'>, label: string) => change(label, set('block', block.id, patch)),
    /** With its survey, findings, marks, photographs; undo brings all of it back. */
    removeBlock: (block: HatBlock) => change('removing the block', remove(block.id)),

    setMeasure: (survey: Survey, measure: string, value: number | null) =>
      change('a measure', set('survey', survey.id, { measures: { [measure]: value } })),
    setSurvey: (survey: Survey, patch: Patch<'survey'>) => change('the survey', set('survey', survey.id, patch)),
    /** Looked for, none seen; `false` takes the word back: not looked. */
    noneSeen: (survey: Survey, kinds: readonly string[], seen: boolean) =>
      change(
        seen ? 'none seen' : 'not looked',
        set('survey', survey.id, { noneSeen: Object.fromEntries(kinds.map((kind) => [kind, seen ? true : null])) }),
      ),
    /** The station is done, and what it shows and nobody found is none seen. */
    finishStation: (survey: Survey, station: string, noneSeen: readonly string[]) =>
      change(
        noneSeen.length > 0 ? 'none seen for all' : 'a station done',
        set('survey', survey.id, {
          stationsDone: { [station]: true },
          noneSeen: Object.fromEntries(noneSeen.map((kind) => [kind, true as const])),
        }),
      ),

    addFinding(block: HatBlock, survey: Survey, kind: string, zone: string): string {
      const id = store.newId();
      const number = store.nextFindingNumber(block.id);
      change(
        'a finding',
        create('finding', id, { blockId: block.id, surveyId: survey.id, number, kind, zone }),
        // Found now: an earlier "none seen" no longer holds.
        set('survey', survey.id, { noneSeen: { [kind]: null } }),
      );
      return id;
    },
    setFinding: (finding: Finding, patch: Patch<'finding'>) => change('a finding', set('finding', finding.id, patch)),
    answer: (finding: Finding, ask: string, value: number | boolean | string | null) =>
      change('a finding', set('finding', finding.id, { answers: { [ask]: value } })),
    removeFinding: (finding: Finding) => change('removing the finding', remove(finding.id)),

    setPhoto: (photo: Photo, patch: Patch<'photo'>) => change('a photograph', set('photo', photo.id, patch)),
    /** The better photograph is there: takes the one it replaces away, also from the shelf. One step of undo. */
    replacePhoto(block: HatBlock, old: Photo, better: string): void {
      const wasCover = block.coverPhotoId === old.id;
      change(
        'taking a photograph again',
        remove(old.id),
        ...(wasCover ? [set('block', block.id, { coverPhotoId: better })] : []),
      );
    },
    removePhoto: (photo: Photo) => change('removing the photograph', remove(photo.id)),
    /** The reference that gives a photograph its millimetres; null takes it away. */
    setScale: (photo: Photo, scale: Photo['scale']) =>
      change(scale ? 'the scale' : 'taking the scale away', set('photo', photo.id, { scale })),

    /** Keeps how two photographs lie over each other; a new try takes the place of the old one. */
    lineUp(
      before: Photo,
      after: Photo,
      found: Pick<Alignment, 'h' | 'agreement' | 'method' | 'taps' | 'version'>,
      old: Alignment | undefined,
    ): void {
      const pair = { blockId: before.blockId, beforeId: before.id, afterId: after.id };
      change(
        'lining up',
        old ? set('alignment', old.id, found) : create('alignment', store.newId(), { ...pair, ...found }),
      );
    },
    forgetLineUp: (alignment: Alignment) => change('taking the line-up away', remove(alignment.id)),

    addPhotoMark(photo: Photo, fields: Partial<Fields<'photoMark'>>): string {
      const id = store.newId();
      change('a mark', create('photoMark', id, { blockId: photo.blockId, photoId: photo.id, ...fields }));
      return id;
    },
    setPhotoMark: (mark: PhotoMark, patch: Patch<'photoMark'>) => change('a mark', set('photoMark', mark.id, patch)),
    /**
     * What was measured in a photograph and accepted: the answers of a finding, old or new, and the mark that shows them,
     * in one step. A mark of the same method for the same finding on the same photograph is drawn anew.
     * @returns id of the finding
     */
    takeMeasured(
      survey: Survey,
      photo: Photo,
      into: { readonly finding: Finding } | { readonly kind: string; readonly zone: string },
      answers: Patch<'finding'>['answers'] & object,
      mark: Pick<Fields<'photoMark'>, 'shape' | 'points' | 'measured'>,
    ): string {
      const { blockId } = photo;
      const isNew = 'kind' in into;
      const findingId = isNew ? store.newId() : into.finding.id;
      const drawn = store
        .marksOnPhoto(photo.id)
        .find((other) => other.findingId === findingId && other.measured?.method === mark.measured?.method);
      change(
        'a measurement',
        ...(isNew
          ? [
              create('finding', findingId, {
                ...{ blockId, surveyId: survey.id, number: store.nextFindingNumber(blockId) },
                ...{ kind: into.kind, zone: into.zone, answers: answers as Fields<'finding'>['answers'] },
              }),
              set('survey', survey.id, { noneSeen: { [into.kind]: null } }),
            ]
          : [set('finding', findingId, { answers })]),
        drawn
          ? set('photoMark', drawn.id, mark)
          : create('photoMark', store.newId(), { ...mark, blockId, photoId: photo.id, findingId }),
      );
      return findingId;
    },
    removePhotoMark: (mark: PhotoMark) => change('removing the mark', remove(mark.id)),

    addMark(block: HatBlock, fields: Partial<Fields<'mark'>>): string {
      const id = store.newId();
      change('a mark', create('mark', id, { blockId: block.id, ...fields }));
      return id;
    },
    setMark: (mark: Mark, patch: Patch<'mark'>) => change('a mark', set('mark', mark.id, patch)),
    removeMark: (mark: Mark) => change('removing the mark', remove(mark.id)),

    addStatement(block: HatBlock, fields: Partial<Fields<'statement'>>): string {
      const id = store.newId();
      change('a step of its history', create('statement', id, { blockId: block.id, ...fields }));
      return id;
    },
    setStatement: (statement: Statement, patch: Patch<'statement'>) =>
      change('a step of its history', set('statement', statement.id, patch)),
    /** New places in the chain, as one step. */
    moveStatement: (placed: readonly Placed[]) =>
      change('the order of its history', ...placed.map(({ id, position }) => set('statement', id, { position }))),
    removeStatement: (statement: Statement) => change('removing the step', remove(statement.id)),

    addOffer: (block: HatBlock, what: Offer['what'], amount: number) =>
      change(
        'an offer',
        create('offer', store.newId(), {
          blockId: block.id,
          saleId: block.saleId,
          what,
          amount,
          currency: block.currency,
          at: instant(),
        }),
      ),
    removeOffer: (offer: Offer) => change('removing the offer', remove(offer.id)),

    /** What a step took, beside what was estimated at the time. */
    logJob: (
      block: HatBlock,
      fields: Pick<Job, 'treatment' | 'reference' | 'estimateHours' | 'lowHours' | 'highHours' | 'actualHours'>,
    ) => change('hours written down', create('job', store.newId(), { blockId: block.id, at: instant(), ...fields })),
    removeJob: (job: Job) => change('taking hours out', remove(job.id)),
    /** Whether a repair held; null takes the judgement back. */
    judgeRepair: (finding: Finding, judged: Repair | undefined, chance: number, held: boolean | null) =>
      change(
        'a repair judged',
        held === null
          ? remove(judged?.id ?? '')
          : judged
            ? set('repair', judged.id, { held })
            : create('repair', store.newId(), {
                blockId: finding.blockId,
                findingId: finding.id,
                kind: finding.kind,
                chance,
                held,
                at: instant(),
              }),
      ),

    startSale(fields: Partial<Fields<'sale'>> = {}): string {
      const id = store.newId();
      change('a sale', create('sale', id, { currency: store.settings.value.currency, ...fields }));
      return id;
    },
    setSale: (sale: Sale, patch: Patch<'sale'>) => change('the sale', set('sale', sale.id, patch)),
    /** The blocks looked at there stay on the shelf. */
    removeSale: (sale: Sale) => change('removing the sale', remove(sale.id)),
    /** The example sale with all its lots, as one step that undo brings back whole. */
    removeExample: () =>
      change(
        'taking the example away',
        ...[store.records.block, store.records.lot, store.records.sale]
          .flatMap((records) => [...records.value.values()])
          .filter(({ example }) => example)
          .map(({ id }) => remove(id)),
      ),

    setSettings: (patch: Patch<'settings'>) => change('a setting', setSettings(patch)),
  };
}

export type Actions = ReturnType<typeof actionsOn>;

export function useActions(): Actions {
  const { store, now } = useApp();
  return useMemo(() => actionsOn(store, now), [store, now]);
}
