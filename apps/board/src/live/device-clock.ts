import { yardNowMs } from './heard.js';

/**
 * What the device takes for now when it records something. On a real night this is its own clock, which the server
 * checks; on a practice night there is no clock but the yard's.
 */
export const deviceNow = (practice: boolean): string => new Date(practice ? yardNowMs() : Date.now()).toISOString();
