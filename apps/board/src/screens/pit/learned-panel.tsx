import type { FirePage } from '@stokehold/domain/contract';
import { useState } from 'react';
import { useCommand } from '../../live/use-command.js';
import { useMay } from '../../live/use-setup.js';
import { Button } from '../../parts/button.js';
import { Field } from '../../parts/field.js';
import { Form, Panel } from '../../parts/panel.js';
import picture from '../../parts/picture.module.css';
import { useWidth } from '../../parts/use-width.js';
import { useFigures } from '../../units/use-figures.js';
import { usePitWords } from '../../words/pit.js';
import { useSharedWords } from '../../words/shared.js';
import { courseShape } from './course-shape.js';
import { learnedWords } from './learned-words.js';
import css from './pit.module.css';

interface LearnedProps {
  readonly page: FirePage;
  readonly names: ReadonlyMap<string, string>;
  readonly onSetBack: () => Promise<void>;
}

/** What this pit has taught, in words and over its nights; and the way to let it go. */
export function LearnedPanel({ page, names, onSetBack }: LearnedProps) {
  const say = usePitWords();
  const figures = useFigures();
  const mayPlan = useMay('plan');
  const { now, course, setBacks } = page.learned;
  return (
    <Panel title={say('taught')}>
      {now ? (
        <ul className={css['taught']}>
          {learnedWords(now, say, figures).map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      ) : (
        <p>{say('taught.none')}</p>
      )}
      {course.length > 1 && <Course learned={page.learned} />}
      {setBacks.map(({ at, by, reason }) => (
        <p key={at}>{say('setBack.was', { time: figures.dayTime(at), who: (by && names.get(by)) ?? say('somebody'), reason })}</p>
      ))}
      {now && <p className={css['quiet']}>{say('taught.carried')}</p>}
      {now && mayPlan && <SetBack pitId={page.pitId} onSetBack={onSetBack} />}
    </Panel>
  );
}

const COURSE_PX = 150;
const DASH = { loss: undefined, burn: '9 5', coal: '2 5' } as const;

function Course({ learned }: { readonly learned: FirePage['learned'] }) {
  const say = usePitWords();
  const figures = useFigures();
  const { ref, width } = useWidth<HTMLDivElement>(560);
  const { sameY, lines, setBacks } = courseShape(learned, width - 4, COURSE_PX);
  const path = (points: readonly (readonly [number, number])[]) => `M${points.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}`;
  return (
    <figure ref={ref} className={css['course']}>
      <svg width={width - 4} height={COURSE_PX} role="img" aria-label={say('taught.course')}>
        <path d={`M0 ${sameY}H${width}`} stroke="var(--band-edge)" strokeWidth="1.5" />
        {setBacks.map((x) => (
          <path key={x} d={`M${x} 0V${COURSE_PX}`} stroke="var(--wood)" strokeWidth="2.5" />
        ))}
        {lines.map(({ name, pieces }) =>
          pieces.map((points, nth) => <path key={`${name}${nth}`} d={path(points)} fill="none" stroke="var(--text)" strokeWidth="2.5" strokeDasharray={DASH[name]} strokeLinejoin="round" />),
        )}
      </svg>
      <figcaption>
        <ul className={picture['legend']}>
          {lines.map(({ name }) => (
            <li key={name}>
              <svg width="34" height="20" viewBox="0 0 34 20" aria-hidden="true">
                <path d="M1 10h32" stroke="var(--text)" strokeWidth="2.5" strokeDasharray={DASH[name]} />
              </svg>
              {say(`taught.${name}`)}
            </li>
          ))}
        </ul>
        <span className={css['quiet']}>{say('taught.over', { from: figures.day(learned.course[0]?.at ?? '') })}</span>
      </figcaption>
    </figure>
  );
}

function SetBack({ pitId, onSetBack }: { readonly pitId: FirePage['pitId']; readonly onSetBack: () => Promise<void> }) {
  const say = usePitWords();
  const shared = useSharedWords();
  const { send, sending, failed, forget } = useCommand('setLearnedBack');
  const [reason, setReason] = useState<string>();
  const [tried, setTried] = useState(false);
  if (reason === undefined) return <Button onClick={() => setReason('')}>{say('setBack.does')}</Button>;
  const tooShort = reason.trim().length < 3;
  const close = () => {
    setReason(undefined);
    setTried(false);
    forget();
  };
  const go = async () => {
    setTried(true);
    if (tooShort || !(await send({ pitId, reason }))) return;
    close();
    await onSetBack();
  };
  return (
    <Form onSend={() => void go()} sending={sending} failed={failed} does={say('setBack.sure')} onCancel={close}>
      <p>{say('setBack.why')}</p>
      <Field label={say('setBack.reason')} maxLength={200} value={reason} wrong={tried && tooShort ? shared('needed') : undefined} onChange={(event) => setReason(event.target.value)} />
    </Form>
  );
}
