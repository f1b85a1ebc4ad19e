import 'fake-indexeddb/auto';
import { createMemoryRepository, newDisk } from '../../src/store/memory.ts';
import { idbKeeper } from '../contracts/idb-keeper.ts';
import { repositoryContract } from '../contracts/repository.ts';

repositoryContract('in memory', async () => {
  const disk = newDisk();
  return {
    open: async () => createMemoryRepository(disk),
    plant: async (raw) => void disk.records.set(raw.id, structuredClone(raw)),
    raw: async (id) => disk.records.get(id),
    async damage(sha256) {
      const photo = disk.bytes.get(sha256);
      if (photo) disk.bytes.set(sha256, { ...photo, bytes: new Uint8Array([1]).buffer });
    },
    dispose: async () => undefined,
  };
});

repositoryContract('in a stand-in database', async () => idbKeeper());
