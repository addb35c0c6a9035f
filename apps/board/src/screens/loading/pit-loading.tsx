import type { PitLoadingView, PitView } from '@stokehold/domain/contract';
import { useClock } from '../../live/use-clock.js';
import { Panel } from '../../parts/panel.js';
import { PitDrawing } from '../../parts/pit-drawing.js';
import { drawnLies, handlingsAhead, liesByFire, toDoOn } from './loading-rows.js';
import { cutName, elsewhereLine, placingLine, type Telling } from './loading-words.js';
import css from './loading.module.css';
import { WeighForm } from './weigh-form.js';

const MOST_HANDLINGS = 6;

/** One pit: how it should be loaded, why, what has to be carried, turned and swapped. */
export function PitLoading({ view, loading, telling }: { readonly view: PitView; readonly loading: PitLoadingView; readonly telling: Telling }) {
  const { say, figures, state } = telling;
  const { pit, fire } = view;
  const bare = loading.placings.length + loading.unplaced.length === 0;
  return (
    <Panel title={pit.name}>
      <p className={css['quiet']}>{say(`fire.${loading.position}`)}</p>
      {loading.position !== 'door' && liesByFire(pit.id, loading, state.cooks) && <p className={css['warn']}>▲ {say('foodByFire')}</p>}
      <div className={css['drawing']}>
        <PitDrawing pit={pit} lies={drawnLies(loading, state.cooks)} bedFrac={fire ? Math.min(1, fire.bedKg / Math.max(0.01, fire.fullBedKg)) : null} lit={fire !== null} title={say('drawing', { pit: pit.name })} />
      </div>
      <ZoneHeats view={view} loading={loading} telling={telling} />
      {bare ? <p className={css['quiet']}>{say('none')}</p> : <Placings loading={loading} telling={telling} />}
      {loading.unplaced.map(({ cookId, pieces, hindrances }) => (
        <p key={cookId} className={css['warn']}>▲ {say('unplaced', { pieces, cut: cutName(telling, cookId), why: elsewhereLine(telling, hindrances.map((one) => ({ ...one, moreS: null }))) })}</p>
      ))}
      <Free loading={loading} telling={telling} />
      {!bare && <Carrying pitId={pit.id} loading={loading} telling={telling} />}
      <Handlings loading={loading} telling={telling} />
      {!bare && <p className={css['quiet']}>{loading.proven ? say('best') : say('near', { span: figures.span(Math.max(60, loading.priceS - loading.boundS)) })}</p>}
      {!bare && <WeighForm pitId={pit.id} loading={loading} telling={telling} />}
    </Panel>
  );
}

interface Part {
  readonly loading: PitLoadingView;
  readonly telling: Telling;
}

/** The heat of each zone under the drawing, in the order in which it stands in the yard. */
function ZoneHeats({ view: { pit }, loading, telling: { say, figures } }: Part & { readonly view: PitView }) {
  const last = loading.zones.length - 1;
  const zones = pit.fireEnd === 'right' ? [...loading.zones].reverse() : loading.zones;
  return (
    <ul className={css['zones']}>
      {zones.map(({ zone, airTempC, radiantWPerM2 }) => (
        <li key={zone} style={{ flexGrow: pit.zones[zone]?.lengthM ?? 1 }}>
          <strong>{say(zone === 0 ? 'zone.fireEnd' : zone === last ? 'zone.stackEnd' : 'zone', { zone: zone + 1 })}</strong>
          <span className="figure">{say('zone.air', { temp: figures.degrees(airTempC) })}</span>
          <span className="figure">{say('zone.radiant', { radiant: figures.of('flux', radiantWPerM2) })}</span>
        </li>
      ))}
    </ul>
  );
}

function Placings({ loading, telling }: Part) {
  const { say, figures } = telling;
  return (
    <ul className={css['placings']} aria-label={say('shouldLie')}>
      {loading.placings.map((placing) => (
        <li key={`${placing.cookId}/${placing.zone}`}>
          <span className={`figure ${css['where']}`}>{say('zone', { zone: placing.zone + 1 })}</span>
          <span>
            <strong>{say('pieces', { pieces: placing.pieces, cut: cutName(telling, placing.cookId) })}</strong> <span className="figure">{say('comesOff', { time: figures.dayTime(placing.comesOffAt) })}</span>
            <br />
            {placingLine(telling, placing)}
            {placing.elsewhere.length > 0 && (
              <details className={css['quiet']}>
                <summary>{say('elsewhere')}</summary>
                {elsewhereLine(telling, placing.elsewhere)}
              </details>
            )}
          </span>
        </li>
      ))}
    </ul>
  );
}

function Carrying({ pitId, loading, telling }: Part & { readonly pitId: string }) {
  const { say, state } = telling;
  const toDo = toDoOn(pitId, loading, state.cooks);
  if (!state.cooks.some(({ onAt, lies }) => onAt !== null && lies.some((lie) => lie.pitId === pitId))) return null;
  return (
    <>
      <h3>{say('toDo')}</h3>
      {toDo.length === 0 && <p className={css['quiet']}>{say('toDo.none')}</p>}
      <ul className={css['list']}>
        {toDo.map(({ cookId, pieces, from, zone }) => (
          <li key={`${cookId}/${from ?? 'beside'}/${zone}`}>
            {from === undefined ? say('toDo.put', { pieces, cut: cutName(telling, cookId), zone: zone + 1 }) : say('toDo.move', { pieces, cut: cutName(telling, cookId), from: from + 1, zone: zone + 1 })}
          </li>
        ))}
      </ul>
    </>
  );
}

/** When the fire end is free of food, so that longer splits may burn. */
function Free({ loading: { fireEndFree }, telling: { say, figures } }: Part) {
  const now = useClock();
  return fireEndFree.filter(({ until }) => Date.parse(until) > now).map(({ from, until }) => (
    <p key={from} className={css['free']}>{Date.parse(from) <= now ? say('freeNow', { until: figures.dayTime(until) }) : say('free', { from: figures.dayTime(from), until: figures.dayTime(until) })}</p>
  ));
}

function Handlings({ loading, telling }: Part) {
  const { say, figures } = telling;
  const ahead = handlingsAhead(loading, useClock(), MOST_HANDLINGS);
  if (ahead.length === 0) return null;
  return (
    <>
      <h3>{say('handlings')}</h3>
      <ul className={css['list']}>
        {ahead.map((one, i) => (
          <li key={i}>
            <span className="figure">{figures.dayTime(one.at)}</span> {say(`handling.${one.kind}`, { pieces: one.pieces, cut: cutName(telling, one.cookId), zone: one.zone + 1, withZone: (one.withZone ?? 0) + 1 })}
          </li>
        ))}
      </ul>
    </>
  );
}
