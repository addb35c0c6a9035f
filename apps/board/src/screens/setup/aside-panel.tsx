import { useQueryClient } from '@tanstack/react-query';
import type { ProbesView, Setup } from '@stokehold/domain/contract';
import { useState } from 'react';
import { useCommand } from '../../live/use-command.js';
import { Button } from '../../parts/button.js';
import { Failure } from '../../parts/failure.js';
import { Pick } from '../../parts/field.js';
import { Panel } from '../../parts/panel.js';
import { useFigures } from '../../units/use-figures.js';
import { useProbeWords } from '../../words/probes.js';
import { PROBES } from './probes-panel.js';
import css from './setup.module.css';

type Aside = ProbesView['aside'][number];

/** Readings that came under names nobody set up: kept, and given to a probe here. */
export function AsidePanel({ setup, seen }: { readonly setup: Setup; readonly seen: ProbesView }) {
  const say = useProbeWords();
  const [given, setGiven] = useState<number>();
  return (
    <Panel title={say('aside.title')}>
      <p className={seen.aside.length === 0 ? css['quiet'] : undefined}>{say(seen.aside.length === 0 ? 'aside.none' : 'aside.why')}</p>
      {given !== undefined && <p role="status">{say('aside.given', { count: given })}</p>}
      <ul className={css['rows']}>
        {seen.aside.map((aside) => <AsideRow key={`${aside.source} ${aside.why}`} aside={aside} setup={setup} seen={seen} onGiven={setGiven} />)}
      </ul>
    </Panel>
  );
}

function AsideRow({ aside, setup, seen, onGiven }: { readonly aside: Aside; readonly setup: Setup; readonly seen: ProbesView; readonly onGiven: (count: number) => void }) {
  const say = useProbeWords();
  const figures = useFigures();
  const client = useQueryClient();
  const command = useCommand('assignSource');
  const [probeId, setProbeId] = useState('');
  const chosen = seen.probes.find(({ id }) => id === probeId);
  const give = async () => {
    const done = chosen && (await command.send({ source: aside.source, probeId: chosen.id }));
    if (!done) return;
    onGiven(done.kept + done.repeated);
    await client.invalidateQueries({ queryKey: PROBES });
  };
  const span = { fromDay: figures.date(aside.firstAt), fromTime: figures.time(aside.firstAt), day: figures.date(aside.lastAt), time: figures.time(aside.lastAt) };
  return (
    <li>
      <span>
        <strong className={css['big']}>{seen.probes.find(({ id }) => id === aside.source)?.name ?? aside.source}</strong> {say('aside.readings', { count: aside.readings })}
        {aside.lastTempC !== null && `, ${say('aside.lastC', { temp: figures.of('temp', aside.lastTempC) })}`}
        <br />
        <span className={css['quiet']}>{say('aside.span', span)}</span>
        {aside.why === 'time-impossible' && <><br /><span className={css['soon']}>▲ {say('aside.impossible')}</span></>}
        <Failure of={command.failed} />
      </span>
      {aside.why === 'probe-unknown' && <span className={css['line']}>
        <Pick label={say('aside.to')} value={probeId} onChange={(event) => setProbeId(event.target.value)}>
          <option value="">{say('aside.choose')}</option>
          {setup.pits.flatMap((pit) => seen.probes.filter(({ pitId }) => pitId === pit.id).map(({ id, name }) => <option key={id} value={id}>{pit.name}, {name}</option>))}
        </Pick>
        <Button disabled={!chosen || command.sending} onClick={() => void give()} aria-label={say('aside.giveOf', { name: aside.source })}>{say('aside.give')}</Button>
      </span>}
    </li>
  );
}
