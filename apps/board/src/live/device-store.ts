import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import type { Kept } from './kept.js';
import type { LastKnown } from './last-known.js';

interface DeviceStore extends DBSchema {
  kept: { key: number; value: Kept };
  lastKnown: { key: 'only'; value: LastKnown };
}

let database: Promise<IDBPDatabase<DeviceStore>> | undefined;

async function open(): Promise<IDBPDatabase<DeviceStore>> {
  const db = await openDB<DeviceStore>('stokehold', 2, {
    upgrade: (found, before) => {
      if (before < 1) found.createObjectStore('kept', { keyPath: 'nth', autoIncrement: true });
      found.createObjectStore('lastKnown');
    },
    // Another tab brings a newer board: this one lets go, and opens again when it next needs the store.
    blocking: () => {
      db.close();
      database = undefined;
    },
    terminated: () => (database = undefined),
  });
  return db;
}

/** What this device keeps for itself, lastingly: records not yet sent, and the yard as it was last seen. */
export function deviceStore(): Promise<IDBPDatabase<DeviceStore>> {
  database ??= open();
  // A store that could not be opened is tried again the next time.
  database.catch(() => (database = undefined));
  return database;
}
