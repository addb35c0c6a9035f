export { HealthModule } from './health.module.js';
export { VERSION } from './version.js';
