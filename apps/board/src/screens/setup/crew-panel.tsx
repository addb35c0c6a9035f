import type { Cents, PersonId } from '@stokehold/domain/quantity';
import { pinOrPassword, role, skill, type CrewMember, type Setup } from '@stokehold/domain/contract';
import { useState } from 'react';
import { commandKey } from '../../live/command-key.js';
import { useCommand } from '../../live/use-command.js';
import { useSetupChanged } from '../../live/use-setup.js';
import { Button } from '../../parts/button.js';
import { Choice } from '../../parts/choice.js';
import { Field } from '../../parts/field.js';
import { FormReading, type Wrongs } from '../../parts/form-reading.js';
import { Fields, Form, Panel } from '../../parts/panel.js';
import { useWrongText } from '../../parts/wrong-text.js';
import { useFigures } from '../../units/use-figures.js';
import { useSetupWords } from '../../words/setup.js';
import { useSharedWords } from '../../words/shared.js';
import css from './setup.module.css';

type Member = Setup['crew'][number];
const nobodyYet = (): Member => ({ id: commandKey() as PersonId, name: '', role: 'crew', language: 'en', skills: ['fire'], rateCentsPerHour: 0 as Cents, left: false, hasPin: false });

/** Everybody of the crew; one at a time is opened and changed. */
export function CrewPanel({ setup }: { readonly setup: Setup }) {
  const say = useSetupWords();
  const shared = useSharedWords();
  const figures = useFigures();
  const [opened, setOpened] = useState<Member>();
  return (
    <>
      <Panel title={say('crew.title')} beside={<Button onClick={() => setOpened(nobodyYet())}>{say('crew.add')}</Button>}>
        <ul className={css['rows']}>
          {setup.crew.map((member) => (
            <li key={member.id} className={member.left ? css['quiet'] : undefined}>
              <span>
                <strong className={css['big']}>{member.name}</strong> {member.left ? say('crew.hasLeft') : shared(`role.${member.role}`)}
                <br />
                <span className={css['quiet']}>
                  {[shared(`language.${member.language}`), member.skills.map((one) => shared(`skill.${one}`)).join(', '), say('crew.rateOf', { money: figures.money(member.rateCentsPerHour) })].filter(Boolean).join(' · ')}
                  {!member.hasPin && !member.left && <span className={css['soon']}> ▲ {say('crew.noPin')}</span>}
                </span>
              </span>
              <Button onClick={() => setOpened(member)} aria-label={`${shared('do.change')} ${member.name}`}>{shared('do.change')}</Button>
            </li>
          ))}
        </ul>
      </Panel>
      {opened && <MemberForm key={opened.id} member={opened} onDone={() => setOpened(undefined)} />}
    </>
  );
}

/** What stands in the boxes of a person's form, and sending it. */
function useMember(member: Member, onDone: () => void) {
  const figures = useFigures();
  const changed = useSetupChanged();
  const command = useCommand('saveCrewMember');
  const { hasPin: _hasPin, ...known } = member;
  const [person, setPerson] = useState<CrewMember>(known);
  const [typed, setTyped] = useState({ rate: member.name === '' ? '' : String(member.rateCentsPerHour / 100), pin: '' });
  const [pinWrong, setPinWrong] = useState(false);
  const [wrongs, setWrongs] = useState<Wrongs>({});
  const send = async () => {
    const { rate, pin } = typed;
    const reading = new FormReading(figures, 'UTC');
    const name = reading.text('name', person.name);
    const cents = reading.cents('rate', rate, 100_000_000);
    const badPin = pin !== '' && !pinOrPassword.safeParse(pin).success;
    setWrongs(reading.wrongs);
    setPinWrong(badPin);
    if (!reading.good || name === undefined || cents === undefined || badPin) return;
    if (!(await command.send({ person: { ...person, name, rateCentsPerHour: cents as Cents }, ...(pin !== '' && { pin }) }))) return;
    await changed();
    onDone();
  };
  const change = (part: Partial<CrewMember>) => setPerson({ ...person, ...part });
  const type = (part: Partial<typeof typed>) => setTyped({ ...typed, ...part });
  return { person, change, typed, type, wrongs, pinWrong, command, send: () => void send() };
}

function Skills({ person, change }: { readonly person: CrewMember; readonly change: (part: Partial<CrewMember>) => void }) {
  const say = useSetupWords();
  const shared = useSharedWords();
  return (
    <fieldset className={css['skills']}>
      <legend>{say('crew.skills')}</legend>
      {skill.options.map((one) => (
        <label key={one} className={css['tick']}>
          <input
            type="checkbox" checked={person.skills.includes(one)}
            onChange={(event) => change({ skills: event.target.checked ? [...person.skills, one] : person.skills.filter((other) => other !== one) })}
          />
          {shared(`skill.${one}`)}
        </label>
      ))}
    </fieldset>
  );
}

function MemberForm({ member, onDone }: { readonly member: Member; readonly onDone: () => void }) {
  const say = useSetupWords();
  const shared = useSharedWords();
  const wrongText = useWrongText();
  const { person, change, typed, type, wrongs, pinWrong, command, send } = useMember(member, onDone);
  const { hasPin } = member;
  return (
    <Panel title={member.name === '' ? say('crew.add') : member.name}>
      <Form onSend={send} sending={command.sending} failed={command.failed} does={shared('do.save')} onCancel={onDone}>
        <Fields>
          <Field label={say('crew.name')} value={person.name} maxLength={60} wrong={wrongText(wrongs['name'])} onChange={(event) => change({ name: event.target.value })} />
          <Field label={say('crew.rate')} unit={say('crew.perHour')} inputMode="decimal" value={typed.rate} wrong={wrongText(wrongs['rate'])} onChange={(event) => type({ rate: event.target.value })} />
          <Field
            label={say(hasPin ? 'crew.newPin' : 'crew.pin')} type="password" autoComplete="new-password" maxLength={100} value={typed.pin} hint={say(hasPin ? 'crew.pinKept' : 'crew.pinHint')}
            wrong={pinWrong ? say('crew.pinWrong') : undefined} onChange={(event) => type({ pin: event.target.value })}
          />
        </Fields>
        <Choice label={say('crew.role')} value={person.role} onChoose={(chosen) => change({ role: chosen })} options={role.options.map((value) => ({ value, label: shared(`role.${value}`) }))} />
        <Choice label={shared('language')} value={person.language} onChoose={(language) => change({ language })} options={[{ value: 'en', label: shared('language.en') }, { value: 'es', label: shared('language.es') }]} />
        <Skills {...{ person, change }} />
        <label className={css['tick']}>
          <input type="checkbox" checked={person.left} onChange={(event) => change({ left: event.target.checked })} />
          {say('crew.left')}
        </label>
      </Form>
    </Panel>
  );
}
