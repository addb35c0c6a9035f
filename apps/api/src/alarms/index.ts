export { AlarmsModule } from './alarms.module.js';
export { AlarmsReactions } from './alarms.reactions.js';
export { Alarms } from './alarms.service.js';
