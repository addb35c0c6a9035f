import type { CartLoad, PullProblem } from '@stokehold/scheduling/wood-pull';
import { PARAMETERS } from '@stokehold/scheduling/wood-pull';

/**
 * A pull written down as a mixed-integer programme in the LP text format, from the problem and the hours of the loads alone: nothing of
 * the planner's own reckoning is used. Heat in megajoules, money in mills.
 */
export function pullAsMip(problem: PullProblem, loads: readonly Pick<CartLoad, 'pitId' | 'from' | 'until'>[]): string {
  const p = (name: keyof typeof PARAMETERS) => problem.parameters?.[name] ?? PARAMETERS[name].usual;
  const cost: string[] = [];
  const rows: string[] = [];
  const bounds: string[] = [];
  const whole: string[] = [];
  const stock = new Map<string, string[]>();
  const wet = new Map<string, string[]>();
  const heatSoFar = new Map<string, string[]>();
  const needSoFar = new Map<string, { need: number; spread: number }>();
  const term = (factor: number, name: string) => `${factor < 0 ? '-' : '+'} ${Math.abs(factor).toFixed(9)} ${name}`;
  loads.forEach((load, i) => {
    const pit = problem.pits.find(({ id }) => id === load.pitId)!;
    const hours = pit.hours.filter(({ from, until }) => from >= load.from && until <= load.until);
    const need = hours.reduce((sum, { needJ }) => sum + needJ, 0);
    const so = needSoFar.get(pit.id) ?? { need: 0, spread: 0 };
    needSoFar.set(pit.id, { need: so.need + need, spread: so.spread + hours.reduce((sum, { spreadJ }) => sum + spreadJ, 0) });
    const { need: needAll, spread } = needSoFar.get(pit.id)!;
    const reserve = Math.round(p('reserveDeviations') * spread);
    const across = hours.some((hour) => hour.across);
    const offcutJ = hours.filter(({ offcuts }) => offcuts).reduce((sum, { needJ }) => sum + needJ, 0);
    const kg: string[] = [];
    const offcutHeat: string[] = [];
    const heat: { name: string; mj: number; species: string }[] = [];
    problem.piles.forEach((pile, j) => {
      const lot = problem.lots.find(({ id }) => id === pile.lotId)!;
      const way = problem.ways.find(({ pitId, lotId }) => pitId === pit.id && lotId === lot.id);
      const asIs = way?.asIs && (way.asIs.lies === 'across' || !across) ? way.asIs : undefined;
      const used = asIs ?? way?.trimmed;
      if (!used || (lot.offcut && offcutJ === 0) || (pile.cartOf === pit.id && load.from !== pit.hours[0]!.from)) return;
      const name = `x_${i}_${j}`;
      const told = problem.promises.filter(({ pitId }) => pitId === pit.id);
      const walk = problem.walkS[problem.places.indexOf(pile.place)]![problem.places.indexOf(pit.place)]!;
      const haul = pile.cartOf === pit.id || lot.offcut ? 0 : Math.round(p('walkMillsPerS') * ((2 * walk) / p('piecesPerWay') + p('handlingS')));
      const change = told.length > 0 && !told.some(({ lotId }) => lotId === lot.id) ? p('changeMills') : 0;
      cost.push(term((pile.cartOf === pit.id ? 0 : lot.priceMills + lot.laterMills) + p('wetMills') * lot.wetPoints + haul + change + (asIs ? 0 : way!.trimmed!.trimMills), name));
      whole.push(name);
      bounds.push(`0 <= ${name} <= ${pile.pieces}`);
      stock.set(pile.id, [...(stock.get(pile.id) ?? []), term(1, name)]);
      if (!lot.offcut) kg.push(term(lot.pieceKg, name));
      heat.push({ name, mj: used.heatJ / 1e6, species: lot.species });
      if (lot.offcut) offcutHeat.push(term(used.heatJ / 1e6, name));
      const all = pit.hours.reduce((sum, { needJ }) => sum + needJ, 0);
      if (lot.wetPoints > 0) wet.set(pit.id, [...(wet.get(pit.id) ?? []), term((lot.wetPoints * used.heatJ) / all, name)]);
    });
    const sum = [...(heatSoFar.get(pit.id) ?? []), ...heat.map(({ name, mj }) => term(mj, name))];
    heatSoFar.set(pit.id, sum);
    cost.push(term(p('shortMillsPerMj'), `s_${i}`), term(p('reserveMillsPerMj'), `u_${i}`));
    bounds.push(`0 <= u_${i} <= ${reserve / 1e6}`);
    rows.push(`${sum.join(' ')} + 1 s_${i} + 1 u_${i} >= ${(needAll + reserve) / 1e6}`);
    if (kg.length > 0) rows.push(`${kg.join(' ')} <= ${pit.cartKg}`);
    if (offcutHeat.length > 0) rows.push(`${offcutHeat.join(' ')} <= ${offcutJ / 1e6}`);
    const keys = [...new Set(hours.flatMap(({ mix }) => mix.map(({ species }) => [...species].sort().join(' '))))];
    keys.forEach((key, k) => {
      const of = (bound: 'leastFrac' | 'mostFrac', free: number) =>
        hours.reduce((all, hour) => all + hour.needJ * (hour.mix.find(({ species }) => [...species].sort().join(' ') === key)?.[bound] ?? free), 0) / need;
      const part = (frac: number, sign: 1 | -1) => heat.map(({ name, mj, species }) => term(sign * mj * (frac - (key.split(' ').includes(species) ? 1 : 0)), name));
      if (heat.length === 0) return;
      cost.push(term(p('mixMillsPerMj'), `a_${i}_${k}`), term(p('mixMillsPerMj'), `b_${i}_${k}`));
      rows.push(`${part(of('leastFrac', 0), 1).join(' ')} - 1 a_${i}_${k} <= 0`, `${part(of('mostFrac', 1), -1).join(' ')} - 1 b_${i}_${k} <= 0`);
    });
  });
  cost.push(term(p('fairMills'), 'worst'));
  whole.push('worst');
  for (const terms of wet.values()) rows.push(`${terms.join(' ')} - 1 worst <= 0`);
  for (const [pile, terms] of stock) rows.push(`${terms.join(' ')} <= ${problem.piles.find(({ id }) => id === pile)!.pieces}`);
  const named = rows.map((row, r) => `r${r}: ${row}`);
  return ['Minimize', ` obj: ${cost.join('\n ')}`, 'Subject To', ...named.map((row) => ` ${row.replace(/(.{200,}?) (?=[+-] )/g, '$1\n ')}`), 'Bounds', ...bounds.map((bound) => ` ${bound}`), 'General', ` ${whole.join('\n ')}`, 'End'].join('\n');
}
