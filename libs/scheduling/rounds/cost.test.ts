import { expect, it } from 'vitest';
import { guideCost, linksOf } from './cost.js';
import { dispatchRoster } from './dispatch.js';
import { generatedNight } from './generated-night.js';
import { levelsOf } from './levels.js';
import { nightOf } from './night.js';

it('moving one check changes its links by what the levels change', () => {
  // Guide weights: 60 a second past latest safe, 20 000 a check, 1 a weighted second of lateness.
  const roster = dispatchRoster(nightOf(generatedNight({ pits: 4, people: 2, seed: 2, hours: 4 })));
  const ofChain = ({ unsafeS, unsafeChecks, lateWeightedS }: ReturnType<typeof levelsOf>) => 60 * unsafeS + 20_000 * unsafeChecks + lateWeightedS;
  let compared = 0;
  for (const [j, job] of roster.night.jobs.entries()) {
    if (job.kind !== 'check' || roster.placed[j] === 0) continue;
    for (const byS of [-300, 300, 1200]) {
      const levels = levelsOf(roster);
      const [before, whole] = [linksOf(roster, j, job), guideCost(roster, levels)];
      roster.startS[j]! += byS;
      const moved = levelsOf(roster);
      const clash = guideCost(roster, moved) - whole - (ofChain(moved) - ofChain(levels));
      expect(linksOf(roster, j, job) - before).toBe(ofChain(moved) - ofChain(levels) + clash);
      roster.startS[j]! -= byS;
      compared += 1;
    }
  }
  expect(compared).toBeGreaterThan(60);
});
