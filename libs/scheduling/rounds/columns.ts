import type { Job, Night } from './night.js';

/** Later than any night: a window that never closes, s. */
export const NEVER_S = 0x3fffffff;

/** The night in columns of whole numbers, one row a job, a person or a pit: what the innermost steps of the search read. */
export interface Columns {
  readonly jobs: number;
  readonly people: number;
  readonly places: number;
  /** Walking, s, row by row of the table. */
  readonly walkS: Int32Array;
  readonly lengthS: Int32Array;
  readonly place: Int32Array;
  readonly releaseS: Int32Array;
  readonly targetS: Int32Array;
  readonly latestS: Int32Array;
  readonly hardLatestS: Int32Array;
  readonly weight: Int32Array;
  readonly needs: Int32Array;
  readonly pit: Int32Array;
  readonly link: Int32Array;
  /** A start that a fact, a pin or two lists have agreed on: nothing behind it may push it. */
  readonly isAppointment: Uint8Array;
  /** Whether the search may take it off: not a fact, not a pinned start. */
  readonly isMovable: Uint8Array;
  readonly isCheck: Uint8Array;
  readonly isTask: Uint8Array;
  /** Counts as work; breaks and absences do not. */
  readonly isWork: Uint8Array;
  /** 1 where a person may do a job: job x people + person. */
  readonly isAble: Uint8Array;
  /** Promised start; half units that breaking it costs, 0 without a promise; 1 where the person was promised it: job x people + person. */
  readonly promisedS: Int32Array;
  readonly promiseUnits: Int32Array;
  readonly isPromised: Uint8Array;
  readonly readyS: Int32Array;
  readonly homeS: Int32Array;
  readonly standsAt: Int32Array;
  /** Work squared by this is its price: grows with the shift, so that equal shares are cheapest. */
  readonly squarePer: Float64Array;
  /** The same for everybody together. */
  readonly squarePerAll: number;
  readonly pitWeight: Int32Array;
  readonly firstEarliestS: Int32Array;
  readonly firstDueS: Int32Array;
  readonly firstLatestS: Int32Array;
  readonly keepS: Int32Array;
  readonly gapEarliestS: Int32Array;
  readonly gapDueS: Int32Array;
  readonly gapLatestS: Int32Array;
}

/** Work that is this much above another's share of a shift of one second, squared, weighs an eighth of a weighted second. Source: tests/bench/rounds.mjs. */
const SQUARE_PER_SHIFT_S = 0.12;

type JobColumns = Omit<Columns, 'jobs' | 'people' | 'places' | 'walkS' | 'readyS' | 'homeS' | 'standsAt' | 'squarePer' | 'squarePerAll' | keyof PitColumns>;
type PitColumns = Pick<Columns, 'pitWeight' | 'firstEarliestS' | 'firstDueS' | 'firstLatestS' | 'keepS' | 'gapEarliestS' | 'gapDueS' | 'gapLatestS'>;

/** The columns of a night. */
export function columnsOf(night: Omit<Night, 'columns'>): Columns {
  const { people, places, walkS } = night;
  return {
    jobs: night.jobs.length,
    people: people.length,
    places: places.length,
    walkS: Int32Array.from(walkS.flat()),
    ...jobColumns(night.jobs, people.length),
    ...pitColumns(night),
    readyS: Int32Array.from(people, (person) => person.readyS),
    homeS: Int32Array.from(people, (person) => Math.min(NEVER_S, person.endS)),
    standsAt: Int32Array.from(people, (person) => person.place),
    squarePer: Float64Array.from(people, (person) => person.shiftS * SQUARE_PER_SHIFT_S),
    squarePerAll: people.reduce((sum, person) => sum + person.shiftS, 0) * SQUARE_PER_SHIFT_S,
  };
}

function jobColumns(jobs: readonly Job[], people: number): JobColumns {
  const column = (of: (job: Job) => number) => Int32Array.from(jobs, (job) => Math.min(NEVER_S, of(job)));
  const flag = (of: (job: Job) => boolean) => Uint8Array.from(jobs, (job) => (of(job) ? 1 : 0));
  const table = (of: (job: Job) => readonly number[]) => {
    const cells = new Uint8Array(jobs.length * people);
    for (const [j, job] of jobs.entries()) for (const person of of(job)) cells[j * people + person] = 1;
    return cells;
  };
  return {
    lengthS: column((job) => job.lengthS), place: column((job) => job.place), releaseS: column((job) => job.releaseS), targetS: column((job) => job.targetS),
    latestS: column((job) => job.latestS), hardLatestS: column((job) => job.hardLatestS), weight: column((job) => job.weight), needs: column((job) => job.people),
    pit: column((job) => job.pit), link: column((job) => job.link),
    isAppointment: flag((job) => job.fixedS !== undefined || job.people > 1), isMovable: flag((job) => job.fixedS === undefined),
    isCheck: flag((job) => job.kind === 'check'), isTask: flag((job) => job.kind === 'task'), isWork: flag((job) => job.kind === 'check' || job.kind === 'task'),
    isAble: table((job) => job.able), isPromised: table((job) => job.promise?.people ?? []),
    promisedS: column((job) => job.promise?.startS ?? 0), promiseUnits: column((job) => job.promise?.units ?? 0),
  };
}

function pitColumns({ pits }: Omit<Night, 'columns'>): PitColumns {
  const column = (of: (pit: Night['pits'][number]) => number) => Int32Array.from(pits, (pit) => Math.min(NEVER_S, of(pit)));
  return {
    pitWeight: column((pit) => pit.source.weight), firstEarliestS: column((pit) => pit.firstEarliestS), firstDueS: column((pit) => pit.firstDueS),
    firstLatestS: column((pit) => pit.firstLatestS), keepS: column((pit) => pit.keepS), gapEarliestS: column((pit) => pit.source.gap.earliestS),
    gapDueS: column((pit) => pit.source.gap.dueS), gapLatestS: column((pit) => pit.source.gap.latestSafeS),
  };
}
