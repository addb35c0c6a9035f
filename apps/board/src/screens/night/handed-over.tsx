import type { HandoverNow } from '@stokehold/domain/contract';
import { useFigures } from '../../units/use-figures.js';
import { useNightWords } from '../../words/night.js';
import { usePlanWords } from '../../words/plan.js';
import { useSharedWords } from '../../words/shared.js';
import css from './night.module.css';

const GRADES = ['low', 'fair', 'full'] as const;

/** What a handover says: fires, food, wood, alarms, open checks with their owners, and what was promised. */
export function HandedOver({ fires, food, splitsLeft, openAlarms, openChecks, promised, alarms }: Omit<HandoverNow, 'to'>) {
  const say = useNightWords();
  const plan = usePlanWords();
  const shared = useSharedWords();
  const figures = useFigures();
  const ownerOf = ({ side, owner }: HandoverNow['openChecks'][number]) =>
    owner === null ? plan('hand.nobodyYet') : plan(side === 'this-crew' ? 'hand.thisCrew' : 'hand.nextCrew', { who: owner });
  const work = (one: HandoverNow['promised'][number]) => {
    if (one.work === 'check') return say('work.check', { pit: one.pit ?? say('aPit') });
    return one.pit ? say('work.taskAt', { task: shared(`task.${one.work}`), pit: one.pit }) : shared(`task.${one.work}`);
  };
  return (
    <>
      <p className="figure">
        {fires.map(({ pit, bed, tempC }) => {
          const grade = GRADES.find((known) => known === bed);
          return [pit, grade && say('handover.bed', { grade: shared(`bed.${grade}`) }), tempC !== null && figures.degrees(tempC)].filter(Boolean).join(' ');
        }).join(' · ')}
      </p>
      {food.length > 0 && <p>{food.map(({ pit, cut, pieces }) => `${pit}: ${say('cook.named', { cut, count: pieces })}`).join(' · ')}</p>}
      <p className={css['quiet']}>{say('handover.wood', { count: splitsLeft })}, {say('handover.alarms', { count: openAlarms })}</p>
      {alarms.length > 0 && (
        <Listed title={plan('hand.alarms')} lines={alarms.map(({ kind, pit, since }) => plan('hand.alarmOne', { alarm: shared(`alarm.${kind}`), pit: pit ?? '', time: figures.time(since) }))} />
      )}
      {openChecks.length > 0 && (
        <Listed
          title={plan('hand.open')}
          lines={openChecks.map((one) => plan('hand.openOne', { pit: one.pit, due: figures.time(one.dueAt), latest: figures.time(one.latestSafeAt), owner: ownerOf(one) }))}
        />
      )}
      {promised.length > 0 && (
        <details>
          <summary>{plan('hand.promised')}</summary>
          <Listed lines={promised.map((one) => plan('hand.promisedOne', { time: figures.time(one.at), work: work(one), who: one.people.join(say('and')) }))} />
        </details>
      )}
    </>
  );
}

function Listed({ title, lines }: { readonly title?: string; readonly lines: readonly string[] }) {
  return (
    <section>
      {title && <h3>{title}</h3>}
      <ul className={`figure ${css['sentences']}`}>
        {lines.map((line, n) => <li key={n}>{line}</li>)}
      </ul>
    </section>
  );
}
