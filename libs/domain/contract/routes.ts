import { z } from 'zod';
import { acknowledgeAlarm, alarmReport, shelveAlarm } from './alarm.js';
import { checkRecorded, checkView, recordCheck } from './check.js';
import { afterPitView, askAfterPit, askCookWhatIf, cookCourse, cookWhatIf, cutSettings, foodLimits, foodRecorded, recordFood, saveCut, saveFoodLimits } from './cooking.js';
import { cookId, deviceId, instant, lotId, personId, pitId, probeId, serviceId, shiftId, taskId } from './field.js';
import { firePage, setLearnedBack } from './fire-page.js';
import { placeCook, saveCook, saveService, serviceCost, takeOff } from './food.js';
import {
  device, deviceCode, done, endSession, enrolDevice, firstRun, health, makeDeviceCode, me, revokeDevice, sessionView, signIn, signInChoices,
} from './identity.js';
import { fairnessView } from './fairness.js';
import { askWhatIf, askWhy, pinWork, whatIfView, whyView } from './plan-answers.js';
import { assignSource, calibrateProbe, pasteReadings, probeCourses, probesView, readingsPasted, readingsRecorded, recordReadings } from './reading.js';
import { askRecords, correctRecord, recordNights, recordsView } from './record.js';
import { route } from './route.js';
import { addTask, finishTask, handover, handoverNow, planShift, reportBreak, reportPresence, rosterView, shiftView, signHandover } from './shift.js';
import { yardState } from './state.js';
import { burnOffcuts, buyLot, lotBought, measureLot, moveWood, offcutsBurned, offcutsCounted, recountLot, recountOffcuts, splitsTrimmed, trimSplits, woodMoved } from './wood.js';
import { forecastView, recordWeather } from './weather.js';
import { lotRead, makePull, payRules, priceCook, pullView, readLot, saveClimate, savePayRules, serviceCosts, woodyardView } from './woodyard.js';
import { calendarAddress, makeCalendarAddress, saveWebhook, webhookSaved, webhookView } from './link.js';
import { cookSupposed, loadingView, moveWeighed, supposeCook, weighMove } from './loading.js';
import { houseStatus } from './status.js';
import { saveCrewMember, savePit, saveYard, setup } from './yard.js';

const key = ['key-reused'] as const;

/** Every address of the API. The server registers these, the board calls these, the OpenAPI page lists these. */
export const routes = {
  health: route({ method: 'GET', path: '/health', may: 'open', summary: 'Whether the house is ready', reply: health, refusals: [] }),
  status: route({ method: 'GET', path: '/status', may: 'manage', summary: 'What is wrong with the house, since when, and what still works', reply: houseStatus, refusals: [] }),

  firstRun: route({ method: 'POST', path: '/first-run', may: 'open', summary: 'Make the yard and its manager, once', body: firstRun, reply: me, refusals: ['first-run-done', 'first-run-token-wrong', 'too-many-requests'] }),
  enrolDevice: route({ method: 'POST', path: '/devices/enrol', may: 'open', summary: 'Enrol this device with a one-time code', body: enrolDevice, reply: me, refusals: ['code-unknown', 'too-many-requests'] }),
  signInChoices: route({ method: 'GET', path: '/sign-in', may: 'device', summary: 'Who may sign in on this device', reply: signInChoices, refusals: [] }),
  signIn: route({ method: 'POST', path: '/sign-in', may: 'device', summary: 'Sign in on this device with a PIN or a password', body: signIn, reply: me, refusals: ['pin-wrong', 'pin-wait', 'pin-off', 'person-unknown', 'too-many-requests'] }),
  signOut: route({ method: 'POST', path: '/sign-out', may: 'device', summary: 'Sign out on this device', reply: done, refusals: [] }),
  me: route({ method: 'GET', path: '/me', may: 'device', summary: 'Which yard, device and person this is', reply: me, refusals: [] }),
  devices: route({ method: 'GET', path: '/devices', may: 'manage', summary: 'The enrolled devices', reply: z.array(device), refusals: [] }),
  makeDeviceCode: route({ method: 'POST', path: '/devices/codes', may: 'manage', summary: 'Make a one-time code for a new device', body: makeDeviceCode, reply: deviceCode, refusals: key }),
  revokeDevice: route({ method: 'POST', path: '/devices/:deviceId/revoke', may: 'manage', summary: 'End a device', params: z.object({ deviceId }), body: revokeDevice, reply: done, refusals: ['device-not-found', 'device-in-hand', ...key] }),

  sessions: route({ method: 'GET', path: '/sessions', may: 'record', summary: 'Who is signed in where; of others only for the manager', reply: z.array(sessionView), refusals: [] }),
  endSession: route({ method: 'POST', path: '/sessions/:deviceId/end', may: 'record', summary: 'Sign out whoever is signed in on a device', params: z.object({ deviceId }), body: endSession, reply: done, refusals: ['session-unknown', ...key] }),

  state: route({ method: 'GET', path: '/state', may: 'look', summary: 'Everything a board shows', reply: yardState, refusals: [] }),

  setup: route({ method: 'GET', path: '/setup', may: 'plan', summary: 'The yard as it is set up', reply: setup, refusals: [] }),
  saveYard: route({ method: 'POST', path: '/yard', may: 'manage', summary: 'Change the yard', body: saveYard, reply: done, refusals: key }),
  savePit: route({ method: 'POST', path: '/pits', may: 'manage', summary: 'Add or change a pit', body: savePit, reply: done, refusals: ['name-taken', 'id-taken', 'pit-burning', 'zone-unknown', 'zone-in-use', ...key] }),
  saveCrewMember: route({ method: 'POST', path: '/crew', may: 'manage', summary: 'Add or change a crew member', body: saveCrewMember, reply: done, refusals: ['name-taken', 'id-taken', 'last-manager', ...key] }),

  planShift: route({ method: 'POST', path: '/shifts', may: 'plan', summary: 'Plan or change a shift', body: planShift, reply: done, refusals: ['shift-ends-before-it-begins', 'shift-too-long', 'shift-overlaps', 'shift-has-ended', 'person-on-two-shifts', 'person-unknown', 'pit-unknown', 'shift-unknown', 'break-outside-shift', 'hours-outside-shift', 'light-outside-shift', 'id-taken', ...key] }),
  reportPresence: route({ method: 'POST', path: '/presence', may: 'record', summary: 'Say that somebody is late, away or here', body: reportPresence, reply: done, refusals: ['person-not-on-shift', ...key] }),
  reportBreak: route({ method: 'POST', path: '/breaks', may: 'record', summary: 'Begin or end a break', body: reportBreak, reply: done, refusals: ['person-not-on-shift', 'break-unknown', ...key] }),
  addTask: route({ method: 'POST', path: '/tasks', may: 'plan', summary: 'Add a task to the night, or change it', body: addTask, reply: done, refusals: ['id-taken', 'pit-unknown', 'task-unknown', 'task-done-already', 'times-out-of-order', ...key] }),
  finishTask: route({ method: 'POST', path: '/tasks/:taskId/done', may: 'record', summary: 'Say that a task is done', params: z.object({ taskId }), body: finishTask, reply: done, refusals: ['task-unknown', 'task-done-already', ...key] }),
  comingShifts: route({ method: 'GET', path: '/shifts', may: 'look', summary: 'The shift that runs and those to come', reply: z.array(shiftView), refusals: [] }),
  roster: route({ method: 'GET', path: '/shifts/:shiftId/roster', may: 'plan', summary: 'How many people each hour of a shift needs', params: z.object({ shiftId }), reply: rosterView, refusals: ['shift-unknown'] }),
  handoverNow: route({ method: 'GET', path: '/handovers/now', may: 'record', summary: 'How the night stands, before it is signed over', query: z.object({ toPersonId: personId.optional() }), reply: handoverNow, refusals: ['person-unknown'] }),
  signHandover: route({ method: 'POST', path: '/handovers', may: 'record', summary: 'Sign the night over', body: signHandover, reply: handover, refusals: ['person-unknown', ...key] }),
  handovers: route({ method: 'GET', path: '/handovers', may: 'look', summary: 'The last handovers', reply: z.array(handover), refusals: [] }),

  whyWork: route({ method: 'GET', path: '/plan/why', may: 'look', summary: 'Why somebody has a piece of work, who else could, and why it is late', query: askWhy, reply: whyView, refusals: ['no-plan', 'work-unknown'] }),
  whatIf: route({ method: 'POST', path: '/plan/what-if', may: 'plan', summary: 'What a supposed night would change; nothing is kept', body: askWhatIf, reply: whatIfView, refusals: ['no-plan', 'plan-breaks-rule', 'work-unknown', 'person-unknown', 'pit-unknown', 'break-unknown'] }),
  fairness: route({ method: 'GET', path: '/fairness', may: 'look', summary: 'How work was shared over the last nights, and tonight', reply: fairnessView, refusals: [] }),
  pinWork: route({ method: 'POST', path: '/plan/pins', may: 'plan', summary: 'Decide who does a piece of work or when it begins, or take that back', body: pinWork, reply: done, refusals: ['no-plan', 'plan-breaks-rule', 'work-unknown', 'person-unknown', ...key] }),

  recordCheck: route({ method: 'POST', path: '/checks', may: 'record', summary: 'Record a fire check', body: recordCheck, reply: checkRecorded, refusals: ['pit-unknown', 'pit-not-burning', 'lot-unknown', 'check-too-old', 'check-in-the-future', ...key] }),
  checks: route({ method: 'GET', path: '/checks', may: 'look', summary: 'The fire checks of one pit since a time', query: z.object({ pitId, since: instant }), reply: z.array(checkView), refusals: ['pit-unknown'] }),
  firePage: route({ method: 'GET', path: '/pits/:pitId/fire', may: 'look', summary: 'One fire over one night: what was forecast, what came, what was learned', params: z.object({ pitId }), query: z.object({ shiftId: shiftId.optional() }), reply: firePage, refusals: ['pit-unknown', 'shift-unknown'] }),
  setLearnedBack: route({ method: 'POST', path: '/pits/:pitId/learned/set-back', may: 'plan', summary: 'Let go of what was learned of a pit, with the reason', params: z.object({ pitId }), body: setLearnedBack, reply: done, refusals: ['pit-unknown', 'nothing-learned', ...key] }),
  recordReadings: route({ method: 'POST', path: '/readings', may: 'read-in', summary: 'Send probe readings', body: recordReadings, reply: readingsRecorded, refusals: key }),
  pasteReadings: route({ method: 'POST', path: '/readings/pasted', may: 'plan', summary: 'Take in readings as a table: probe, time, temperature', body: pasteReadings, reply: readingsPasted, refusals: ['not-a-table', ...key] }),
  probes: route({ method: 'GET', path: '/probes', may: 'look', summary: 'How each probe stands, and readings of probes that nobody set up', reply: probesView, refusals: [] }),
  probeCourses: route({ method: 'GET', path: '/probes/courses', may: 'look', summary: 'What every probe showed in the day that begins then, in means of two minutes', query: z.object({ from: instant }), reply: probeCourses, refusals: [] }),
  calibrateProbe: route({ method: 'POST', path: '/probes/:probeId/calibrate', may: 'record', summary: 'Say what a probe showed beside the truth', params: z.object({ probeId }), body: calibrateProbe, reply: done, refusals: ['probe-unknown', ...key] }),
  assignSource: route({ method: 'POST', path: '/readings/aside/assign', may: 'plan', summary: 'Give the readings of an unknown name to a probe, from the first on', body: assignSource, reply: readingsRecorded, refusals: ['probe-unknown', 'source-taken', ...key] }),
  recordWeather: route({ method: 'POST', path: '/weather', may: 'record', summary: 'Say how the wind stands', body: recordWeather, reply: done, refusals: key }),
  forecast: route({ method: 'GET', path: '/weather/forecast', may: 'look', summary: 'The hours ahead, where a service is asked for them', reply: forecastView, refusals: [] }),

  buyLot: route({ method: 'POST', path: '/lots', may: 'plan', summary: 'Take a bought lot into the stack', body: buyLot, reply: lotBought, refusals: ['id-taken', 'name-taken', ...key] }),
  measureLot: route({ method: 'POST', path: '/lots/:lotId/moisture', may: 'record', summary: 'Record a moisture reading', params: z.object({ lotId }), body: measureLot, reply: done, refusals: ['lot-unknown', ...key] }),
  moveWood: route({ method: 'POST', path: '/wood-moves', may: 'record', summary: 'Pull wood to a cart or bring it back', body: moveWood, reply: woodMoved, refusals: ['lot-unknown', 'pit-unknown', 'lot-empty', 'cart-empty', ...key] }),
  recountLot: route({ method: 'POST', path: '/recounts', may: 'record', summary: 'Correct a count with a reason', body: recountLot, reply: woodMoved, refusals: ['lot-unknown', 'pit-unknown', 'counted-meanwhile', ...key] }),
  trimSplits: route({ method: 'POST', path: '/trims', may: 'record', summary: 'Splits of a cart were trimmed to lie across', body: trimSplits, reply: splitsTrimmed, refusals: ['lot-unknown', 'pit-unknown', 'cart-empty', 'lies-as-it-is', ...key] }),
  burnOffcuts: route({ method: 'POST', path: '/offcuts', may: 'record', summary: 'Offcuts went on at lighting', body: burnOffcuts, reply: offcutsBurned, refusals: ['pit-unknown', ...key] }),
  recountOffcuts: route({ method: 'POST', path: '/offcut-recounts', may: 'record', summary: 'Correct a count of offcuts with a reason', body: recountOffcuts, reply: offcutsCounted, refusals: ['lot-unknown', 'counted-meanwhile', ...key] }),
  readLot: route({ method: 'POST', path: '/lots/:lotId/meter', may: 'record', summary: 'Record what a moisture meter showed', params: z.object({ lotId }), body: readLot, reply: lotRead, refusals: ['lot-unknown', 'not-a-moisture', ...key] }),
  woodyard: route({ method: 'GET', path: '/woodyard', may: 'look', summary: 'What is ready, what to trim, what to buy, whether it lasts', reply: woodyardView, refusals: [] }),
  saveClimate: route({ method: 'POST', path: '/climate', may: 'plan', summary: 'Say what the climate of the stack is', body: saveClimate, reply: done, refusals: key }),
  makePull: route({ method: 'POST', path: '/pulls', may: 'plan', summary: 'Plan which wood goes to which pit, and its hauls', body: makePull, reply: pullView, refusals: ['nothing-burns', ...key] }),

  saveCook: route({ method: 'POST', path: '/cooks', may: 'plan', summary: 'Add or change a cook', body: saveCook, reply: done, refusals: ['id-taken', 'service-unknown', 'cook-is-off', 'pieces-more-than-cook', 'mix-impossible', ...key] }),
  placeCook: route({ method: 'POST', path: '/placements', may: 'record', summary: 'Say where a cook lies', body: placeCook, reply: done, refusals: ['cook-unknown', 'cook-is-off', 'pit-unknown', 'zone-unknown', 'pieces-more-than-cook', ...key] }),
  takeOff: route({ method: 'POST', path: '/cooks/:cookId/off', may: 'record', summary: 'Take a cook off', params: z.object({ cookId }), body: takeOff, reply: done, refusals: ['cook-unknown', 'cook-is-off', ...key] }),
  saveService: route({ method: 'POST', path: '/services', may: 'plan', summary: 'Add or change a service', body: saveService, reply: done, refusals: ['id-taken', 'service-in-the-past', ...key] }),
  serviceCost: route({ method: 'GET', path: '/services/:serviceId/cost', may: 'plan', summary: 'What a service has cost so far', params: z.object({ serviceId }), reply: serviceCost, refusals: ['service-unknown'] }),

  loading: route({ method: 'GET', path: '/loading', may: 'look', summary: 'What should lie where, and which cook goes on which pit when', reply: loadingView, refusals: [] }),
  weighMove: route({ method: 'POST', path: '/loading/moves/weigh', may: 'look', summary: 'What pieces moved by hand would break and cost; nothing is kept', body: weighMove, reply: moveWeighed, refusals: ['pit-unknown', 'cook-unknown'] }),
  supposeCook: route({ method: 'POST', path: '/cook-plan/suppose', may: 'look', summary: 'What a cook at another time would change; nothing is kept', body: supposeCook, reply: cookSupposed, refusals: ['cook-unknown'] }),

  cuts: route({ method: 'GET', path: '/cuts', may: 'look', summary: 'The cuts of this yard, with where their values come from', reply: z.array(cutSettings), refusals: [] }),
  saveCut: route({ method: 'POST', path: '/cuts', may: 'plan', summary: 'Add or change a cut', body: saveCut, reply: done, refusals: ['cut-not-valid', ...key] }),
  foodLimits: route({ method: 'GET', path: '/food-limits', may: 'look', summary: 'Which food code this yard is held to, and its own values', reply: foodLimits, refusals: [] }),
  saveFoodLimits: route({ method: 'POST', path: '/food-limits', may: 'manage', summary: 'Choose the food code and set own, stricter values', body: saveFoodLimits, reply: done, refusals: ['laxer-than-code', ...key] }),
  recordFood: route({ method: 'POST', path: '/food-log', may: 'read-in', summary: 'Record temperatures of food, wraps and what was done', body: recordFood, reply: foodRecorded, refusals: ['cook-unknown', 'food-entry-unknown', 'not-allowed', ...key] }),
  cookCourse: route({ method: 'GET', path: '/cooks/:cookId/course', may: 'look', summary: 'One cook: its forecast, its log, its limits', params: z.object({ cookId }), reply: cookCourse, refusals: ['cook-unknown'] }),
  afterPit: route({ method: 'POST', path: '/cooks/:cookId/after', may: 'look', summary: 'Carry-over, rest, hold and cooling as they are meant, and when to portion; nothing is kept', params: z.object({ cookId }), body: askAfterPit, reply: afterPitView, refusals: ['cook-unknown', 'cook-not-on'] }),
  cookWhatIf: route({ method: 'POST', path: '/cooks/:cookId/what-if', may: 'look', summary: 'What a change would do to a cook; nothing is kept', params: z.object({ cookId }), body: askCookWhatIf, reply: cookWhatIf, refusals: ['cook-unknown', 'cook-not-on', 'already-wrapped'] }),

  serviceCosts: route({ method: 'GET', path: '/service-costs', may: 'plan', summary: 'What the services since a time cost', query: z.object({ since: instant }), reply: serviceCosts, refusals: [] }),
  priceCook: route({ method: 'POST', path: '/cooks/:cookId/price', may: 'plan', summary: 'Say what a cook\'s meat cost', params: z.object({ cookId }), body: priceCook, reply: done, refusals: ['cook-unknown', ...key] }),
  payRules: route({ method: 'GET', path: '/pay-rules', may: 'plan', summary: 'How the yard pays breaks, nights and long shifts', reply: payRules, refusals: [] }),
  savePayRules: route({ method: 'POST', path: '/pay-rules', may: 'manage', summary: 'Change how the yard pays', body: savePayRules, reply: done, refusals: key }),

  acknowledgeAlarm: route({ method: 'POST', path: '/alarms/:alarmId/acknowledge', may: 'record', summary: 'Acknowledge an alarm', params: z.object({ alarmId: z.uuid() }), body: acknowledgeAlarm, reply: done, refusals: ['alarm-unknown', ...key] }),
  shelveAlarm: route({ method: 'POST', path: '/alarms/:alarmId/shelve', may: 'record', summary: 'Set an alarm aside for a time', params: z.object({ alarmId: z.uuid() }), body: shelveAlarm, reply: done, refusals: ['alarm-unknown', 'alarm-not-shelvable', 'shelf-too-long', ...key] }),
  unshelveAlarm: route({ method: 'POST', path: '/alarms/:alarmId/unshelve', may: 'record', summary: 'Let a shelved alarm call again', params: z.object({ alarmId: z.uuid() }), body: acknowledgeAlarm, reply: done, refusals: ['alarm-unknown', ...key] }),
  alarmReport: route({ method: 'GET', path: '/alarms/report', may: 'look', summary: 'What the alarms of a night came to, by person and by alarm', query: z.object({ shiftId: shiftId.optional() }), reply: alarmReport, refusals: ['shift-unknown'] }),

  records: route({ method: 'GET', path: '/records', may: 'plan', summary: 'What was kept of a stretch of time, and which published limits it was held to', query: askRecords, reply: recordsView, refusals: ['times-out-of-order', 'range-too-long'] }),
  recordNights: route({ method: 'GET', path: '/records/nights', may: 'plan', summary: 'The nights of the last two months', reply: recordNights, refusals: [] }),
  correctRecord: route({ method: 'POST', path: '/records/corrections', may: 'plan', summary: 'Write beside a line of the record what is right; the line stays', body: correctRecord, reply: done, refusals: ['line-unknown', ...key] }),

  webhook: route({ method: 'GET', path: '/webhook', may: 'manage', summary: 'Where alarms and due checks are posted', reply: webhookView, refusals: [] }),
  saveWebhook: route({ method: 'POST', path: '/webhook', may: 'manage', summary: 'Post alarms and due checks to an address, or to none', body: saveWebhook, reply: webhookSaved, refusals: key }),
  makeCalendarAddress: route({ method: 'POST', path: '/calendars', may: 'record', summary: 'Make a secret address under which calendar programs read my shifts', body: makeCalendarAddress, reply: calendarAddress, refusals: key }),
} as const;
export type Routes = typeof routes;
export type RouteName = keyof Routes;
