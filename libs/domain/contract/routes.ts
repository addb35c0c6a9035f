import { z } from 'zod';
import { acknowledgeAlarm } from './alarm.js';
import { checkRecorded, checkView, readingsRecorded, recordCheck, recordReadings } from './check.js';
import { cookId, deviceId, instant, lotId, pitId, serviceId, taskId } from './field.js';
import { placeCook, saveCook, saveService, serviceCost, takeOff } from './food.js';
import {
  device, deviceCode, done, enrolDevice, firstRun, health, makeDeviceCode, me, revokeDevice, signIn, signInChoices,
} from './identity.js';
import { route } from './route.js';
import { addTask, finishTask, handover, planShift, reportBreak, reportPresence, signHandover } from './shift.js';
import { yardState } from './state.js';
import { recordWeather } from './weather.js';
import { buyLot, measureLot, moveWood, recountLot, woodMoved } from './wood.js';
import { saveCrewMember, savePit, saveYard, setup } from './yard.js';

const key = ['key-reused'] as const;

/** Every address of the API. The server registers these, the board calls these, the OpenAPI page lists these. */
export const routes = {
  health: route({ method: 'GET', path: '/health', may: 'open', summary: 'Whether the house is ready', reply: health, refusals: [] }),

  firstRun: route({ method: 'POST', path: '/first-run', may: 'open', summary: 'Make the yard and its manager, once', body: firstRun, reply: me, refusals: ['first-run-done', 'first-run-token-wrong', 'too-many-requests'] }),
  enrolDevice: route({ method: 'POST', path: '/devices/enrol', may: 'open', summary: 'Enrol this device with a one-time code', body: enrolDevice, reply: me, refusals: ['code-unknown', 'too-many-requests'] }),
  signInChoices: route({ method: 'GET', path: '/sign-in', may: 'device', summary: 'Who may sign in on this device', reply: signInChoices, refusals: [] }),
  signIn: route({ method: 'POST', path: '/sign-in', may: 'device', summary: 'Sign in on this device with a PIN', body: signIn, reply: me, refusals: ['pin-wrong', 'pin-wait', 'pin-off', 'person-unknown', 'too-many-requests'] }),
  signOut: route({ method: 'POST', path: '/sign-out', may: 'device', summary: 'Sign out on this device', reply: done, refusals: [] }),
  me: route({ method: 'GET', path: '/me', may: 'device', summary: 'Which yard, device and person this is', reply: me, refusals: [] }),
  devices: route({ method: 'GET', path: '/devices', may: 'manage', summary: 'The enrolled devices', reply: z.array(device), refusals: [] }),
  makeDeviceCode: route({ method: 'POST', path: '/devices/codes', may: 'manage', summary: 'Make a one-time code for a new device', body: makeDeviceCode, reply: deviceCode, refusals: key }),
  revokeDevice: route({ method: 'POST', path: '/devices/:deviceId/revoke', may: 'manage', summary: 'End a device', params: z.object({ deviceId }), body: revokeDevice, reply: done, refusals: ['device-not-found', 'device-in-hand', ...key] }),

  state: route({ method: 'GET', path: '/state', may: 'look', summary: 'Everything a board shows', reply: yardState, refusals: [] }),

  setup: route({ method: 'GET', path: '/setup', may: 'plan', summary: 'The yard as it is set up', reply: setup, refusals: [] }),
  saveYard: route({ method: 'POST', path: '/yard', may: 'manage', summary: 'Change the yard', body: saveYard, reply: done, refusals: key }),
  savePit: route({ method: 'POST', path: '/pits', may: 'manage', summary: 'Add or change a pit', body: savePit, reply: done, refusals: ['name-taken', 'id-taken', 'pit-burning', 'zone-unknown', 'zone-in-use', ...key] }),
  saveCrewMember: route({ method: 'POST', path: '/crew', may: 'manage', summary: 'Add or change a crew member', body: saveCrewMember, reply: done, refusals: ['name-taken', 'id-taken', 'last-manager', ...key] }),

  planShift: route({ method: 'POST', path: '/shifts', may: 'plan', summary: 'Plan or change a shift', body: planShift, reply: done, refusals: ['shift-ends-before-it-begins', 'shift-too-long', 'shift-overlaps', 'shift-has-ended', 'person-on-two-shifts', 'person-unknown', 'pit-unknown', 'shift-unknown', 'break-outside-shift', 'hours-outside-shift', 'light-outside-shift', 'id-taken', ...key] }),
  reportPresence: route({ method: 'POST', path: '/presence', may: 'record', summary: 'Say that somebody is late, away or here', body: reportPresence, reply: done, refusals: ['person-not-on-shift', ...key] }),
  reportBreak: route({ method: 'POST', path: '/breaks', may: 'record', summary: 'Begin or end a break', body: reportBreak, reply: done, refusals: ['person-not-on-shift', 'break-unknown', ...key] }),
  addTask: route({ method: 'POST', path: '/tasks', may: 'plan', summary: 'Add a task to the night, or change it', body: addTask, reply: done, refusals: ['pit-unknown', 'task-unknown', 'task-done-already', 'times-out-of-order', ...key] }),
  finishTask: route({ method: 'POST', path: '/tasks/:taskId/done', may: 'record', summary: 'Say that a task is done', params: z.object({ taskId }), body: finishTask, reply: done, refusals: ['task-unknown', 'task-done-already', ...key] }),
  signHandover: route({ method: 'POST', path: '/handovers', may: 'record', summary: 'Sign the night over', body: signHandover, reply: handover, refusals: ['person-unknown', ...key] }),
  handovers: route({ method: 'GET', path: '/handovers', may: 'look', summary: 'The last handovers', reply: z.array(handover), refusals: [] }),

  recordCheck: route({ method: 'POST', path: '/checks', may: 'record', summary: 'Record a fire check', body: recordCheck, reply: checkRecorded, refusals: ['pit-unknown', 'pit-not-burning', 'lot-unknown', 'check-too-old', 'check-in-the-future', ...key] }),
  checks: route({ method: 'GET', path: '/checks', may: 'look', summary: 'The fire checks of one pit since a time', query: z.object({ pitId, since: instant }), reply: z.array(checkView), refusals: ['pit-unknown'] }),
  recordReadings: route({ method: 'POST', path: '/readings', may: 'read-in', summary: 'Send probe readings', body: recordReadings, reply: readingsRecorded, refusals: ['probe-unknown', ...key] }),
  recordWeather: route({ method: 'POST', path: '/weather', may: 'record', summary: 'Say how the wind stands', body: recordWeather, reply: done, refusals: key }),

  buyLot: route({ method: 'POST', path: '/lots', may: 'plan', summary: 'Take a bought lot into the stack', body: buyLot, reply: done, refusals: ['name-taken', ...key] }),
  measureLot: route({ method: 'POST', path: '/lots/:lotId/moisture', may: 'record', summary: 'Record a moisture reading', params: z.object({ lotId }), body: measureLot, reply: done, refusals: ['lot-unknown', ...key] }),
  moveWood: route({ method: 'POST', path: '/wood-moves', may: 'record', summary: 'Pull wood to a cart or bring it back', body: moveWood, reply: woodMoved, refusals: ['lot-unknown', 'pit-unknown', 'lot-empty', 'cart-empty', ...key] }),
  recountLot: route({ method: 'POST', path: '/recounts', may: 'record', summary: 'Correct a count with a reason', body: recountLot, reply: woodMoved, refusals: ['lot-unknown', 'pit-unknown', ...key] }),

  saveCook: route({ method: 'POST', path: '/cooks', may: 'plan', summary: 'Add or change a cook', body: saveCook, reply: done, refusals: ['service-unknown', 'cook-is-off', 'pieces-more-than-cook', ...key] }),
  placeCook: route({ method: 'POST', path: '/placements', may: 'record', summary: 'Say where a cook lies', body: placeCook, reply: done, refusals: ['cook-unknown', 'cook-is-off', 'pit-unknown', 'zone-unknown', 'pieces-more-than-cook', ...key] }),
  takeOff: route({ method: 'POST', path: '/cooks/:cookId/off', may: 'record', summary: 'Take a cook off', params: z.object({ cookId }), body: takeOff, reply: done, refusals: ['cook-unknown', 'cook-is-off', ...key] }),
  saveService: route({ method: 'POST', path: '/services', may: 'plan', summary: 'Add or change a service', body: saveService, reply: done, refusals: ['service-in-the-past', ...key] }),
  serviceCost: route({ method: 'GET', path: '/services/:serviceId/cost', may: 'plan', summary: 'What a service has cost so far', params: z.object({ serviceId }), reply: serviceCost, refusals: ['service-unknown'] }),

  acknowledgeAlarm: route({ method: 'POST', path: '/alarms/:alarmId/acknowledge', may: 'record', summary: 'Acknowledge an alarm', params: z.object({ alarmId: z.uuid() }), body: acknowledgeAlarm, reply: done, refusals: ['alarm-unknown', ...key] }),
} as const;
export type Routes = typeof routes;
export type RouteName = keyof Routes;
