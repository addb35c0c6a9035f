import { EmbeddedDatabase } from './embedded.js';

/** A database that is open for a command. */
export interface OpenDatabase {
  readonly url: string;
  close(): Promise<void>;
}

/** The database of the settings: the server of DATABASE_URL, else the embedded one, started or adopted. */
export async function openDatabase({ DATABASE_URL, STOKEHOLD_DATA }: { readonly DATABASE_URL?: string | undefined; readonly STOKEHOLD_DATA: string }): Promise<OpenDatabase> {
  if (DATABASE_URL) return { url: DATABASE_URL, close: () => Promise.resolve() };
  return EmbeddedDatabase.open({ folder: STOKEHOLD_DATA });
}
