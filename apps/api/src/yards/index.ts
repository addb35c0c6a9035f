export { Crew } from './crew.service.js';
export type { Yard } from './yard.store.js';
export { YardsModule } from './yards.module.js';
export { Yards } from './yards.service.js';
