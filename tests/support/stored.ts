import type { Page } from 'playwright-core';

type Row = Readonly<Record<string, unknown>> & { readonly id: string; readonly type: string };

/** Rows as they lie in the page's database, read past the app. */
export async function storedRecords(page: Page, type?: string): Promise<Row[]> {
  const rows = await page.evaluate(async () => {
    const db = await new Promise<IDBDatabase>((resolve, reject) => {
      const opening = indexedDB.open('blockworth');
      opening.onsuccess = () => resolve(opening.result);
      opening.onerror = () => reject(opening.error);
    });
    const rows = await new Promise<unknown[]>((resolve, reject) => {
      const reading = db.transaction('records').objectStore('records').getAll();
      reading.onsuccess = () => resolve(reading.result);
      reading.onerror = () => reject(reading.error);
    });
    db.close();
    return rows;
  });
  return (rows as Row[]).filter((row) => type === undefined || row.type === type);
}

/** Puts a row into the page's database past the app. */
export const putStored = (page: Page, row: unknown): Promise<void> =>
  page.evaluate(async (value) => {
    const db = await new Promise<IDBDatabase>((resolve, reject) => {
      const opening = indexedDB.open('blockworth');
      opening.onsuccess = () => resolve(opening.result);
      opening.onerror = () => reject(opening.error);
    });
    await new Promise<void>((resolve, reject) => {
      const tx = db.transaction('records', 'readwrite');
      tx.objectStore('records').put(value);
      tx.oncomplete = () => resolve();
      tx.onabort = () => reject(tx.error);
    });
    db.close();
  }, row);

/** Bytes kept under a hash. */
export async function storedBytes(page: Page, sha256: string): Promise<Buffer> {
  const base64 = await page.evaluate(async (key) => {
    const db = await new Promise<IDBDatabase>((resolve, reject) => {
      const opening = indexedDB.open('blockworth');
      opening.onsuccess = () => resolve(opening.result);
      opening.onerror = () => reject(opening.error);
    });
    const row = await new Promise<{ bytes: ArrayBuffer } | undefined>((resolve, reject) => {
      const reading = db.transaction('bytes').objectStore('bytes').get(key);
      reading.onsuccess = () => resolve(reading.result);
      reading.onerror = () => reject(reading.error);
    });
    db.close();
    if (!row) throw new Error(`No bytes under ${key}.`);
    const bytes = new Uint8Array(row.bytes);
    let text = '';
    for (let at = 0; at < bytes.length; at += 0x8000) text += String.fromCharCode(...bytes.subarray(at, at + 0x8000));
    return btoa(text);
  }, sha256);
  return Buffer.from(base64, 'base64');
}

/**
 * Fills what room the browser gives this origin, past the app, until not even a kilobyte goes in.
 * @returns bytes put in
 */
export const fillStorage = (page: Page): Promise<number> =>
  page.evaluate(async () => {
    const db = await new Promise<IDBDatabase>((resolve, reject) => {
      const opening = indexedDB.open('filler', 1);
      opening.onupgradeneeded = () => opening.result.createObjectStore('rows', { autoIncrement: true });
      opening.onsuccess = () => resolve(opening.result);
      opening.onerror = () => reject(opening.error);
    });
    const goesIn = (size: number): Promise<boolean> =>
      new Promise((resolve) => {
        const tx = db.transaction('rows', 'readwrite', { durability: 'strict' });
        // Noise, because what repeats is packed.
        const row = new Uint8Array(size);
        for (let at = 0; at < size; at += 0x10000) crypto.getRandomValues(row.subarray(at, at + 0x10000));
        tx.objectStore('rows').add(row);
        tx.oncomplete = () => resolve(true);
        tx.onabort = () => resolve(false);
      });
    let total = 0;
    for (const size of [1 << 20, 1 << 17, 1 << 14, 1 << 10]) while (await goesIn(size)) total += size;
    db.close();
    return total;
  });

/** All a device keeps: records in the order of their ids, bytes by hash with the hash they really have, rows of history. */
export interface Held {
  readonly records: readonly Row[];
  readonly bytes: readonly (readonly [key: string, sha256: string])[];
  readonly changes: number;
  readonly notes: readonly string[];
}

/** Everything in the page's database, read past the app. */
export const storedAll = (page: Page): Promise<Held> =>
  page.evaluate(async () => {
    const db = await new Promise<IDBDatabase>((resolve, reject) => {
      const opening = indexedDB.open('blockworth');
      opening.onsuccess = () => resolve(opening.result);
      opening.onerror = () => reject(opening.error);
    });
    const done = <T>(request: IDBRequest<T>): Promise<T> =>
      new Promise((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
    const store = (name: string) => db.transaction(name).objectStore(name);
    const keys = (await done(store('bytes').getAllKeys())).map(String);
    const bytes: [string, string][] = [];
    for (const key of keys) {
      const row: { bytes: ArrayBuffer } = await done(store('bytes').get(key));
      const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', row.bytes));
      bytes.push([key, Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('')]);
    }
    const records = (await done(store('records').getAll())) as { id: string; type: string }[];
    const changes = await done(store('changes').count());
    const notes = (await done(store('meta').getAllKeys())).map(String).filter((key) => key.startsWith('note:'));
    db.close();
    return { records: records.sort((a, b) => (a.id < b.id ? -1 : 1)), bytes, changes, notes };
  });
