import { useQuery } from '@tanstack/react-query';
import type { ProbesView, ProbeView, Setup } from '@stokehold/domain/contract';
import { useState } from 'react';
import { ask } from '../../live/ask.js';
import { passes } from '../../live/refused.js';
import { Button } from '../../parts/button.js';
import { Opening } from '../../parts/opening.js';
import { Panel } from '../../parts/panel.js';
import { useFigures } from '../../units/use-figures.js';
import { useProbeWords } from '../../words/probes.js';
import { AsidePanel } from './aside-panel.js';
import { CompareForm } from './compare-form.js';
import { PastePanel } from './paste-panel.js';
import css from './setup.module.css';

export const PROBES = ['probes'] as const;
const ASK_AGAIN_MS = 10_000;
const MARKS = { good: '●', suspect: '▲', bad: '✕' } as const;
const LOOKS = { good: css['quiet'], suspect: css['soon'], bad: css['bad'] } as const;

/** How each probe stands and what corrects it, names that nobody set up, and readings as a table. */
export function ProbesPanel({ setup }: { readonly setup: Setup }) {
  const seen = useQuery({ queryKey: PROBES, queryFn: () => ask('probes', {}), refetchInterval: ASK_AGAIN_MS, retry: (_count, error) => passes(error) }).data;
  if (!seen) return <Opening />;
  return (
    <>
      <Standing setup={setup} seen={seen} />
      <div className={css['pair']}>
        <AsidePanel setup={setup} seen={seen} />
        <PastePanel />
      </div>
    </>
  );
}

function Standing({ setup, seen }: { readonly setup: Setup; readonly seen: ProbesView }) {
  const say = useProbeWords();
  const ordered = setup.pits.flatMap((pit) => seen.probes.filter(({ pitId }) => pitId === pit.id).map((probe) => ({ pit: pit.name, probe })));
  return (
    <Panel title={say('title')}>
      {ordered.length === 0 ? <p className={css['quiet']}>{say('none')}</p> : (
        <ul className={css['rows']}>
          {ordered.map(({ pit, probe }) => <ProbeRow key={probe.id} pit={pit} probe={probe} setup={setup} />)}
        </ul>
      )}
    </Panel>
  );
}

function ProbeRow({ pit, probe, setup }: { readonly pit: string; readonly probe: ProbeView; readonly setup: Setup }) {
  const say = useProbeWords();
  const figures = useFigures();
  const [comparing, setComparing] = useState(false);
  const { name, zone, tempC, lastAt, quality, reason } = probe;
  const shown = lastAt === null ? say('neverRead') : tempC === null ? say('noValue', { time: figures.dayTime(lastAt) }) : say('last', { temp: figures.of('temp', tempC), time: figures.dayTime(lastAt) });
  return (
    <li>
      <span>
        <strong className={css['big']}>{pit}, {name}</strong> <span className={css['quiet']}>{say('zone', { zone: zone + 1 })}</span>
        <br />
        {shown}
        {quality && <span className={LOOKS[quality]}>{` ${MARKS[quality]} ${say(quality)}`}{reason && `: ${say(`reason.${reason}`)}`}</span>}
        {quality === 'bad' && <><br /><span className={css['quiet']}>{say('unused')}</span></>}
        <Correction probe={probe} setup={setup} />
      </span>
      {!comparing && <Button onClick={() => setComparing(true)} aria-label={say('compareOf', { name: `${pit}, ${name}` })}>{say('compare')}</Button>}
      {comparing && <CompareForm probe={probe} zone={setup.yard.timeZone} onClose={() => setComparing(false)} />}
    </li>
  );
}

/** What corrects a probe, since when, and who said so. */
function Correction({ probe: { calibration }, setup }: { readonly probe: ProbeView; readonly setup: Setup }) {
  const say = useProbeWords();
  const figures = useFigures();
  if (!calibration) return null;
  const since = { day: figures.date(calibration.from), time: figures.time(calibration.from), who: setup.crew.find(({ id }) => id === calibration.by)?.name ?? say('correctedBySomebody') };
  const pairs = calibration.against.map(({ shownC, trueC }) => say('pair', { shown: figures.of('temp', shownC), true: figures.of('temp', trueC) })).join('; ');
  return (
    <>
      <br />
      <span className={css['quiet']}>{pairs ? say('corrected', { ...since, pairs }) : say('uncorrected', since)}{calibration.note && ` (${calibration.note})`}</span>
    </>
  );
}
