import type { YardState } from '@stokehold/domain/contract';
import { describe, expect, it } from 'vitest';
import { breaksAhead, fireRows, hoursAhead, taskRows } from './plan-rows.js';

const at = (time: string) => `2027-03-13T${time}:00Z`;
const check = (pitId: string, startsAt: string) => ({ work: { kind: 'check', pitId, nth: 1 }, people: ['odell'], startsAt });

describe("tonight's plan on paper", () => {
  it('has a column for each hour from the one that runs to the end of the shift', () => {
    const hours = hoursAhead({ startsAt: at('00:00'), endsAt: at('04:30') }, Date.parse(at('02:14')));
    expect(hours.map((ms) => new Date(ms).toISOString().slice(11, 16))).toEqual(['02:00', '03:00', '04:00']);
    expect(hoursAhead({ startsAt: at('00:00'), endsAt: at('02:00') }, Date.parse(at('03:00')))).toEqual([]);
  });

  it('puts each look of the plan once into its hour, and leaves out pits that rest', () => {
    const pit = (id: string, lightAt: string | null) => ({ pit: { id, name: id }, tonight: lightAt && { lightAt, band: { lowC: 121, highC: 127 } } });
    const state = {
      pits: [pit('larch', at('01:00')), pit('cedar', at('00:30')), pit('cold', null)],
      plan: { assignments: [check('cedar', at('03:01')), check('cedar', at('02:59')), check('larch', at('02:00'))] },
    } as unknown as YardState;
    const rows = fireRows(state, [Date.parse(at('02:00')), Date.parse(at('03:00'))]);
    expect(rows.map(({ name }) => name)).toEqual(['cedar', 'larch']);
    expect(rows.map(({ hours }) => hours.map((looks) => looks.map((look) => look.at)))).toEqual([[[at('02:59')], [at('03:01')]], [[at('02:00')], []]]);
  });

  it('lists tasks as planned, those without a place at their due time, and none that is done', () => {
    const task = (id: string, dueAt: string, doneAt: string | null = null) => ({ id, dueAt, doneAt });
    const state = {
      tasks: [task('wrap', at('05:00')), task('haul', at('03:00')), task('light', at('01:00'), at('01:02'))],
      plan: { assignments: [{ work: { kind: 'task', taskId: 'wrap' }, people: ['marisol'], startsAt: at('02:30') }] },
    } as unknown as YardState;
    expect(taskRows(state).map(({ task: { id }, at: when, people }) => [id, when, people])).toEqual([['wrap', at('02:30'), ['marisol']], ['haul', at('03:00'), []]]);
  });

  it('breaks stand where they are planned, or where their window opens; those that began are left out', () => {
    const one = (earliestAt: string, plannedAt: string | null, beganAt: string | null) => ({ id: 'b', lengthS: 1800, earliestAt, latestAt: at('06:00'), plannedAt, beganAt, endedAt: null });
    expect(breaksAhead({ breaks: [one(at('04:00'), at('04:20'), null), one(at('02:00'), null, null), one(at('01:00'), at('01:00'), at('01:01'))] } as never)).toEqual([at('02:00'), at('04:20')]);
  });
});
