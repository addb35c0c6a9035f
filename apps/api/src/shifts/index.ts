export type { BreakTimes } from './shift.view.js';
export { ShiftsModule } from './shifts.module.js';
export { Shifts } from './shifts.service.js';
export type { Task } from './task.store.js';
export { Tasks } from './tasks.service.js';
export type { PulledTask } from './tasks.service.js';
