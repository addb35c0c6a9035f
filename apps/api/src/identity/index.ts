export { type CookieRequest, type CookieResponse, putDevice, putSession } from './cookies.js';
export { DeviceRates } from './device-rates.js';
export { Enrolment } from './enrolment.js';
export { FirstRunToken } from './first-run-token.js';
export { IdentityModule } from './identity.module.js';
export { Identity } from './identity.service.js';
export { Open } from './open.js';
export { isOwnOrigin } from './origin.js';
export { Pins } from './pins.js';
