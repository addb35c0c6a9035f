export type { Away, Break, BurningPit, Hours, PersonOnShift, RunningShift } from './crew.js';
export { LEAD_S, lightTask, plannable, runningOf } from './shift.js';
export type { LightTask, PlannedShift, ShiftRefusal } from './shift.js';
export { absences, breakOver, breakReported, onBreak, presenceAt, reported } from './presence.js';
export type { PresenceReport } from './presence.js';
export { paidS, workedS } from './hours.js';
export { walkTableS } from './walk.js';
export type { PlanPlace } from './walk.js';
