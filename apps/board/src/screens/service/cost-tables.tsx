import type { ServiceCost } from '@stokehold/domain/contract';
import type { ReactNode } from 'react';
import { Panel } from '../../parts/panel.js';
import type { Figures } from '../../units/figures.js';
import { useServiceWords } from '../../words/service.js';
import { cookLines } from './parts-of-cost.js';
import css from './service.module.css';

interface Props {
  readonly cost: ServiceCost;
  readonly figures: Figures;
}

/** A table whose first column is names and whose others are figures; scrolls sideways where it must. */
function Figured({ heads, rows }: { readonly heads: readonly string[]; readonly rows: readonly (readonly [key: string, ...cells: ReactNode[]])[] }) {
  return (
    <div className={css['scroll']} tabIndex={0} role="group" aria-label={heads[0]}>
      <table className={`figure ${css['table']}`}>
        <thead>
          <tr>{heads.map((head) => <th key={head} scope="col">{head}</th>)}</tr>
        </thead>
        <tbody>
          {rows.map(([key, first, ...cells]) => (
            <tr key={key}>
              <th scope="row">{first}</th>
              {cells.map((cell, index) => <td key={index}>{cell}</td>)}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

export function CookTable({ cost, figures }: Props) {
  const say = useServiceWords();
  const heads = [say('table.cook'), say('table.wood'), say('table.crew'), say('table.meat'), say('table.total'), say('table.perMass', { unit: figures.unit('mass') }), say('table.perServed', { unit: figures.unit('mass') }), say('table.yield')];
  const rows = cookLines(cost).map((line) => [
    line.id, `${line.pieces} × ${line.cut}`, figures.money(line.woodCents), figures.money(line.crewCents), line.meatCents === 0 && cost.unpricedMeat > 0 ? '–' : figures.money(line.meatCents), figures.money(line.totalCents),
    figures.moneyPerMass(line.perKgCents), line.perServedKgCents === undefined ? '–' : figures.moneyPerMass(line.perServedKgCents), line.yieldFrac === undefined ? '–' : figures.percent(line.yieldFrac),
  ] as const);
  return rows.length === 0 ? <p>{say('noCooks')}</p> : <Figured heads={heads} rows={rows} />;
}

export function ShareTables({ cost, figures }: Props) {
  const say = useServiceWords();
  const wood = cost.wood.map(({ lot, splits, massKg, costCents }) => [lot, lot, figures.count(splits, Number.isInteger(splits) ? 0 : 1), figures.of('mass', massKg), figures.money(costCents)] as const);
  const crew = cost.crew.map(({ person, workedS, costCents }) => [person, person, figures.span(workedS), figures.money(costCents)] as const);
  return (
    <div className={css['pair']}>
      <Panel title={say('byLot')}>
        {wood.length === 0 ? <p>{say('nothingYet')}</p> : <Figured heads={[say('table.lot'), say('table.splits'), say('table.mass'), say('table.cost')]} rows={wood} />}
      </Panel>
      <Panel title={say('byPerson')}>
        {crew.length === 0 ? <p>{say('nothingYet')}</p> : <Figured heads={[say('table.person'), say('table.minutes'), say('table.cost')]} rows={crew} />}
      </Panel>
    </div>
  );
}
