import { cookPlanParameter, generatedYard } from '@stokehold/scheduling/cook-plan';

const HOUR_S = 3600;

/**
 * The cook plan as a mixed-integer programme in CPLEX LP form, written from the problem's definition alone: every cook in its
 * time, one window of fire a pit. People are taken to be enough.
 */
export function cookPlanAsMip(problem) {
  const of = (name) => cookPlanParameter(problem, name);
  const stepS = of('stepS');
  const steps = Math.floor((problem.until - problem.from) / stepS);
  const costs = [];
  const rules = [];
  const yes = [];
  const lying = problem.pits.map(() => Array.from({ length: steps }, () => []));
  const windows = problem.pits.map((pit, p) => pit.heats.map((heat, h) => {
    const first = Math.ceil(pit.warmUpS / stepS);
    return Array.from({ length: steps }, (_, s) => Array.from({ length: steps - s }, (__, l) => [s, s + l + 1])).flat().filter(([s]) => s >= first).map(([s, e]) => {
      const burnS = (e - s) * stepS + pit.warmUpS;
      costs.push(`${Math.round((heat.woodCentsPerHour * burnS) / HOUR_S) + Math.round((((of('crewCentsPerHour') * pit.crewSPerHour) / HOUR_S) * burnS) / HOUR_S)} z_${p}_${h}_${s}_${e}`);
      yes.push(`z_${p}_${h}_${s}_${e}`);
      return { s, e, name: `z_${p}_${h}_${s}_${e}` };
    });
  }));
  problem.pits.forEach((_, p) => rules.push(`${windows[p].flat().map(({ name }) => name).join(' + ')} <= 1`));
  problem.cooks.forEach((cook, c) => {
    const places = [];
    const { readyBy } = problem.services.find(({ id }) => id === cook.serviceId);
    const together = problem.cooks.filter(({ serviceId }) => serviceId === cook.serviceId).length;
    cook.ways.forEach((way, w) => problem.pits.forEach((pit, p) => {
      const heat = pit.heats.findIndex(({ tempC }) => tempC === way.tempC);
      const takesS = way.takesS[way.outOf - Math.floor((of('lateFrac') * way.outOf) / together + 1e-9) - 1];
      const shortS = way.takesS[Math.floor(of('shortFrac') * way.outOf)];
      if (heat < 0 || takesS === undefined || shortS === undefined || cook.areaM2 > pit.areaM2) return;
      const length = Math.ceil(takesS / stepS);
      for (let t = 0; t + length <= steps; t++) {
        const onAt = problem.from + t * stepS;
        if (onAt + takesS > readyBy - cook.restLeastS || onAt + shortS < readyBy - cook.keepMostS) continue;
        const inside = windows[p][heat].filter(({ s, e }) => s <= t && e >= t + length).map(({ name }) => name);
        if (inside.length === 0) continue;
        const name = `x_${c}_${p}_${w}_${t}`;
        const keptS = Math.max(0, readyBy - cook.restLeastS - (onAt + length * stepS));
        costs.push(`${way.cents + Math.round((of('crewCentsPerHour') * (cook.loadS + cook.unloadS)) / HOUR_S) + Math.round((of('holdCentsPerHour') * keptS) / HOUR_S)} ${name}`);
        rules.push(`${name} - ${inside.join(' - ')} <= 0`);
        for (let on = t; on < t + length; on++) lying[p][on].push(`${cook.areaM2} ${name}`);
        places.push(name);
        yes.push(name);
      }
    }));
    rules.push(`${places.join(' + ')} = 1`);
  });
  lying.forEach((ofPit, p) => ofPit.forEach((there) => there.length > 0 && rules.push(`${there.join(' + ')} <= ${problem.pits[p].areaM2}`)));
  return `Minimize\n cost: ${costs.join('\n + ')}\nSubject To\n${rules.map((rule, i) => ` r${i}: ${rule}`).join('\n')}\nBinary\n ${yes.join('\n ')}\nEnd\n`;
}

/** A small drawn yard of whole-hour steps with people enough: two pits at two heats, five cooks for a service or two. */
export function smallYard(seed) {
  const yard = generatedYard({ pits: 2, cooks: 5, services: seed % 2 === 0 ? 2 : 1, seed, hours: 20, stepS: 3600, members: 20 });
  return {
    ...yard, crew: yard.crew.map((stretch) => ({ ...stretch, people: 40 })),
    pits: yard.pits.map((pit) => ({ ...pit, warmUpS: 3600, heats: pit.heats.slice(1) })), cooks: yard.cooks.map((cook) => ({ ...cook, ways: cook.ways.filter(({ tempC }) => tempC > 110) })),
  };
}
