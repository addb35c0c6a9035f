export { FirstRunModule } from './first-run.module.js';
