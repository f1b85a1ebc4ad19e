import { assess } from '../core/assess.ts';
import { plainTerms } from '../core/blank.ts';
import { AppError } from '../core/errors.ts';
import type { HatBlock } from '../core/records.ts';
import type { ReportDocument } from '../core/report.ts';
import type { ArchiveTools, ReportWish } from '../exports/archive/index.ts';
import { asFoundReport } from '../reports/as-found.ts';
import { usualWishes } from '../reports/wishes.ts';
import type { App } from '../ui/app.ts';
import { archiveHere, archiveInWorker } from '../workers/archiver.ts';
import { readInWorker } from '../workers/import-reader.ts';
import { drawingOf } from './drawing-of.ts';

const startWorker = (): Worker =>
  new Worker(new URL('../workers/archive.worker.ts', import.meta.url), { type: 'module', name: 'archive' });

/** Longer than any header of a file that only a passphrase locks. */
const HEADER_BYTES = 1000;

/** Whether a passphrase opens a volume, by its first bytes: what comes after fails, but only behind the right one. */
async function opens(volume: File, passphrase: string, now: () => number): Promise<boolean> {
  const reader = readInWorker();
  try {
    await reader.open([volume.slice(0, HEADER_BYTES)], passphrase, now());
    return true;
  } catch (error) {
    return !(error instanceof AppError && error.code === 'archive-passphrase');
  } finally {
    reader.close();
  }
}

type Needed = Pick<App, 'store' | 'catalogue' | 'own' | 'now'>;

/** The as-found report of any block from the records that go out, or undefined before its first survey. */
function reportOf(block: HatBlock, { isWhole, made, goingOut }: ReportWish, { store, catalogue, own }: Needed) {
  const known = store.surveyOf(block.id);
  const [survey] = known ? goingOut([known]) : [];
  if (!survey) return undefined;
  const findings = goingOut(store.findingsOf(block.id));
  const from = block.saleId ? store.get('sale', block.saleId) : undefined;
  const [sale] = from ? goingOut([from]) : [];
  const mine = store.settings.peek();
  // The owner's settings stay at home, the name in them too.
  const settings = isWhole ? mine : { ...mine, ownerName: '' };
  const terms = sale?.terms ?? plainTerms;
  const facts = {
    ...{ block, survey, findings, sale, settings },
    photos: goingOut(store.photosOf(block.id)),
    alignments: goingOut(store.alignmentsOf(block.id)),
    marks: goingOut(store.marksOf(block.id)),
    photoMarks: goingOut(store.photoMarksOf(block.id)),
    statements: goingOut(store.statementsOf(block.id)),
    assessment: assess({ block, survey, findings, terms, settings, pace: own.pace.peek() }, catalogue),
  };
  const wishes = { ...usualWishes, prices: isWhole, privateNames: isWhole };
  const report: ReportDocument = asFoundReport(facts, wishes, catalogue, drawingOf(block, catalogue).id, made);
  return report;
}

/** What preparing an archive asks of the app. What is still being saved is waited for, so that it is in it. */
export function archiveTools(app: Needed, keep: ArchiveTools['keep']): ArchiveTools {
  const { store, catalogue, now } = app;
  const { repository } = store;
  return {
    storage: {
      async loadAll() {
        await store.settled();
        return repository.loadAll();
      },
      photoBytes: repository.photoBytes,
      photoKeys: repository.photoKeys,
      identity: repository.identity,
      estimate: repository.estimate,
    },
    catalogue,
    now,
    newId: store.newId,
    keep,
    report: (block, wish) => reportOf(block, wish, app),
    archiver: typeof Worker === 'function' ? archiveInWorker(startWorker) : archiveHere(),
    opens: (volume, passphrase) => opens(volume, passphrase, now),
  };
}
