export { EmbeddedDatabase } from './embedded.js';
export type { EmbeddedOptions } from './place.js';
