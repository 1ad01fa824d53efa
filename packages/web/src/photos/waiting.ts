/** Photographs that the server does not have yet, in this browser's own store, so that a reload or a flat battery loses none. */

export interface WaitingPhotograph {
  /** Also the id of its record in the job, so that it becomes one record however often it is sent. */
  readonly key: string;
  readonly job: string;
  readonly name: string;
  /** JPEG, made ready to be kept. Bytes, for not every browser stores anything else here. */
  readonly bytes: ArrayBuffer;
}

const database = 'sparewright';
const photographs = 'photographs';

/** @returns false where this browser keeps nothing, as in a private window of some */
export async function putWaiting(photograph: WaitingPhotograph): Promise<boolean> {
  return (await inStore('readwrite', (store) => store.put(photograph))) !== undefined;
}

export async function dropWaiting(key: string): Promise<void> {
  await inStore('readwrite', (store) => store.delete(key));
}

/** Those of a job, in the order in which they were chosen. */
export async function waitingOf(job: string): Promise<readonly WaitingPhotograph[]> {
  const all: unknown[] = (await inStore('readonly', (store) => store.getAll()))?.result ?? [];
  return all.filter(isWaiting).filter((one) => one.job === job);
}

/** Undefined when the store cannot be had or refuses. */
async function inStore<T>(
  mode: IDBTransactionMode,
  work: (store: IDBObjectStore) => IDBRequest<T>,
): Promise<{ readonly result: T } | undefined> {
  try {
    const db = await opened();
    try {
      const transaction = db.transaction(photographs, mode, { durability: 'strict' });
      const request = work(transaction.objectStore(photographs));
      await new Promise<void>((done, failed) => {
        transaction.oncomplete = () => done();
        transaction.onabort = () => failed(transaction.error);
      });
      return { result: request.result };
    } finally {
      db.close();
    }
  } catch {
    return undefined;
  }
}

function opened(): Promise<IDBDatabase> {
  return new Promise((done, failed) => {
    const request = indexedDB.open(database, 1);
    request.onupgradeneeded = () => request.result.createObjectStore(photographs, { keyPath: 'key' });
    request.onsuccess = () => done(request.result);
    request.onerror = () => failed(request.error);
    request.onblocked = () => failed(new Error('another window holds an older store open'));
  });
}

function isWaiting(value: unknown): value is WaitingPhotograph {
  return typeof value === 'object' && value !== null && 'job' in value && 'bytes' in value;
}
