export { opensAfterS } from './opens-at.js';
export { PracticeModule } from './practice.module.js';
export type { NightReport, PracticeNight } from './practice-night.js';
export { PracticeNights } from './practice.service.js';
export { readSample, type SampleNight } from './sample.js';
