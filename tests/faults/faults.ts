/** A fault that is run on purpose, with what is asked of the house and the tests that show it. */
export interface Fault {
  readonly code: string;
  readonly fault: string;
  readonly expected: string;
  /** Files below the repository with a part of the title of the test there. */
  readonly shownBy: readonly (readonly [file: string, title: string])[];
  /** What of it is not shown by any test. */
  readonly open?: string;
}

/** Source of every fault and figure: our own targets, resting on nothing published. */
export const FAULTS: readonly Fault[] = [
  { code: 'R1', fault: 'the house is killed at any moment while lots come in', expected: 'acknowledged lost 0, twice 0; ready within 5 s', shownBy: [['tests/faults/killed.test.ts', 'killed at any moment, it loses nothing']] },
  { code: 'R2', fault: 'the database server stops at once and is started again', expected: '503 with Retry-After within 2 s; working within 10 s of the start; lost 0', shownBy: [['tests/faults/database.test.ts', 'a database that stops at once']] },
  {
    code: 'R3', fault: 'the disk fills up, and the database has no room left', expected: 'told from 80 and 90 % on; writes refused, reads go on, lost 0, normal within 30 s of room',
    shownBy: [['tests/faults/database.test.ts', 'a database without room'], ['tests/faults/disk.test.ts', 'a disk that fills up'], ['tests/faults/disk.test.ts', 'a database that stopped on a full disk']],
  },
  { code: 'R4', fault: 'a wall is cut off', expected: 'says so, with its age; right again after', shownBy: [['tests/e2e/wall.test.ts', 'cut off: says so, large'], ['tests/e2e/night.test.ts', 'the wall lives again by itself']] },
  { code: 'R5', fault: 'every reading comes three times', expected: 'stored once, estimates equal to the last digit', shownBy: [['apps/api/src/readings/readings.test.ts', 'three times, shuffled and in pieces']] },
  { code: 'R6', fault: 'readings come shuffled', expected: 'the same series and estimate as in order', shownBy: [['apps/api/src/readings/readings.test.ts', 'three times, shuffled and in pieces']] },
  { code: 'R7', fault: 'readings come hours late', expected: 'stored with both times, no alarm for the past', shownBy: [['apps/api/src/readings/readings.test.ts', 'means of two minutes, with late readings'], ['apps/api/src/alarms/alarms.test.ts', 'readings that come three hours late raise nothing']] },
  { code: 'R8', fault: "the server's clock is set by minutes and by hours", expected: 'told once, no check late through it, durations wrong by at most 1 s', shownBy: [['tests/faults/clock.test.ts', 'the clock of the machine is set'], ['apps/api/src/minute/held-clock.test.ts', 'is told once, and stands in the record']] },
  { code: 'R9', fault: "a phone's clock is 45 minutes fast", expected: 'true time kept, raw time kept, person told', shownBy: [['apps/api/src/checks/checks.test.ts', 'a phone 45 minutes fast'], ['apps/board/src/live/clock-off.test.ts', 'that is 45 minutes fast is told']] },
  { code: 'R10', fault: 'the night the clocks go forward', expected: '11 hours from 18:00 to 06:00', shownBy: [['apps/api/src/platform/wall-time.test.ts', 'the night the clocks go forward']] },
  { code: 'R11', fault: 'malformed requests by the thousand', expected: 'no answer of 500 and above, no restart, each refused as a problem', shownBy: [['tests/faults/malformed.test.ts', 'malformed requests by the thousand'], ['apps/api/src/docs/every-route.test.ts', 'an answer of the document, never a fault']] },
  { code: 'R12', fault: 'a flood of alarms', expected: 'begins above ten in ten minutes; consequences stand under their cause', shownBy: [['libs/domain/alarm/rates.test.ts', 'eleven in ten minutes begin a flood'], ['apps/api/src/alarms/alarms.test.ts', 'the most pressing alarm comes first'], ['apps/api/src/alarms/flood.test.ts', 'sixty fires that nobody looks at']] },
  { code: 'R13', fault: '200 boards at once', expected: 'pushed within 1 s at p95', shownBy: [['tests/faults/boards.test.ts', '200 boards come at once']] },
  { code: 'R14', fault: 'a probe is stuck at one value', expected: 'suspect within 10 min, bad within 20', shownBy: [['apps/api/src/readings/readings.test.ts', 'a stuck probe is suspect within 10 minutes']] },
  { code: 'R15', fault: "a probe's wire opens", expected: 'a gap at once, one alarm', shownBy: [['apps/api/src/readings/readings.test.ts', 'an open wire is a gap'], ['apps/api/src/alarms/alarms.test.ts', 'a wire that opens is one alarm']] },
  { code: 'R16', fault: 'a phone records without signal', expected: 'all sent, in order, once', shownBy: [['tests/e2e/offline.test.ts', 'each is taken once, in order']] },
  { code: 'R17', fault: 'two phones record the same check', expected: 'both kept, one as a second look', shownBy: [['apps/api/src/checks/checks.test.ts', 'twenty checks at once are twenty checks']] },
  { code: 'R18', fault: 'the line is cut between commit and answer', expected: 'sent again: the first answer, byte for byte; one row', shownBy: [['tests/faults/line-cut.test.ts', 'the line is cut after the commit']] },
  { code: 'R19', fault: 'the page is killed while something is recorded', expected: 'what was touched stands there again, the queue is whole', shownBy: [['tests/e2e/offline.test.ts', 'one that was begun outlives a killed page']] },
  { code: 'R20', fault: 'the machine is gone; restore on a clean one', expected: 'within 15 min; counts and sums equal; devices known', shownBy: [['tests/faults/backup.test.ts', 'R20: a backup taken while the house runs']] },
  { code: 'R21', fault: 'a computation loops or eats memory', expected: 'ended at its limit; the house goes on meanwhile and computes again', shownBy: [['tests/faults/workers.test.ts', 'a computation that']] },
  { code: 'R22', fault: 'a thousand PINs are guessed from one device', expected: 'at most ten tried, each on record, other devices open', shownBy: [['apps/api/src/identity/identity.test.ts', 'of a thousand guesses']] },
  { code: 'R23', fault: "another page's socket or form", expected: 'refused, no effect', shownBy: [['apps/api/src/live/live.test.ts', 'a page of another address, get no live connection'], ['apps/api/src/identity/identity.test.ts', 'a page of another address changes nothing']] },
  { code: 'R24', fault: 'the change of the tables is killed half way', expected: 'old tables or new ones; the next start completes it', shownBy: [['tests/faults/database.test.ts', 'tables that are being changed']] },
];
