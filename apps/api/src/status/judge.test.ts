import { FINDINGS, HOUSE_PARTS } from '@stokehold/domain/contract';
import { describe, expect, it } from 'vitest';
import type { HouseFacts, ProcessSeen } from './facts.js';
import { judge } from './judge.js';

const GB = 1e9;
const process: ProcessSeen = {
  version: '1.2.0', runsForS: 7200, agoS: 2, leads: true, clock: { aheadS: 0, forS: 7200 }, boards: 3, beatAgoS: 1, broker: { isThere: true, forS: 7000 }, redis: { isThere: true, forS: 7100 },
  disk: { usedFrac: 0.4, leftBytes: 60 * GB, isOut: false, forS: 7200 }, ended: [],
};
/** A night on which everything is set up and works. */
const well: HouseFacts = {
  processes: [process],
  database: { answerS: 0.004, forS: 7200, sizeBytes: 2 * GB, full: undefined, elsewhere: false },
  brokerIsSet: true,
  redisIsSet: true,
  outbox: { waiting: 0, oldestAgoS: undefined },
  minute: { shiftRunsForS: 5400, toldAgoS: 31 },
  leftAside: { count: 0, agoS: undefined },
  probes: { of: 8, silent: 0, silentForS: undefined, readAgoS: 6, gateways: [], fireBurns: true },
  forecast: { isAsked: true, isPlaced: true, fetchedAgoS: 1800, failsForS: undefined },
  webhook: { isSet: true, waiting: 0, oldestAgoS: undefined, takenAgoS: 600 },
  backup: { agoS: 200 },
};
const one = (more: Partial<ProcessSeen>): HouseFacts => ({ ...well, processes: [{ ...process, ...more }] });
const several = (...more: Partial<ProcessSeen>[]): HouseFacts => ({ ...well, processes: more.map((each) => ({ ...process, ...each })) });
const disk = (usedFrac: number, leftBytes: number, isOut = false) => one({ disk: { usedFrac, leftBytes, isOut, forS: 40 } });
const probes = (more: Partial<HouseFacts['probes']>): HouseFacts => ({ ...well, probes: { ...well.probes, ...more } });
const forecast = (more: Partial<HouseFacts['forecast']>): HouseFacts => ({ ...well, forecast: { ...well.forecast, ...more } });
const webhook = (more: Partial<HouseFacts['webhook']>): HouseFacts => ({ ...well, webhook: { ...well.webhook, ...more } });
const findings = (facts: HouseFacts) => judge(facts).map(({ finding }) => finding);
/** What is found otherwise than on a good night, and how long it is so. */
const wrong = (facts: HouseFacts) => judge(facts).filter(({ finding }) => !findings(well).includes(finding)).map(({ finding, forS }) => [finding, forS]);

describe('how the house stands', () => {
  it('a good night has every part once, and every part works', () => {
    expect(judge(well).map(({ finding }) => FINDINGS[finding].part)).toEqual(HOUSE_PARTS);
    expect(judge(well).map(({ finding }) => FINDINGS[finding].state)).toEqual(HOUSE_PARTS.map(() => 'works'));
  });

  it('a house without anything from outside misses nothing: what was never set is not used', () => {
    const bare: HouseFacts = {
      ...one({ broker: undefined, redis: undefined }), brokerIsSet: false, redisIsSet: false, probes: { ...well.probes, of: 0, readAgoS: undefined }, forecast: { ...well.forecast, isAsked: false }, webhook: { ...well.webhook, isSet: false },
    };
    expect(judge(bare).filter(({ finding }) => FINDINGS[finding].state !== 'works').map(({ finding }) => finding)).toEqual(['probes-none', 'broker-none', 'forecast-none', 'webhook-none', 'redis-none']);
  });

  it.each([
    { what: 'the database does not answer', facts: { ...well, database: { ...well.database, answerS: undefined, forS: 12 } }, is: [['database-away', 12]] },
    { what: 'it takes a quarter of a second', facts: { ...well, database: { ...well.database, answerS: 0.25, forS: 30 } }, is: [['database-slow', 30]] },
    { what: 'it refused for want of room, just now', facts: { ...well, database: { ...well.database, full: { lastAgoS: 60, forS: 300 } } }, is: [['database-full', 300]] },
    { what: 'it refused for want of room, and has not again', facts: { ...well, database: { ...well.database, full: { lastAgoS: 61, forS: 300 } } }, is: [] },
    { what: 'the disk is just under 80 % full', facts: disk(0.799, 20 * GB), is: [] },
    { what: 'the disk is 80 % full', facts: disk(0.8, 20 * GB), is: [['disk-filling', 40]] },
    { what: 'the disk is 90 % full', facts: disk(0.9, 10 * GB), is: [['disk-nearly-full', 40]] },
    { what: 'the disk is full', facts: disk(0.94, 66_000_000, true), is: [['disk-full', 40]] },
    { what: 'the folder cannot be looked at', facts: one({ disk: undefined }), is: [['disk-unread', undefined]] },
    { what: 'of two machines one has a fuller disk', facts: several({}, { disk: { usedFrac: 0.93, leftBytes: 5 * GB, isOut: false, forS: 9 } }), is: [['disk-nearly-full', 9], ['several-processes', 7200]] },
    { what: 'a fact waits a little', facts: { ...well, outbox: { waiting: 2, oldestAgoS: 3 } }, is: [] },
    { what: 'facts wait', facts: { ...well, outbox: { waiting: 12, oldestAgoS: 10 } }, is: [['outbox-behind', 10]] },
    { what: 'facts wait for minutes', facts: { ...well, outbox: { waiting: 300, oldestAgoS: 120 } }, is: [['outbox-stuck', 120]] },
    { what: 'the minute is late', facts: { ...well, minute: { shiftRunsForS: 5400, toldAgoS: 91 } }, is: [['tick-late', 91]] },
    { what: 'the shift has just begun, and the last minute was one of yesterday', facts: { ...well, minute: { shiftRunsForS: 50, toldAgoS: 80_000 } }, is: [] },
    { what: 'the shift runs, and no minute was ever told', facts: { ...well, minute: { shiftRunsForS: 300, toldAgoS: undefined } }, is: [['tick-late', 300]] },
    { what: 'no shift runs', facts: { ...well, minute: { shiftRunsForS: undefined, toldAgoS: 80_000 } }, is: [['tick-rests', undefined]] },
    { what: 'nobody leads', facts: one({ leads: false }), is: [['nobody-leads', undefined]] },
    { what: 'the house was only just opened, and nobody leads yet', facts: one({ leads: false, runsForS: 10 }), is: [] },
    { what: 'the clock of the machine was set back by an hour', facts: one({ clock: { aheadS: -3600, forS: 90 } }), is: [['clock-held', 90]] },
    { what: 'no board is open', facts: one({ boards: 0, beatAgoS: undefined }), is: [['push-nobody', undefined]] },
    { what: 'boards are open, and no beat was sent for five seconds', facts: one({ beatAgoS: 5 }), is: [['push-silent', 5]] },
    { what: 'a computation was ended an hour ago', facts: one({ ended: [{ name: 'planNight', agoS: 3600 }] }), is: [['computations-ended', 3600]] },
    { what: 'a computation was ended before that', facts: one({ ended: [{ name: 'planNight', agoS: 3601 }] }), is: [] },
    { what: 'work failed as often as it is tried', facts: { ...well, leftAside: { count: 1, agoS: 900 } }, is: [['work-left-aside', 900]] },
    { what: 'some probes are silent', facts: probes({ silent: 3, silentForS: 480 }), is: [['probes-some-silent', 480]] },
    { what: 'a gateway told its last will', facts: probes({ silent: 4, silentForS: 480, gateways: [{ name: 'Shed', silentForS: 500 }] }), is: [['gateways-silent', 500]] },
    { what: 'all probes are silent', facts: probes({ silent: 8, silentForS: 480, readAgoS: 470 }), is: [['probes-silent', 470]] },
    { what: 'all probes are silent by day', facts: probes({ silent: 8, silentForS: 40_000, readAgoS: 40_000, fireBurns: false }), is: [['probes-rest', undefined]] },
    { what: 'the broker is away', facts: one({ broker: { isThere: false, forS: 75 } }), is: [['broker-away', 75]] },
    { what: 'a broker is set and nobody holds it', facts: one({ broker: undefined }), is: [['broker-away', undefined]] },
    { what: 'nobody said where the yard lies', facts: forecast({ isPlaced: false }), is: [['forecast-unplaced', undefined]] },
    { what: 'the first forecast is still to come', facts: forecast({ fetchedAgoS: undefined }), is: [['forecast-waited-for', undefined]] },
    { what: 'the service fails, what it said still holds', facts: forecast({ fetchedAgoS: 7200, failsForS: 3600 }), is: [['forecast-ageing', 3600]] },
    { what: 'the service fails, what it said is too old', facts: forecast({ fetchedAgoS: 43_201, failsForS: 40_000 }), is: [['forecast-away', 40_000]] },
    { what: 'the webhook is behind', facts: webhook({ waiting: 4, oldestAgoS: 60 }), is: [['webhook-behind', 60]] },
    { what: 'the webhook takes nothing', facts: webhook({ waiting: 40, oldestAgoS: 900 }), is: [['webhook-silent', 900]] },
    { what: 'there is a webhook and nothing was to be told yet', facts: webhook({ takenAgoS: undefined }), is: [['webhook-untried', undefined]] },
    { what: 'no backup was ever taken', facts: { ...well, backup: undefined }, is: [['backup-never', undefined]] },
    { what: 'the last backup is of the day before yesterday', facts: { ...well, backup: { agoS: 100_000 } }, is: [['backup-old', undefined]] },
    { what: 'Redis is away from one of two', facts: several({}, { leads: false, redis: { isThere: false, forS: 30 } }), is: [['redis-away', 30], ['several-processes', 7200]] },
    { what: 'two processes are of two versions', facts: several({}, { leads: false, version: '1.3.0', runsForS: 60 }), is: [['versions-differ', 60]] },
    { what: 'one of two fell silent', facts: several({}, { leads: false, agoS: 40 }), is: [['process-fell-silent', 40]] },
    { what: 'one fell silent and another was started in its place', facts: several({ runsForS: 38 }, { agoS: 40 }), is: [] },
    { what: 'one was taken away more than an hour ago', facts: several({}, { leads: false, agoS: 3601 }), is: [] },
  ] satisfies { what: string; facts: HouseFacts; is: unknown[] }[])('$what', ({ facts, is }) => {
    expect(wrong(facts)).toEqual(is);
  });

  it('a process that is silent is asked for nothing: what it last said of its disk, boards and broker is not held to be so', () => {
    const silent = several({ boards: 1 }, { agoS: 40, boards: 5, beatAgoS: 45, disk: { usedFrac: 0.99, leftBytes: GB, isOut: true, forS: 1 }, broker: { isThere: false, forS: 50 } });
    expect(wrong(silent)).toEqual([['process-fell-silent', 40]]);
    expect(judge(silent).find(({ finding }) => finding === 'push-beats')?.figures.count).toBe(1);
  });
});
