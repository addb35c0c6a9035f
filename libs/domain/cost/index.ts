export { nightCost } from './night.js';
export type { BurnedWood, LotPrice, NightCost, PaidTime, Stay } from './night.js';
export { shareCents } from './share.js';
