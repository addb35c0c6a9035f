import { useQuery } from '@tanstack/react-query';
import type { RosterView } from '@stokehold/domain/contract';
import { useState } from 'react';
import { ask } from '../../live/ask.js';
import { Pick } from '../../parts/field.js';
import { Panel } from '../../parts/panel.js';
import { useFigures } from '../../units/use-figures.js';
import { useNightWords } from '../../words/night.js';
import { usePlanWords } from '../../words/plan.js';
import { useSharedWords } from '../../words/shared.js';
import { LoadSentences } from './load-chart.js';
import { NeedChart } from './need-chart.js';
import css from './night.module.css';
import { failingHours, firstShown, mostNeeded } from './tomorrow.js';

const ANEW_MS = 30_000;

/** A night that is to come: how many people it needs at which hours, who is there, and what would mend the hours that fail. */
export function TomorrowPanel({ nowS }: { readonly nowS: number }) {
  const say = usePlanWords();
  const figures = useFigures();
  const [chosen, setChosen] = useState('');
  const shifts = useQuery({ queryKey: ['shifts'], refetchInterval: ANEW_MS, queryFn: () => ask('comingShifts', {}), placeholderData: (before) => before });
  const shiftId = chosen || (shifts.data && firstShown(shifts.data, nowS));
  const roster = useQuery({ queryKey: ['roster', shiftId], queryFn: () => ask('roster', { shiftId: shiftId ?? '' }), enabled: Boolean(shiftId) });
  if (!shifts.data) return null;
  if (shifts.data.length === 0) return <Panel title={say('need.title')}>{say('need.noShifts')}</Panel>;
  return (
    <div className={css['wide']}>
      <Panel title={say('need.title')}>
        <Pick label={say('need.which')} value={shiftId ?? ''} onChange={(event) => setChosen(event.target.value)}>
          {shifts.data.map(({ id, startsAt, endsAt }) => (
            <option key={id} value={id}>{figures.day(startsAt)}, {figures.time(startsAt)}–{figures.time(endsAt)}</option>
          ))}
        </Pick>
        {roster.data && <Need view={roster.data} />}
      </Panel>
    </div>
  );
}

function Need({ view }: { readonly view: RosterView }) {
  const say = usePlanWords();
  const night = useNightWords();
  const shared = useSharedWords();
  const figures = useFigures();
  const most = mostNeeded(view);
  const failing = failingHours(view);
  const skills = [...new Set(view.hours.flatMap(({ bySkill }) => bySkill.map(({ skill }) => skill)))];
  const mostOf = (skill: string) => Math.max(...view.hours.flatMap(({ bySkill }) => bySkill.filter((one) => one.skill === skill).map(({ needed }) => needed)));
  return (
    <>
      <NeedChart hours={view.hours} />
      {most && (
        <p>
          {say('need.most', { needed: most.needed, from: figures.time(most.from) })}{' '}
          {skills.map((skill) => say('need.bySkill', { count: mostOf(skill), skill: shared(`skill.${skill}`) })).join(', ')}.{' '}
          {most.fewest > 0 && say('need.fewest', { count: most.fewest })}
        </p>
      )}
      {failing.length === 0 ? <p>{say('need.holds')}</p> : <LoadSentences hours={failing} figures={figures} skillName={(skill) => shared(`skill.${skill as 'fire'}`)} />}
      {view.supposed.length > 0 && (
        <p className={css['quiet']}>
          {say('need.supposed')} {view.supposed.map(({ kind, cut, at }) => say('need.supposedOne', { task: shared(`task.${kind}`), cut, time: figures.time(at) })).join(', ')}. {night('people.rules')}
        </p>
      )}
    </>
  );
}
