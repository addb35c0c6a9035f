import { epochS, fromIso, type ShiftId } from '@stokehold/domain/quantity';
import type { Setup, YardState } from '@stokehold/domain/contract';
import { useMemo, useState } from 'react';
import { commandKey } from '../../live/command-key.js';
import { yardNowMs } from '../../live/heard.js';
import { useCommand } from '../../live/use-command.js';
import { useSetup } from '../../live/use-setup.js';
import { Button } from '../../parts/button.js';
import { Caution } from '../../parts/caution.js';
import { Form, Panel } from '../../parts/panel.js';
import { WallField } from '../../parts/wall-field.js';
import { typedNumber } from '../../units/typed-number.js';
import { useFigures } from '../../units/use-figures.js';
import { chosen, meaningOf, offsetChanges } from '../../units/typed-wall-time.js';
import { useNightWords } from '../../words/night.js';
import { useSharedWords } from '../../words/shared.js';
import { hoursShown, loadOfDraft } from './draft-load.js';
import { useFaultText } from './fault-text.js';
import { forgetDraft, keepDraft, keptDraft } from './kept-draft.js';
import { LoadChart, LoadSentences } from './load-chart.js';
import css from './night.module.css';
import { draftOf, freshDraft, type ShiftDraft, type Typing } from './shift-draft.js';
import { hoursLong, nightOf, type Fault, type Night } from './shift-of-draft.js';
import { ShiftPeople } from './shift-people.js';
import { ShiftPits } from './shift-pits.js';

/** Plans the night, or changes it: from when to when, which pits burn, who works. */
export function ShiftPanel({ state }: { readonly state: YardState }) {
  const setup = useSetup();
  const shared = useSharedWords();
  const [opened, setOpened] = useState(0);
  if (!setup) return <p>{shared('opening')}</p>;
  const again = () => {
    forgetDraft(setup.yard.id);
    setOpened(opened + 1);
  };
  return <ShiftForm key={`${state.shift?.id ?? 'none'}-${opened}`} {...{ state, setup }} blank={opened > 0} onBlank={again} />;
}

interface ShiftFormProps {
  readonly state: YardState;
  readonly setup: Setup;
  /** Begin a new night though another one runs. */
  readonly blank: boolean;
  readonly onBlank: () => void;
}

const newId = () => commandKey() as ShiftId;

function useTyping(zone: string): Typing {
  const figures = useFigures();
  return useMemo(() => ({
    zone,
    writeTempC: (tempC) => String(figures.shown('temp', tempC)),
    readTempC: (typed) => {
      const shown = typedNumber(typed);
      return shown === undefined ? undefined : figures.si('temp', shown);
    },
  }), [figures, zone]);
}

function ShiftForm({ state, setup, blank, onBlank }: ShiftFormProps) {
  const say = useNightWords();
  const zone = setup.yard.timeZone;
  const typing = useTyping(zone);
  const [draft, setDraft] = useState<ShiftDraft>(() => {
    if (state.shift && !blank) return draftOf(state.shift, setup, typing);
    return keptDraft(setup.yard.id) ?? freshDraft(newId(), epochS(yardNowMs() / 1000), setup, typing);
  });
  const [faults, setFaults] = useState<readonly Fault[]>([]);
  const [sent, setSent] = useState(false);
  const command = useCommand('planShift');
  const faultText = useFaultText(faults);
  const read = useMemo(() => nightOf(draft, typing), [draft, typing]);
  const startsAt = chosen(meaningOf(draft.starts.wall, zone), draft.starts.again);

  const change = (part: Partial<ShiftDraft>) => {
    setDraft({ ...draft, ...part });
    setSent(false);
  };
  const send = async () => {
    setFaults(read.faults);
    if (!read.night) return;
    if (await command.send(read.night)) {
      keepDraft(setup.yard.id, draft);
      setSent(true);
    }
  };
  return (
    <>
      <div className={css['wide']}>
        <Panel title={say(state.shift && !blank ? 'shift.change' : 'shift.plan')} beside={state.shift && !blank && <Button onClick={onBlank}>{say('shift.another')}</Button>}>
          <Form onSend={() => void send()} sending={command.sending} failed={command.failed} does={say('shift.save')} done={sent ? say('shift.saved') : undefined}>
            <div className={css['panels']}>
              <WallField label={say('shift.starts')} zone={zone} value={draft.starts} wrong={faultText('starts')} onChange={(starts) => change({ starts })} />
              <WallField label={say('shift.ends')} zone={zone} value={draft.ends} wrong={faultText('ends')} onChange={(ends) => change({ ends })} />
            </div>
            {read.night && <Length night={read.night} zone={zone} />}
            <ShiftPits {...{ draft, setup, startsAt, faultText, typing }} onChange={(pits) => change({ pits })} />
            <ShiftPeople {...{ draft, setup, startsAt, faultText, zone }} onChange={(people) => change({ people })} />
            <DraftLoad night={read.night} setup={setup} />
            {faults.length > 0 && <p className={css['warn']} role="alert">{say('fault.some', { count: faults.length })}</p>}
            <Caution about="fire" />
          </Form>
        </Panel>
      </div>
    </>
  );
}

function Length({ night, zone }: { readonly night: Night; readonly zone: string }) {
  const say = useNightWords();
  const figures = useFigures();
  const hours = hoursLong(night);
  const change = offsetChanges(fromIso(night.startsAt), fromIso(night.endsAt), zone)[0];
  return (
    <p className="figure" role="status">
      {say('shift.length', { hours: figures.count(hours, Number.isInteger(hours) ? 0 : 2) })}
      {change && <strong className={css['warn']}> {say(change.byS > 0 ? 'shift.clocksForward' : 'shift.clocksBack')}</strong>}
    </p>
  );
}

function DraftLoad({ night, setup }: { readonly night: Night | undefined; readonly setup: Setup }) {
  const say = useNightWords();
  const shared = useSharedWords();
  const figures = useFigures();
  if (!night) return null;
  const { all, lacking } = hoursShown(loadOfDraft(night, setup));
  return (
    <section>
      <h3>{say('load.before')}</h3>
      <LoadChart hours={all} figures={figures} />
      <LoadSentences hours={[...all, ...lacking]} figures={figures} skillName={(skill) => shared(`skill.${skill as 'fire'}`)} />
    </section>
  );
}
