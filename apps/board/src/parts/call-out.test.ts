import type { PitView, YardState } from '@stokehold/domain/contract';
import { describe, expect, it } from 'vitest';
import { callFor } from './call-out.js';

const at = (time: string) => `2027-03-13T${time}:00Z`;
const view = { pit: { id: 'cedar' }, due: { dueAt: at('02:00'), latestSafeAt: at('02:20') } } as unknown as PitView;
const alarms = (...told: object[]) => ({ alarms: told }) as unknown as Pick<YardState, 'alarms'>;
const now = (time: string) => Date.parse(at(time));

describe('what a phone calls out', () => {
  it('nothing before a fire is due, then that it is due, then that it is past latest safe', () => {
    expect(callFor(alarms(), view, now('01:59'), 'ines')).toBeUndefined();
    expect(callFor(alarms(), view, now('02:00'), 'ines')).toEqual({ id: 'cedar', calls: 'due' });
    expect(callFor(alarms(), view, now('02:20'), 'ines')).toEqual({ id: 'cedar', calls: 'past' });
    expect(callFor(alarms(), undefined, now('02:20'), 'ines')).toBeUndefined();
  });

  it('a fire that runs away comes before the one on show, until somebody has acknowledged it', () => {
    const away = { id: 'a', kind: 'running-away', pitId: 'larch', state: 'unacknowledged' };
    expect(callFor(alarms(away), view, now('02:00'), 'ines')).toEqual({ id: 'a', calls: 'past' });
    expect(callFor(alarms({ ...away, state: 'acknowledged' }), view, now('02:00'), 'ines')).toEqual({ id: 'cedar', calls: 'due' });
  });

  it('an alarm calls whom it told, before the fire on show, and nobody else', () => {
    const late = { id: 'b', kind: 'past-latest-safe', pitId: 'larch', state: 'unacknowledged', shelf: null, suppressedBy: null, underId: null, told: { people: ['ines'] } };
    expect(callFor(alarms(late), view, now('02:00'), 'ines')).toEqual({ id: 'b', calls: 'past' });
    expect(callFor(alarms(late), view, now('02:00'), 'odell')).toEqual({ id: 'cedar', calls: 'due' });
  });
});
