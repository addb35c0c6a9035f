import type { PitView, YardState } from '@stokehold/domain/contract';
import { describe, expect, it } from 'vitest';
import '../../words/wall.js';
import { sayIn } from '../../words/words.js';
import type { wall } from '../../words/en/wall.js';
import { crewNotes } from './crew-notes.js';
import { calledNames } from './called.js';
import { stripeOf, stripesOf } from './stripe.js';
import { whatWords } from './wall-words.js';

const now = Date.UTC(2027, 2, 13, 8, 14);
const at = (minutes: number) => new Date(now + minutes * 60_000).toISOString();
interface Fire {
  readonly name: string;
  readonly dueIn?: number;
  readonly latestIn?: number;
  readonly mode?: string;
  readonly known?: boolean;
  readonly lightIn?: number;
}
const fire = ({ name, dueIn, latestIn = 60, mode = 'burning', known = true, lightIn = -300 }: Fire) =>
  ({
    pit: { id: name, name },
    tonight: { lightAt: at(lightIn) },
    fire: known ? { mode } : null,
    due: dueIn === undefined ? null : { dueAt: at(dueIn), latestSafeAt: at(latestIn) },
    advice: { action: 'two' },
    past: dueIn === undefined ? [] : [{}],
    checks: [],
  }) as unknown as PitView;
const yard = (pits: readonly PitView[], more: object = {}) =>
  ({
    pits,
    tasks: [],
    alarms: [],
    cooks: [],
    plan: {
      assignments: [
        { work: { kind: 'check', pitId: 'Cedar', nth: 1 }, people: ['bright'], startsAt: at(50) },
        { work: { kind: 'check', pitId: 'Cedar', nth: 0 }, people: ['marisol'], startsAt: at(5) },
      ],
    },
    ...more,
  }) as unknown as YardState;
const stripe = (one: Fire, more: object = {}) => stripeOf(fire(one), yard([fire(one)], more), now)!;

describe('a stripe of the wall', () => {
  it('is quiet while its check is more than five minutes away, and names who comes next', () => {
    expect(stripe({ name: 'Cedar', dueIn: 11 })).toMatchObject({ level: 'quiet', minutes: 11, late: false, people: ['marisol'], what: { say: 'nothing' } });
  });

  it('says while it is quiet when the next food comes off: as forecast last, else as planned', () => {
    const cook = (pitId: string, planned: number | null, more: object = {}) => ({ offAt: null, comesOffAt: planned === null ? null : at(planned), lies: [{ pitId }], ...more });
    const said = (cooks: readonly object[]) => stripe({ name: 'Cedar', dueIn: 11 }, { cooks }).what;
    expect(said([cook('Cedar', 200), cook('Cedar', 170), cook('Alder', 30), cook('Cedar', 60, { offAt: at(-5) })])).toEqual({ say: 'comes-off', at: at(170) });
    expect(said([cook('Cedar', 200, { forecast: { p50At: at(140) } })])).toEqual({ say: 'comes-off', at: at(140) });
    expect(said([cook('Cedar', null, { forecast: { p50At: null } }), cook('Alder', 30)])).toEqual({ say: 'nothing' });
  });

  it('asks for hands soon from five minutes before, with what to put on', () => {
    expect(stripe({ name: 'Cedar', dueIn: 5 })).toMatchObject({ level: 'soon', what: { say: 'action', action: 'two', late: false } });
  });

  it('asks for hands now once the check is due', () => {
    expect(stripe({ name: 'Cedar', dueIn: -4 })).toMatchObject({ level: 'now', late: true, minutes: 4, what: { late: true } });
  });

  it('one that runs away stands above a bed nearly out, and asks for nothing to be put on', () => {
    const alarms = (state: string) => [{ kind: 'running-away', pitId: 'Willow', state }];
    const pits = [fire({ name: 'Cedar', dueIn: 30, mode: 'bed-nearly-out' }), fire({ name: 'Willow', dueIn: 40 })];
    const [first, second] = stripesOf(yard(pits, { alarms: alarms('unacknowledged') }), now);
    expect([first!.view.pit.name, first!.level, first!.minutes, first!.what, first!.unacknowledged]).toEqual(['Willow', 'grave', null, { say: 'running-away' }, true]);
    expect(second!.view.pit.name).toBe('Cedar');
    expect(stripesOf(yard(pits, { alarms: alarms('returned-unacknowledged') }), now)[0]!.view.pit.name).toBe('Cedar');
  });

  it('is grave past latest safe, and while the bed is nearly out even if no check is due', () => {
    expect(stripe({ name: 'Cedar', dueIn: -14, latestIn: -2 })).toMatchObject({ level: 'grave', what: { say: 'past-latest-safe' } });
    expect(stripe({ name: 'Cedar', dueIn: 20, mode: 'bed-nearly-out' })).toMatchObject({ level: 'grave', what: { say: 'bed-nearly-out' } });
  });

  it('a fire that nothing is known of says so and asks for hands', () => {
    expect(stripe({ name: 'Cedar', known: false, dueIn: 30 })).toMatchObject({ what: { say: 'not-known' } });
    expect(stripe({ name: 'Cedar', known: false, lightIn: -60 })).toMatchObject({ level: 'now', what: { say: 'light-now' }, lit: false });
  });

  it('a pit not lit yet says when it will be, counts down to it, and rests until five minutes before', () => {
    expect(stripe({ name: 'Cedar', known: false, lightIn: 40 })).toMatchObject({ level: 'quiet', minutes: 40, lit: false, what: { say: 'lights' } });
    expect(stripe({ name: 'Cedar', known: false, lightIn: 4 })).toMatchObject({ level: 'soon' });
  });

  it('knows whether its gravest alarm waits for somebody', () => {
    const alarms = [{ pitId: 'Cedar', state: 'unacknowledged', kind: 'past-latest-safe' }];
    expect(stripe({ name: 'Cedar', dueIn: -9, latestIn: -1 }, { alarms }).unacknowledged).toBe(true);
    expect(stripe({ name: 'Cedar', dueIn: -9, latestIn: -1 }).unacknowledged).toBe(false);
  });

  it('whose probe failed is to be read by hand, unless something more pressing is asked of hands', () => {
    const failed = (state: string) => ({ alarms: [{ kind: 'probe-failed', pitId: 'Cedar', state, priority: 'low' }] });
    expect(stripe({ name: 'Cedar', dueIn: 20 }, failed('acknowledged'))).toMatchObject({ level: 'quiet', unprobed: true, what: { say: 'by-hand' } });
    expect(stripe({ name: 'Cedar', dueIn: 4 }, failed('unacknowledged'))).toMatchObject({ level: 'soon', unprobed: true, what: { say: 'action' } });
    expect(stripe({ name: 'Alder', dueIn: 20 }, failed('unacknowledged')).unprobed).toBe(false);
    expect(stripe({ name: 'Cedar', dueIn: 20 }, failed('normal'))).toMatchObject({ unprobed: false, what: { say: 'nothing' } });
  });

  it('a silent gateway leaves the pits that have probes without them', () => {
    const alarms = [{ kind: 'gateway-silent', pitId: null, state: 'unacknowledged', priority: 'medium' }];
    const probed = (probes: readonly object[]) => {
      const view = fire({ name: 'Cedar', dueIn: 20 });
      return { ...view, pit: { ...view.pit, probes } } as unknown as PitView;
    };
    expect(stripeOf(probed([{}]), yard([], { alarms }), now)!.unprobed).toBe(true);
    expect(stripeOf(probed([]), yard([], { alarms }), now)!.unprobed).toBe(false);
  });

  it('a pit that rests tonight has none', () => {
    expect(stripeOf({ ...fire({ name: 'Cedar', dueIn: 3 }), tonight: null }, yard([]), now)).toBeUndefined();
  });
});

describe('the order of stripes', () => {
  it('is the order in which the fires fall due; grave ones stand above all', () => {
    const fires = [fire({ name: 'Alder', dueIn: 11 }), fire({ name: 'Cedar', dueIn: -4 }), fire({ name: 'Larch', dueIn: 30, mode: 'bed-nearly-out' }), fire({ name: 'Hazel', dueIn: 3 })];
    expect(stripesOf(yard(fires), now).map((one) => one.view.pit.name)).toEqual(['Larch', 'Cedar', 'Hazel', 'Alder']);
  });

  it('two fires due in the same minute keep their places', () => {
    const a = { name: 'Alder', dueIn: 7.5 };
    const b = { name: 'Beech', dueIn: 7.2 };
    expect(stripesOf(yard([fire(b), fire(a)]), now).map((one) => one.view.pit.name)).toEqual(['Alder', 'Beech']);
  });
});

describe('words of the wall', () => {
  const time = (when: string | number) => new Date(when).toISOString().slice(11, 16);

  it('say in two or three words what hands must do, in both languages', () => {
    const en = sayIn<typeof wall>('en', 'wall');
    const es = sayIn<typeof wall>('es', 'wall');
    expect(whatWords({ say: 'action', action: 'two', late: true }, en, { time })).toBe('late: two splits');
    expect(whatWords({ say: 'action', action: 'two', late: false }, es, { time })).toBe('2 leños');
    expect(whatWords({ say: 'lights', at: at(0) }, en, { time })).toBe('lights at 08:14');
    expect(whatWords({ say: 'comes-off', at: at(106) }, es, { time })).toBe('sale 10:00');
    expect(whatWords({ say: 'nothing' }, en, { time })).toBe('');
  });

  it('people are called by the first of their names, unless two share it', () => {
    const names = calledNames([{ id: '1', name: 'Ines Calder' }, { id: '2', name: 'Ines Duarte' }, { id: '3', name: 'Odell Price' }]);
    expect([...names.values()]).toEqual(['Ines Calder', 'Ines Duarte', 'Odell']);
  });

  it('the crew line says who is missing before who breaks, and of the breaks to come the next one', () => {
    const person = (personId: string, more: object) => ({ personId, presence: 'here', presenceUntil: null, onBreak: false, breaks: [], ...more });
    const breakAt = (minutes: number) => [{ beganAt: null, plannedAt: at(minutes), earliestAt: at(0) }];
    const people = [person('a', { breaks: breakAt(40) }), person('b', { breaks: breakAt(20) }), person('c', { onBreak: true }), person('d', { presence: 'late' })];
    expect(crewNotes({ people } as never).map((note) => `${note.say} ${note.personId}`)).toEqual(['late d', 'on-break c', 'break-at b']);
  });
});
