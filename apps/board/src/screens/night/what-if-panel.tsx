import { useMutation } from '@tanstack/react-query';
import type { Supposition, YardState } from '@stokehold/domain/contract';
import { epochS, later, MINUTE_S, type EpochS } from '@stokehold/domain/quantity';
import { useEffect, useState } from 'react';
import { ask } from '../../live/ask.js';
import { useCommand } from '../../live/use-command.js';
import { Button } from '../../parts/button.js';
import { Failure } from '../../parts/failure.js';
import { Field, Pick } from '../../parts/field.js';
import { FormReading, type TypedWall, type Wrongs } from '../../parts/form-reading.js';
import { Fields, Form, Panel } from '../../parts/panel.js';
import { WallField } from '../../parts/wall-field.js';
import { useWrongText } from '../../parts/wrong-text.js';
import { useFigures } from '../../units/use-figures.js';
import { wallOf } from '../../units/typed-wall-time.js';
import { supposedInWords, whatIfInWords, workToAsk, type Answering } from './answers.js';
import css from './night.module.css';
import { breaksToCome, restingPits } from './supposition.js';
import { workLine } from './why-panel.js';

/** Of a long list the first are enough to decide by. */
const FIRST_CHANGES = 8;

const WHATS = ['person-less', 'person-late', 'pit-more', 'break-moved', 'work-given'] as const;
type What = (typeof WHATS)[number];

interface WhatIfProps {
  readonly state: YardState;
  readonly answering: Answering;
  readonly nowS: number;
  /** What was supposed by dragging; asked at once. */
  readonly dragged: Supposition | undefined;
}

/** What would happen if: asked by a form or by dragging, answered from a copy of the night. Nothing is kept by asking. */
export function WhatIfPanel({ state, answering, nowS, dragged }: WhatIfProps) {
  const { plan: say } = answering;
  const [asked, setAsked] = useState<Supposition>();
  const answer = useMutation({ mutationFn: (what: Supposition) => ask('whatIf', { what }) });
  const suppose = (what: Supposition) => {
    setAsked(what);
    answer.mutate(what);
  };
  useEffect(() => {
    if (dragged) suppose(dragged);
  }, [dragged]);
  return (
    <>
      <Panel title={say('if.title')}>
        <Suppose {...{ state, answering, nowS }} asking={answer.isPending} onAsk={suppose} />
        <p className={css['quiet']}>{say('if.drag')}</p>
      </Panel>
      {asked && (
        <Panel title={say('if.answer')}>
          <p><strong>{supposedInWords(asked, answering)}</strong></p>
          {answer.isPending && <p>{say('why.asking')}</p>}
          <Failure of={(answer.error ?? undefined) as Parameters<typeof Failure>[0]['of']} />
          {answer.data && <Difference {...{ answering, asked }} view={answer.data} />}
        </Panel>
      )}
    </>
  );
}

function Difference({ answering, asked, view }: { readonly answering: Answering; readonly asked: Supposition; readonly view: Parameters<typeof whatIfInWords>[0] }) {
  const { plan: say } = answering;
  const pin = useCommand('pinWork');
  const [done, setDone] = useState(false);
  const [whole, setWhole] = useState(false);
  const { grave, changes, costs } = whatIfInWords(view, answering);
  const decide = async () => {
    if (asked.code === 'work-given' && (await pin.send({ work: asked.work, people: asked.people, startsAt: asked.startsAt }))) setDone(true);
    if (asked.code === 'break-moved' && (await pin.send({ work: { kind: 'break', breakId: asked.breakId }, people: null, startsAt: asked.startsAt }))) setDone(true);
  };
  return (
    <>
      {grave.map((line) => <p key={line} className={css['warn']}>▲ {line}</p>)}
      {view.changes.length === 0 && <p>{say('if.nothing')}</p>}
      {view.changes.length > 0 && changes.length === 0 && <p>{say('if.small')}</p>}
      <ul className={css['sentences']}>
        {(whole ? changes : changes.slice(0, FIRST_CHANGES)).map((line) => <li key={line}>{line}</li>)}
      </ul>
      {changes.length > FIRST_CHANGES && <Button onClick={() => setWhole(!whole)}>{whole ? answering.shared('do.less') : say('if.more', { count: changes.length - FIRST_CHANGES })}</Button>}
      {costs && <p className={css['quiet']}>{costs}</p>}
      {(asked.code === 'work-given' || asked.code === 'break-moved') && !done && <Button disabled={pin.sending} onClick={() => void decide()}>{say('if.doIt')}</Button>}
      {done && <p role="status">{say('if.doing')}</p>}
      <Failure of={pin.failed} />
    </>
  );
}

const FULL_QUARTER_S = 15 * MINUTE_S;
const nextQuarter = (nowS: number): EpochS => epochS(Math.ceil(nowS / FULL_QUARTER_S) * FULL_QUARTER_S);

interface SupposeProps extends Omit<WhatIfProps, 'dragged'> {
  readonly asking: boolean;
  readonly onAsk: (what: Supposition) => void;
}

function Suppose({ state, answering, nowS, asking, onAsk }: SupposeProps) {
  const { plan: say } = answering;
  const zone = state.yard.timeZone;
  const figures = useFigures();
  const wrongText = useWrongText();
  const [what, setWhat] = useState<What>('person-less');
  const [chosen, setChosen] = useState('');
  const [work, setWork] = useState('');
  const [by, setBy] = useState('20');
  const [at, setAt] = useState<TypedWall>(() => ({ wall: wallOf(nextQuarter(nowS), zone), again: false }));
  const [wrongs, setWrongs] = useState<Wrongs>({});
  const choices = choicesOf(what, state);
  const works = workToAsk(state, later(epochS(Math.floor(nowS)), 2 * 3600));
  const send = () => {
    const reading = new FormReading(figures, zone);
    const id = chosen || choices[0]?.id;
    const read = supposition({ what, id, at: () => reading.instant('at', at) ?? '', byS: () => (reading.number('by', by, { min: 1, max: 720, whole: true }) ?? 0) * MINUTE_S, work: works[Number(work)] });
    setWrongs(reading.wrongs);
    if (reading.good && read) onAsk(read);
  };
  const label = what === 'pit-more' ? say('if.pit') : what === 'break-moved' ? say('if.rest') : say('if.who');
  return (
    <Form onSend={send} sending={asking} failed={undefined} does={say('if.ask')}>
      <Fields>
        <Pick label={say('if.what')} value={what} onChange={(event) => { setWhat(event.target.value as What); setChosen(''); }}>
          {WHATS.map((one) => <option key={one} value={one}>{say(`if.${one}`)}</option>)}
        </Pick>
        {what === 'work-given' && (
          <Pick label={say('if.work')} value={work} onChange={(event) => setWork(event.target.value)}>
            {works.map((one, n) => <option key={n} value={n}>{workLine(one, state, answering)}</option>)}
          </Pick>
        )}
        <Pick label={label} value={chosen} onChange={(event) => setChosen(event.target.value)}>
          {choices.map(({ id, name }) => <option key={id} value={id}>{name}</option>)}
        </Pick>
        {what === 'person-late' && <Field label={say('if.by')} unit="min" inputMode="numeric" value={by} onChange={(event) => setBy(event.target.value)} wrong={wrongText(wrongs['by'])} />}
        {(what === 'person-less' || what === 'pit-more' || what === 'break-moved') && (
          <WallField label={say(what === 'person-less' ? 'if.from' : 'if.at')} zone={zone} value={at} onChange={setAt} wrong={wrongText(wrongs['at'])} />
        )}
      </Fields>
    </Form>
  );
}

function choicesOf(what: What, state: YardState): readonly { readonly id: string; readonly name: string }[] {
  if (what === 'pit-more') return restingPits(state);
  if (what === 'break-moved') return breaksToCome(state);
  return (state.shift?.people ?? []).filter(({ presence }) => presence !== 'gone-home').map(({ personId, name }) => ({ id: personId, name }));
}

interface Read {
  readonly what: What;
  readonly id: string | undefined;
  readonly at: () => string;
  readonly byS: () => number;
  readonly work: Extract<Supposition, { code: 'work-given' }>['work'] | undefined;
}

function supposition({ what, id, at, byS, work }: Read): Supposition | undefined {
  if (id === undefined) return undefined;
  switch (what) {
    case 'person-less':
      return { code: what, personId: id as never, fromAt: at() };
    case 'person-late':
      return { code: what, personId: id as never, byS: byS() };
    case 'pit-more':
      return { code: what, pitId: id as never, lightAt: at() };
    case 'break-moved':
      return { code: what, breakId: id, startsAt: at() };
    case 'work-given':
      return work && { code: what, work, people: [id as never], startsAt: null };
  }
}
