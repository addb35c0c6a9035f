import { useQuery } from '@tanstack/react-query';
import type { ServiceId } from '@stokehold/domain/quantity';
import { fromIso } from '@stokehold/domain/quantity';
import type { ServiceCost, YardState } from '@stokehold/domain/contract';
import { Link, useParams } from 'wouter';
import { ask } from '../../live/ask.js';
import { passes, Refused } from '../../live/refused.js';
import { useClock } from '../../live/use-clock.js';
import { useMay } from '../../live/use-setup.js';
import { useYard } from '../../live/use-yard.js';
import { Button } from '../../parts/button.js';
import { Caution } from '../../parts/caution.js';
import { Failure } from '../../parts/failure.js';
import { Opening } from '../../parts/opening.js';
import { Panel } from '../../parts/panel.js';
import { savePaper } from '../../parts/paper.js';
import { csvOf, saveFile } from '../../parts/save-file.js';
import { Sheet } from '../../parts/sheet.js';
import { useFigures } from '../../units/use-figures.js';
import { useDeskWords } from '../../words/desk.js';
import { useServiceWords } from '../../words/service.js';
import { AgainstPlan } from './against-plan.js';
import { costPaper } from './cost-paper.js';
import { CostBar } from './cost-bar.js';
import { CookTable, ShareTables } from './cost-tables.js';
import { costRows } from './parts-of-cost.js';
import { PriceMeat } from './price-meat.js';
import css from './service.module.css';
import { ServiceFood } from './service-food.js';
import { Weeks } from './weeks.js';

/** One service, or all of them to choose from. */
export function ServiceScreen() {
  const state = useYard();
  const { serviceId } = useParams();
  if (!state) return <Opening />;
  return serviceId ? <OneService key={serviceId} state={state} serviceId={serviceId} /> : <AllServices state={state} />;
}

function AllServices({ state }: { readonly state: YardState }) {
  const say = useServiceWords();
  const figures = useFigures();
  return (
    <Sheet title={say('title')}>
      {state.services.length === 0 && <p>{say('none')}</p>}
      <ul className={css['services']}>
        {[...state.services].sort((a, b) => a.readyBy.localeCompare(b.readyBy)).map((service) => (
          <li key={service.id}>
            <Link href={`/service/${service.id}`}>
              <strong>{service.name}</strong>
              <span className="figure">{say('readyBy', { time: figures.dayTime(service.readyBy) })}</span>
              <span className="figure">{say('portions', { count: service.portions })}</span>
            </Link>
          </li>
        ))}
      </ul>
      <p>
        <Link href="/night?show=services">{say('plan')}</Link>
      </p>
      <Weeks />
    </Sheet>
  );
}

const REFRESH_MS = 30_000;

function OneService({ state, serviceId }: { readonly state: YardState; readonly serviceId: string }) {
  const say = useServiceWords();
  const desk = useDeskWords();
  const figures = useFigures();
  const now = useClock();
  const mayPlan = useMay('plan');
  const query = useQuery({
    queryKey: ['service-cost', serviceId],
    queryFn: () => ask('serviceCost', { serviceId: serviceId as ServiceId }),
    enabled: mayPlan, refetchInterval: REFRESH_MS, retry: (_count, error) => passes(error), retryDelay: 2000,
  });
  const service = query.data?.service ?? state.services.find(({ id }) => id === serviceId);
  if (query.error instanceof Refused) return <Sheet title={say('title')}><Failure of={query.error} /></Sheet>;
  if (!service) return <Sheet title={say('title')}>{mayPlan && !query.error ? say('opening') : say('unknown')}</Sheet>;
  const leftS = fromIso(service.readyBy) - now / 1000;
  const cooks = query.data?.cooks.map(({ cook }) => cook) ?? state.cooks.filter((cook) => cook.serviceId === serviceId);
  return (
    <Sheet title={service.name} beside={<Link href="/service">{say('all')}</Link>}>
      <p className={`figure ${css['ready']}`}>
        {say('readyBy', { time: figures.dayTime(service.readyBy) })}
        {leftS > 0 && <span className={css['quiet']}> {say('in', { span: figures.span(leftS) })}</span>}
        <span className={css['quiet']}> · {say('portions', { count: service.portions })}</span>
      </p>
      <Panel title={say('food')}>
        <ServiceFood state={state} cooks={cooks} readyBy={service.readyBy} />
        <Caution about="food" />
      </Panel>
      {!mayPlan && <p className={css['quiet']}>{desk('onlyLead')}</p>}
      {query.data && <Cost cost={query.data} />}
    </Sheet>
  );
}

function Cost({ cost }: { readonly cost: ServiceCost }) {
  const say = useServiceWords();
  const figures = useFigures();
  return (
    <>
      <Panel title={say('cost')}>
        <dl className={`figure ${css['sums']}`}>
          <Sum name={say('sum.total')} value={figures.money(cost.totalCents)} />
          <Sum name={say('sum.perPortion')} value={cost.perPortionCents === null ? '–' : figures.money(cost.perPortionCents)} />
          <Sum name={say('sum.perMass', { unit: figures.unit('mass') })} value={cost.perKgCents === null ? '–' : figures.moneyPerMass(cost.perKgCents)} />
          <Sum name={say('sum.wood')} value={figures.money(cost.woodCents)} />
          <Sum name={say('sum.crew')} value={figures.money(cost.crewCents)} />
          <Sum name={say('sum.meat')} value={cost.cooks.length > 0 && cost.unpricedMeat === cost.cooks.length ? '–' : figures.money(cost.meatCents)} />
        </dl>
        <CostBar cost={cost} figures={figures} />
        <p className={css['quiet']}>{say('estimate')}</p>
        {cost.unpricedSplits > 0 && <p className={css['soon']}>▲ {say('unpriced', { count: cost.unpricedSplits })}</p>}
        {cost.unpricedMeat > 0 && <p className={css['soon']}>▲ {say('unpricedMeat', { count: cost.unpricedMeat })}</p>}
        <p className={css['deeds']}>
          <Button onClick={() => saveFile(`${cost.service.name}.csv`, csvOf(costRows(cost)))}>{say('csv')}</Button>
          <Button onClick={() => void savePaper(`${cost.service.name}.pdf`, costPaper(cost, say, figures))}>{say('pdf')}</Button>
          <Button onClick={() => window.print()}>{say('print')}</Button>
        </p>
      </Panel>
      <Panel title={say('byCook')}>
        <CookTable cost={cost} figures={figures} />
        <PriceMeat cost={cost} />
      </Panel>
      <AgainstPlan cost={cost} figures={figures} />
      <ShareTables cost={cost} figures={figures} />
    </>
  );
}

function Sum({ name, value }: { readonly name: string; readonly value: string }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{value}</dd>
    </div>
  );
}
