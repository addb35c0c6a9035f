export { DocsModule } from './docs.module.js';
