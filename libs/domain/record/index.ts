export { canonicalJson } from './canonical.js';
