import { deleteDB, openDB } from 'idb';
import { createIdbRepository, type IdbOptions } from '../../src/store/idb.ts';
import type { Repository } from '../../src/store/repository.ts';
import type { Keeper } from './repository.ts';

let count = 0;
const neverSet = { isSet: () => false, set: () => undefined };

/** A database of its own, in whichever browser or stand-in runs this. */
export function idbKeeper(options: IdbOptions = {}): Keeper & { readonly name: string } {
  count += 1;
  const name = `blockworth-test-${Date.now()}-${count}`;
  const open: Repository[] = [];
  async function directly<T>(job: (db: Awaited<ReturnType<typeof openDB>>) => Promise<T>): Promise<T> {
    const db = await openDB(name);
    try {
      return await job(db);
    } finally {
      db.close();
    }
  }
  return {
    name,
    async open() {
      const repository = createIdbRepository({ name, marker: neverSet, ...options });
      await repository.loadAll();
      open.push(repository);
      return repository;
    },
    plant: (raw) => directly(async (db) => void (await db.put('records', raw))),
    raw: (id) => directly((db) => db.get('records', id)),
    damage: (sha256) =>
      directly(async (db) => {
        const row = await db.get('bytes', sha256);
        const bytes = new Uint8Array(row.bytes.slice(0));
        bytes[0] = (bytes[0] ?? 0) ^ 1;
        await db.put('bytes', { ...row, bytes: bytes.buffer }, sha256);
      }),
    async dispose() {
      for (const repository of open) await repository.close();
      await deleteDB(name);
    },
  };
}
