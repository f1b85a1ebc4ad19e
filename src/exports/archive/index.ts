import { AGE_ENDING, type ArchiveScope, ZIP_ENDING } from '../../core/archive-layout.ts';
import { canonical } from '../../core/canonical.ts';
import type { Catalogue } from '../../core/catalogue.ts';
import { AppError } from '../../core/errors.ts';
import { type AnyRecord, type HatBlock, SETTINGS_ID, type Settings } from '../../core/records.ts';
import type { ReportDocument } from '../../core/report.ts';
import { sha256 } from '../../photos/sha256.ts';
import type { Destination } from '../../workers/archive-messages.ts';
import type { Archiver } from '../../workers/archiver.ts';
import { contentsOf, ofType, type Stored } from './contents.ts';
import type { Keep, KeptState, KeptVolume } from './keep.ts';
import {
  ARCHIVE_LOCK,
  discardArchive,
  filesOf,
  named,
  type PreparedArchive,
  type PreparedVolume,
  preparedFrom,
} from './kept.ts';
import { type ArchivePlan, encoded, planArchive } from './plan.ts';
import { recordFiles } from './record-files.ts';
import { takenUp } from './taken-up.ts';
import { headingOf, type Missing, payloadOf } from './write.ts';

export { keepHere } from './keep.ts';
export { discardArchive, keptArchive, type PreparedArchive, type PreparedVolume, sent } from './kept.ts';

export interface ArchiveWish {
  readonly scope: ArchiveScope;
  /** False leaves out private names and places, prices and camera files: for handing on. */
  readonly isWhole: boolean;
  /** Encrypts every volume with it (age); a lost one is lost for good. Null leaves them open. */
  readonly passphrase: string | null;
  /** Writes straight into files the person picked, by name; without it volumes are kept here until they are sent. */
  readonly pick?: (name: string) => Promise<FileSystemFileHandle>;
}

/** How a report is to be written that goes into an archive. */
export interface ReportWish {
  readonly isWhole: boolean;
  /** RFC 3339, UTC. */
  readonly made: string;
  /** Records as they go out; one that stays at home is left out. A report says nothing that is not in them. */
  goingOut<R extends AnyRecord>(records: readonly R[]): readonly R[];
}

/** What preparing asks of the app. `report` is handed in because reports know the whole app and this does not. */
export interface ArchiveTools {
  readonly storage: {
    loadAll(): Promise<Stored>;
    photoBytes(sha256: string): Promise<{ readonly bytes: ArrayBuffer; readonly mime: string } | undefined>;
    photoKeys(): Promise<string[]>;
    identity(): Promise<{ readonly device: string }>;
    estimate(): Promise<{ readonly usage: number; readonly quota: number } | null>;
  };
  readonly catalogue: Catalogue;
  /** Unix milliseconds. */
  readonly now: () => number;
  readonly newId: () => string;
  readonly report: (block: HatBlock, wish: ReportWish) => ReportDocument | undefined;
  readonly archiver: Archiver;
  /** Whether a passphrase opens a volume, so that one goes on with the passphrase one began with. */
  readonly opens?: (volume: File, passphrase: string) => Promise<boolean>;
  /** Where volumes wait. */
  readonly keep: Keep;
  /** Most bytes of a volume; tests take less. */
  readonly most?: number;
}

export interface ArchiveProgress {
  readonly stage: 'planning' | 'writing';
  /** Blocks while planning, photographs while writing. */
  readonly done: number;
  readonly of: number;
  /** From 1; 0 while planning. */
  readonly volume: number;
  readonly volumes: number;
}

/** Room that must stay free beside a volume, in bytes. */
const SPARE = 5_000_000;
/** Hashes named by what cannot be read: bytes that must not be left behind. */
const hashesIn = (raw: unknown): string[] =>
  JSON.stringify(raw ?? null, (_, value: unknown) => (typeof value === 'bigint' ? null : value)).match(
    /\b[0-9a-f]{64}\b/g,
  ) ?? [];

async function straysOf(unreadable: Stored['unreadable'], { storage }: ArchiveTools) {
  const here = unreadable.length > 0 ? new Set(await storage.photoKeys()) : new Set<string>();
  const strays = [];
  for (const hash of new Set(unreadable.flatMap(({ raw }) => hashesIn(raw)))) {
    const stored = here.has(hash) ? await storage.photoBytes(hash).catch(() => undefined) : undefined;
    if (stored) strays.push({ sha256: hash, bytes: stored.bytes.byteLength, mime: stored.mime });
  }
  return strays;
}

/** The page's chance to draw and to hear a tap. */
const breath = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));
/** Longest the page is kept without a breath, ms. */
const HELD_MS = 30;

async function withRoom(plan: ArchivePlan, volume: number, tools: ArchiveTools): Promise<boolean> {
  const bytes = (plan.volumes[volume - 1] ?? []).reduce((total, file) => total + file.bytes, 0);
  const space = await tools.storage.estimate();
  return !space || space.quota - space.usage > bytes + SPARE;
}

/**
 * Prepares an archive: all volumes of it, or as many as there is room for. What an earlier page that was ended had
 * finished of the same contents is taken up again. Stopped by the signal, nothing of it is left.
 * @throws AppError storage-full when not even one volume fits, export-failed, archive-passphrase when it is not the one
 *         the volumes before were locked with; the signal's reason
 */
export async function prepareArchive(
  wish: ArchiveWish,
  tools: ArchiveTools,
  { onProgress, signal }: { readonly onProgress: (progress: ArchiveProgress) => void; readonly signal: AbortSignal },
): Promise<PreparedArchive> {
  const work = () => prepared(wish, tools, onProgress, signal);
  // Two windows at it would take each other's files for leftovers.
  return globalThis.navigator?.locks ? navigator.locks.request(ARCHIVE_LOCK, { signal }, work) : work();
}

async function prepared(
  wish: ArchiveWish,
  tools: ArchiveTools,
  onProgress: (progress: ArchiveProgress) => void,
  signal: AbortSignal,
): Promise<PreparedArchive> {
  const { storage, catalogue, keep } = tools;
  const stored = await storage.loadAll();
  const contents = contentsOf(stored, wish.scope, wish.isWhole, catalogue);
  const records = recordFiles(contents);
  const about = canonical([
    wish.scope,
    wish.isWhole,
    wish.passphrase !== null,
    wish.pick !== undefined,
    catalogue.version,
  ]);
  const fingerprint = await sha256(encoded([about, ...records.map(({ text }) => text)].join('\n')).buffer);
  let state = await takenUp(keep, fingerprint, wish.passphrase, tools.opens);
  state ??= {
    wish: {
      ...{ scope: wish.scope, isWhole: wish.isWhole, isLocked: wish.passphrase !== null },
      isPicked: wish.pick !== undefined,
    },
    fingerprint,
    group: `urn:uuid:${tools.newId()}`,
    made: `${new Date(tools.now()).toISOString().slice(0, 19)}Z`,
    layout: '',
    volumes: 0,
    finished: [],
    sent: [],
    isFull: false,
    missing: [],
  };
  keep.passphrases.set(state.group, wish.passphrase);
  try {
    return await written(state, { wish, tools, stored, contents, records }, onProgress, signal);
  } catch (error) {
    if (signal.aborted) await discardArchive(keep);
    throw error;
  }
}

interface Writing {
  readonly wish: ArchiveWish;
  readonly tools: ArchiveTools;
  readonly stored: Stored;
  readonly contents: ReturnType<typeof contentsOf>;
  readonly records: ReturnType<typeof recordFiles>;
}

async function written(
  begun: KeptState,
  { wish, tools, stored, contents, records }: Writing,
  onProgress: (progress: ArchiveProgress) => void,
  signal: AbortSignal,
): Promise<PreparedArchive> {
  const { keep } = tools;
  const settings: Settings | undefined = ofType(stored.records, 'settings').find(({ id }) => id === SETTINGS_ID);
  const outgoing = new Map(contents.records.map((record) => [record.id, record]));
  const goingOut = <R extends AnyRecord>(known: readonly R[]): readonly R[] =>
    known.flatMap(({ id }) => (outgoing.get(id) as R | undefined) ?? []);
  let breathed = performance.now();
  const plan = await planArchive(contents, records, wish.scope, wish.isWhole, {
    catalogue: tools.catalogue,
    device: (await tools.storage.identity()).device,
    group: begun.group,
    made: begun.made,
    units: settings?.units ?? 'mm',
    report: (block) => tools.report(block, { isWhole: wish.isWhole, made: begun.made, goingOut }),
    strays: await straysOf(contents.unreadable, tools),
    ...(tools.most === undefined ? {} : { most: tools.most }),
    signal,
    async onBlock(done, of) {
      onProgress({ stage: 'planning', done, of, volume: 0, volumes: 0 });
      if (performance.now() - breathed < HELD_MS) return;
      await breath();
      breathed = performance.now();
    },
  });
  // A newer app may make longer reports and so divide the same records otherwise: then all volumes are made anew.
  const layout = await sha256(encoded(canonical(plan.volumes.map((files) => files.map(({ path }) => path)))).buffer);
  const isSame = begun.layout === layout;
  let state: KeptState = {
    ...begun,
    layout,
    volumes: plan.volumes.length,
    finished: isSame ? begun.finished : [],
    sent: isSame ? begun.sent : [],
    isFull: false,
    missing: isSame ? begun.missing : [],
  };
  await keep.tidy(state.finished.map(({ name }) => name));
  const missing: Missing[] = [...state.missing];
  const inPicked: PreparedVolume[] = [];
  let done = 0;
  for (let volume = 1; volume <= plan.volumes.length; volume++) {
    const pictures = (plan.volumes[volume - 1] ?? []).filter(({ from }) => from === 'bytes').length;
    if (state.sent.some((gone) => gone.volume === volume) || state.finished.some((kept) => kept.volume === volume)) {
      done += pictures;
      continue;
    }
    const ending = wish.passphrase === null ? ZIP_ENDING : AGE_ENDING;
    const heading = headingOf(plan, volume, ending, wish.isWhole ? (settings?.ownerName ?? '') : '');
    const isFull =
      keep.lasts || wish.pick ? !wish.pick && !(await withRoom(plan, volume, tools)) : state.finished.length > 0;
    const failed = isFull
      ? new AppError('storage-full')
      : await attempt(async () => {
          onProgress({ stage: 'writing', done, of: plan.pictures, volume, volumes: plan.volumes.length });
          const payload = payloadOf(
            plan,
            volume,
            (hash) => tools.storage.photoBytes(hash),
            () => {
              done += 1;
              onProgress({ stage: 'writing', done, of: plan.pictures, volume, volumes: plan.volumes.length });
            },
            missing,
          );
          const destination = await destinationOf(wish, keep, heading.name);
          const order = { heading, destination, passphrase: wish.passphrase };
          const { file, bytes } = await tools.archiver(order, payload, signal);
          const kept: KeptVolume = { volume, name: heading.name, bytes };
          if (destination.to === 'picked') {
            inPicked.push(named(kept, null));
            state = { ...state, sent: [...state.sent, kept] };
          } else {
            if (file) keep.hold(heading.name, file);
            state = { ...state, finished: [...state.finished, kept] };
          }
          state = { ...state, missing: [...missing] };
          await keep.write(state);
        });
    if (failed && state.finished.length === 0) throw failed;
    if (failed) {
      state = { ...state, isFull: true };
      await keep.write(state);
      break;
    }
  }
  if (wish.pick && !state.isFull) await keep.forget();
  const ready = [...inPicked, ...(await filesOf(state, keep))].sort((a, b) => a.volume - b.volume);
  return preparedFrom(state, ready);
}

/** Runs and gives back a full storage as a value; anything else is thrown. */
async function attempt(work: () => Promise<void>): Promise<AppError | undefined> {
  try {
    await work();
    return undefined;
  } catch (error) {
    if (error instanceof AppError && error.code === 'storage-full') return error;
    throw error;
  }
}

async function destinationOf(wish: ArchiveWish, keep: Keep, name: string): Promise<Destination> {
  if (wish.pick) return { to: 'picked', handle: await wish.pick(name) };
  return { to: keep.lasts ? 'private' : 'memory' };
}
