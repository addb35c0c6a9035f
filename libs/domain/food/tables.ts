import { type MeatTables, meatTables } from './bodies.js';
import type { Composition } from './cut.js';

/** Tables already made, by composition: the same in and out, only not made twice. */
const made = new Map<string, MeatTables>();
const MOST_KEPT = 64;

/** Tables of a composition. Source: meat.ts. */
export function tablesOf(composition: Composition): MeatTables {
  const key = `${composition.waterFrac}/${composition.proteinFrac}/${composition.fatFrac}/${composition.ashFrac}`;
  const before = made.get(key);
  if (before) return before;
  const tables = meatTables(composition);
  if (made.size >= MOST_KEPT) made.clear();
  made.set(key, tables);
  return tables;
}
