import { randomStream } from '@stokehold/domain/quantity';
import { expect, it } from 'vitest';
import { clashS, recount } from './cost.js';
import { dispatchRoster } from './dispatch.js';
import { generatedNight } from './generated-night.js';
import { levelsOf } from './levels.js';
import { retime } from './list-change.js';
import { nightOf } from './night.js';
import { recreate } from './recreate.js';
import { copyRoster, restoreRoster, type Roster } from './roster.js';
import { ruin } from './ruin.js';

/** Prices, chains and starts of a roster, counted anew from its lists alone. */
function countedAnew(roster: Roster): Roster {
  const fresh = copyRoster(roster);
  recount(fresh);
  return fresh;
}

it.each([1, 2, 3])('what ruin and recreate keep up to date is what counting anew gives (night %d)', (seed) => {
  const night = nightOf(generatedNight({ pits: 5, people: 3, seed, hours: 6 }));
  const roster = dispatchRoster(night);
  retime(roster);
  const random = randomStream(seed);
  for (let i = 0; i < 200; i++) {
    const before = copyRoster(roster);
    ruin(roster, random);
    expect(countedAnew(roster).sums).toEqual(roster.sums);
    recreate(roster, roster.scratch.off, roster.scratch.offCount, random);
    const fresh = countedAnew(roster);
    expect(fresh.sums).toEqual(roster.sums);
    for (const pit of night.pits) {
      for (const j of pit.jobs) if (roster.placed[j]! > 0) expect([roster.before[j], roster.after[j], roster.linkPrice[j]]).toEqual([fresh.before[j], fresh.after[j], fresh.linkPrice[j]]);
    }
    if (roster.sums[0]! > before.sums[0]!) restoreRoster(roster, before);
  }
});

it('the guide of moved checks rises by what the levels rise by', () => {
  // Guide weights in eighths of a weighted second: 480 a second past latest safe, 160 000 a check, 8 a weighted second of lateness.
  const roster = dispatchRoster(nightOf(generatedNight({ pits: 4, people: 2, seed: 2, hours: 4 })));
  const ofChains = ({ unsafeS, unsafeChecks, lateWeightedS }: ReturnType<typeof levelsOf>) => 480 * unsafeS + 160_000 * unsafeChecks + 8 * lateWeightedS;
  let compared = 0;
  for (const [j, job] of roster.night.jobs.entries()) {
    if (job.kind !== 'check' || roster.placed[j] === 0) continue;
    for (const byS of [-300, 300, 1200]) {
      const before = countedAnew(roster);
      roster.startS[j]! += byS;
      const after = countedAnew(roster);
      const clash = 80_000 * (clashS(after) - clashS(before));
      expect(after.sums[0]! - before.sums[0]!).toBe(ofChains(levelsOf(after)) - ofChains(levelsOf(before)) + clash);
      roster.startS[j]! -= byS;
      compared += 1;
    }
  }
  expect(compared).toBeGreaterThan(60);
});
