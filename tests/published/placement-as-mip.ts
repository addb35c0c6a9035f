import { placementParameter, type PlacementGroup, type PlacementProblem, type PlacementZone } from '@stokehold/scheduling/placement';

/** What a piece without a place costs here: more than all else together. */
export const UNPLACED_S = 100_000;

const meets = (a: PlacementGroup, b: PlacementGroup) => a.onAt < b.offAt && b.onAt < a.offAt;
const over = (a: PlacementZone, b: PlacementZone) => a.grate > b.grate && a.fromM < b.toM && b.fromM < a.toM;

/** The loading of one pit as a mixed-integer programme in CPLEX LP form, written from the problem's definition alone. */
export function placementAsMip(problem: PlacementProblem): string {
  const { groups, zones } = problem;
  const of = (name: Parameters<typeof placementParameter>[1]) => placementParameter(problem, name);
  const costs: string[] = [];
  const rules: string[] = [];
  const whole: string[] = [];
  const yes: string[] = [];
  groups.forEach((group, g) => {
    const places = zones.map((zone, z) => {
      const excess = zone.radiantWPerM2 - group.bearsWPerM2;
      const stands = excess > 0 ? Math.floor(of('doseJPerM2') / excess) : Infinity;
      const turns = stands === Infinity ? 0 : Math.ceil((group.offAt - group.onAt) / stands) - 1;
      const price = Math.round(of('perKelvinS') * Math.abs(zone.airTempC - group.wantedTempC)) + Math.round(of('exposureS') * Math.min(1, zone.radiantWPerM2 / group.bearsWPerM2)) + turns * of('turnS');
      const forbidden = stands < of('leastTurnS') || group.pieceKg > zone.bearsKg;
      if (!forbidden) costs.push(`${price} x_${g}_${z}`);
      rules.push(forbidden ? `x_${g}_${z} <= 0` : `x_${g}_${z} - ${group.pieces} b_${g}_${z} <= 0`);
      whole.push(`x_${g}_${z}`);
      yes.push(`b_${g}_${z}`);
      return `x_${g}_${z}`;
    });
    costs.push(`${UNPLACED_S * (group.weight ?? 1)} u_${g}`, `${of('spreadS')} s_${g}`);
    rules.push(`${places.join(' + ')} + u_${g} = ${group.pieces}`, `${zones.map((_, z) => `b_${g}_${z}`).join(' + ')} - s_${g} <= 1`);
  });
  for (const { onAt } of groups) {
    const then = groups.map((group, g) => ({ group, g })).filter(({ group }) => group.onAt <= onAt && onAt < group.offAt);
    zones.forEach((zone, z) => {
      rules.push(`${then.map(({ group, g }) => `${group.pieceAreaM2} x_${g}_${z}`).join(' + ')} <= ${zone.areaM2}`, `${then.map(({ group, g }) => `${group.pieceKg} x_${g}_${z}`).join(' + ')} <= ${zone.bearsKg}`);
    });
    rules.push(`${then.flatMap(({ group, g }) => zones.map((_, z) => `${group.pieceKg} x_${g}_${z}`)).join(' + ')} <= ${problem.bearsKg}`);
  }
  groups.forEach((one, g) => groups.forEach((other, h) => zones.forEach((zone, z) => zones.forEach((below, w) => {
    if (g === h || !meets(one, other)) return;
    const both = `b_${g}_${z} + b_${h}_${w}`;
    if (over(zone, below) && one.dripRank > other.dripRank) rules.push(`${both} <= 1`);
    const price = z === w && g < h && one.offAt !== other.offAt ? of('disturbS') : over(zone, below) && other.offAt < one.offAt ? of('reachS') : 0;
    if (price > 0) {
      costs.push(`${price} p_${g}_${z}_${h}_${w}`);
      rules.push(`${both} - p_${g}_${z}_${h}_${w} <= 1`);
    }
  }))));
  const marks = [...new Set(groups.flatMap(({ onAt, offAt }) => [onAt as number, offAt as number]))].sort((a, b) => a - b);
  marks.slice(0, -1).forEach((from, c) => {
    costs.push(`${(of('fireEndPerHourS') * (marks[c + 1]! - from)) / 3600} y_${c}`);
    groups.forEach(({ onAt, offAt }, g) => zones.forEach(({ fireEnd }, z) => {
      if (fireEnd && onAt <= from && from < offAt) rules.push(`b_${g}_${z} - y_${c} <= 0`);
    }));
  });
  return `Minimize\n cost: ${costs.join('\n + ')}\nSubject To\n${rules.map((rule, i) => ` r${i}: ${rule}`).join('\n')}\nGeneral\n ${whole.join('\n ')}\nBinary\n ${yes.join('\n ')}\nEnd\n`;
}
