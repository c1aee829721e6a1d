/** The cells of whole flows kept in the browser by the name that follows from their inputs; else asked of the local server. */

const DATABASE = 'plumeline-flow';
const STORE = 'cells';
/** More than this are not kept: the oldest go first. */
const MOST = 400;

/** Null where the browser has none of that name, or does not give it any more. */
export async function keptCells(key: string): Promise<string | null> {
  const shelf = await opened();
  return shelf === null ? null : read(shelf, key).catch(() => null);
}

/** @returns whether it is kept now */
export async function keepCells(key: string, text: string): Promise<boolean> {
  const shelf = await opened();
  return shelf === null ? false : keep(shelf, key, text).catch(() => false);
}

/** Null where the server has none of that name, or is not there. */
export async function cellText(key: string): Promise<string | null> {
  const kept = await keptCells(key);
  if (kept !== null) return kept;
  const reply = await fetch(`/api/flows/cells?key=${key}`, { cache: 'no-store' }).catch(() => null);
  if (reply?.ok !== true) return null;
  const text = await reply.text();
  await keepCells(key, text);
  return text;
}

interface Kept {
  readonly text: string;
  /** In the order in which they came. */ readonly at: number;
}

let opening: Promise<IDBDatabase | null> | null = null;

/** Null where the browser keeps nothing, as in a private window or where storage is forbidden. */
function opened(): Promise<IDBDatabase | null> {
  opening ??= new Promise<IDBDatabase | null>((resolve) => {
    const request = indexedDB.open(DATABASE, 1);
    request.onupgradeneeded = () => {
      request.result.createObjectStore(STORE).createIndex('at', 'at');
    };
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => resolve(null);
    request.onblocked = () => resolve(null);
  }).catch(() => null);
  return opening;
}

function read(shelf: IDBDatabase, key: string): Promise<string | null> {
  return new Promise((resolve) => {
    const request = shelf.transaction(STORE).objectStore(STORE).get(key) as IDBRequest<Kept | undefined>;
    request.onsuccess = () => resolve(request.result?.text ?? null);
    request.onerror = () => resolve(null);
  });
}

/** What does not fit is not kept; the page goes on with what it has. */
function keep(shelf: IDBDatabase, key: string, text: string): Promise<boolean> {
  return new Promise((resolve) => {
    const work = shelf.transaction(STORE, 'readwrite');
    const store = work.objectStore(STORE);
    store.put({ text, at: Date.now() } satisfies Kept, key);
    const count = store.count();
    count.onsuccess = () => {
      let over = count.result - MOST;
      if (over <= 0) return;
      const oldest = store.index('at').openCursor();
      oldest.onsuccess = () => {
        const cursor = oldest.result;
        if (cursor === null || over <= 0) return;
        cursor.delete();
        over -= 1;
        cursor.continue();
      };
    };
    work.oncomplete = () => resolve(true);
    work.onerror = () => resolve(false);
    work.onabort = () => resolve(false);
  });
}
