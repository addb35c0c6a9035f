export { EmbeddedDatabase } from './embedded.js';
export { openDatabase, type OpenDatabase } from './open.js';
export type { EmbeddedOptions } from './place.js';
