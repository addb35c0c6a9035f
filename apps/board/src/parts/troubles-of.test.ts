import type { AlarmView, FireTroubleView, PitView } from '@stokehold/domain/contract';
import { fireTrouble } from '@stokehold/domain/contract';
import { describe, expect, it } from 'vitest';
import { figuresOf } from '../units/figures.js';
import type { fire } from '../words/en/fire.js';
import '../words/fire.js';
import { sayIn } from '../words/words.js';
import { runningAwayElsewhere, troublesOf } from './troubles-of.js';

const nowMs = Date.parse('2027-03-13T08:14:00Z');
const since = '2027-03-13T07:09:00Z';
const view = (troubles: readonly FireTroubleView[]) => ({ pit: { id: 'p' }, fire: { troubles } }) as unknown as PitView;
const alarm = (state: AlarmView['state'], kind: AlarmView['kind'] = 'running-away') =>
  ({ id: 'a', kind, pitId: 'p', state, raisedAt: since, returnedAt: '2027-03-13T07:29:00Z' }) as unknown as AlarmView;
const said = (language: 'en' | 'es', troubles: readonly FireTroubleView[], alarms: readonly AlarmView[] = []) =>
  troublesOf(view(troubles), alarms, nowMs, sayIn<typeof fire>(language, 'fire'), figuresOf({ units: 'us', timeZone: 'America/Chicago', language }));
const ALL: readonly FireTroubleView[] = [
  { code: 'running-away', end: 'fire-end', riseKPerMin: 10 },
  { code: 'bed-nearly-out', nearlyOutFrac: 0.3 },
  { code: 'out' },
  { code: 'diverged', at: since },
  { code: 'nothing-known', since },
  { code: 'probe-lost', end: 'stack-end', since },
  { code: 'ends-disagree', apartK: 20, since },
  { code: 'wood-not-recorded', at: since },
  { code: 'wet-lot', burnFactor: 0.8 },
  { code: 'ash', ashKg: 0.4, burnsFrac: 0.88 },
  { code: 'wind-burst', onto: 'stack', airFactor: 0.7 },
  { code: 'not-lit' },
];

describe('what may be wrong at a fire', () => {
  it('says its figures in the yard units and on its clock', () => {
    // By hand: 20 K apart are 36 °F; 0.4 kg are 0.9 lb; from 01:09 to 02:14 are 1 h 05.
    const says = said('en', ALL.slice(4)).map((trouble) => trouble.says);
    expect(says[0]).toBe('Nothing was read or seen here since 01:09, 1 h 05 ago: the forecast is a guess by now.');
    expect(says[1]).toBe('The probe at the stack end shows what cannot be, since 01:09. It is not used; the other one is.');
    expect(says[2]).toContain('36\u00a0°F apart');
    expect(says[4]).toContain('20\u00a0% slower');
    expect(says[5]).toContain('0.9\u00a0lb of ash');
  });

  it('a temperature that runs away comes from its alarm alone and stands above all, with what to do first', () => {
    const [first, second] = said('en', [{ code: 'out' }], [alarm('unacknowledged')]);
    expect([first!.code, first!.level, first!.alarmId]).toEqual(['running-away', 'now', 'a']);
    expect(second!.code).toBe('out');
    for (const order of ['Close the fire door and the damper', 'Keep the lid shut', 'No water', 'away', 'fire service', 'local rules']) expect(first!.does).toContain(order);
    expect(said('en', [{ code: 'running-away', end: 'fire-end', riseKPerMin: 10 }])).toEqual([]);
  });

  it('taken note of, it stays until it is over, and asks for no second touch', () => {
    expect(said('en', [], [alarm('acknowledged')])[0]!.alarmId).toBeNull();
    expect(said('en', [], [alarm('normal'), alarm('unacknowledged', 'past-latest-safe')])).toEqual([]);
  });

  it('over by its readings and not yet seen by anybody, it is told as what it was, on its own page alone', () => {
    const [ran] = said('en', [], [alarm('returned-unacknowledged')]);
    expect([ran!.title, ran!.level, ran!.alarmId]).toEqual(['Ran away at 01:09', 'soon', 'a']);
    expect(ran!.says).toContain('01:29');
    const state = { alarms: [alarm('returned-unacknowledged')], pits: [] } as unknown as Parameters<typeof runningAwayElsewhere>[0];
    expect(runningAwayElsewhere(state, 'q', sayIn<typeof fire>('en', 'fire'))).toEqual([]);
  });

  it('one that runs away elsewhere is told by its name, and not twice where it is on show', () => {
    const state = { alarms: [alarm('unacknowledged')], pits: [{ pit: { id: 'p', name: 'Cedar' } }] } as unknown as Parameters<typeof runningAwayElsewhere>[0];
    const say = sayIn<typeof fire>('en', 'fire');
    expect(runningAwayElsewhere(state, 'q', say).map(({ title }) => title)).toEqual(['Cedar: Running away']);
    expect(runningAwayElsewhere(state, 'p', say)).toEqual([]);
  });

  it.each(['en', 'es'] as const)('every trouble of the contract has its sentence and its caution, in %s', (language) => {
    const codes = fireTrouble.options.map(({ shape }) => shape.code.value);
    expect(ALL.map(({ code }) => code)).toEqual(codes);
    for (const { says, does, title } of said(language, ALL.slice(1), [alarm('unacknowledged')])) {
      for (const text of [says, does, title]) expect(text).not.toMatch(/\{\{|undefined|^[a-z-]+\.(say|do)$/);
      expect(does.length).toBeGreaterThan(20);
    }
  });
});
