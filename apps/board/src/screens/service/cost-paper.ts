import type { ServiceCost } from '@stokehold/domain/contract';
import type { Paper } from '../../parts/paper.js';
import type { Figures } from '../../units/figures.js';
import type { SayServiceWords } from '../../words/service.js';
import { cookLines } from './parts-of-cost.js';
import { pitLines } from './pit-lines.js';

/** The cost sheet of a service as a paper: sums, cooks, lots, people, and what made it differ from the plan. */
export function costPaper(cost: ServiceCost, say: SayServiceWords, figures: Figures): Paper {
  const { money } = figures;
  const unit = figures.unit('mass');
  const sum = (name: string, cents: number | null, shown: (cents: number) => string = money) => `${name}: ${cents === null ? '–' : shown(cents)}`;
  return {
    title: cost.service.name,
    lines: [
      say('readyBy', { time: figures.dayTime(cost.service.readyBy) }), say('portions', { count: cost.service.portions }),
      sum(say('sum.total'), cost.totalCents), sum(say('sum.perPortion'), cost.perPortionCents), sum(say('sum.perMass', { unit }), cost.perKgCents, figures.moneyPerMass),
      sum(say('sum.wood'), cost.woodCents), sum(say('sum.crew'), cost.crewCents), sum(say('sum.meat'), cost.meatCents),
    ],
    tables: [
      {
        title: say('byCook'), heads: [say('table.cook'), say('table.wood'), say('table.crew'), say('table.meat'), say('table.total'), say('table.perMass', { unit }), say('table.yield')],
        rows: cookLines(cost).map((line) => [
          `${line.pieces} × ${line.cut}`, money(line.woodCents), money(line.crewCents), money(line.meatCents), money(line.totalCents), figures.moneyPerMass(line.perKgCents), line.yieldFrac === undefined ? '–' : figures.percent(line.yieldFrac),
        ]),
      },
      { title: say('byLot'), heads: [say('table.lot'), say('table.splits'), say('table.mass'), say('table.cost')], rows: cost.wood.map(({ lot, splits, massKg, costCents }) => [lot, figures.count(splits, 1), figures.of('mass', massKg), money(costCents)]) },
      { title: say('byPerson'), heads: [say('table.person'), say('table.minutes'), say('table.cost')], rows: cost.crew.map(({ person, workedS, costCents }) => [person, figures.span(workedS), money(costCents)]) },
      ...againstTable(cost, say, figures),
    ].filter(({ rows }) => rows.length > 0),
    notes: [
      say('estimate'), ...(cost.unpricedSplits > 0 ? [say('unpriced', { count: cost.unpricedSplits })] : []), ...(cost.unpricedMeat > 0 ? [say('unpricedMeat', { count: cost.unpricedMeat })] : []),
    ],
  };
}

function againstTable({ against, woodCents, crewCents }: ServiceCost, say: SayServiceWords, figures: Figures): Paper['tables'] {
  if (!against) return [];
  const { money, count } = figures;
  const { plannedWoodCents, plannedCrewCents, causes, pits } = against;
  return [{
    title: say('against'), heads: [say('table.cause'), say('table.splits'), say('table.cost')],
    rows: [
      [say('against.wood', { planned: money(plannedWoodCents), actual: money(woodCents) }), '', money(woodCents - plannedWoodCents)],
      [say('against.crew', { planned: money(plannedCrewCents), actual: money(crewCents) }), '', money(crewCents - plannedCrewCents)],
      ...causes.map(({ cause, splits, cents }) => [say(`cause.${cause}`), Math.abs(splits) >= 0.05 ? count(splits, 1) : '', money(cents)]),
      ...pitLines(pits, say, figures).map(({ said, moreSplits }) => [said, count(moreSplits, 1), '']),
    ],
  }];
}
