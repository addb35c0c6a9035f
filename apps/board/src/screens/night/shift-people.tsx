import { later, type EpochS } from '@stokehold/domain/quantity';
import { LEAD_S } from '@stokehold/domain/shift';
import type { Setup } from '@stokehold/domain/contract';
import { commandKey } from '../../live/command-key.js';
import { Button } from '../../parts/button.js';
import { Field } from '../../parts/field.js';
import { NightTimeField } from '../../parts/wall-field.js';
import { chosen, momentOf, nightTimeOf } from '../../units/typed-wall-time.js';
import { useNightWords } from '../../words/night.js';
import { useSharedWords } from '../../words/shared.js';
import css from './night.module.css';
import type { DraftBreak, DraftPerson, ShiftDraft } from './shift-draft.js';
import { suggestBreaks } from './suggestions.js';

interface ShiftPeopleProps {
  readonly draft: ShiftDraft;
  readonly setup: Setup;
  readonly startsAt: EpochS | undefined;
  readonly faultText: (field: string) => string | undefined;
  readonly zone: string;
  readonly onChange: (people: readonly DraftPerson[]) => void;
}

/** The hours of a person as far as they can be read. */
function hoursOf(person: DraftPerson, shiftStartsAt: EpochS | undefined, zone: string) {
  const from = shiftStartsAt === undefined ? undefined : later(shiftStartsAt, -LEAD_S);
  const startsAt = from === undefined ? undefined : chosen(momentOf(person.from, from, zone), person.from.again);
  const endsAt = startsAt === undefined ? undefined : chosen(momentOf(person.to, later(startsAt, 60), zone), person.to.again);
  return { from, startsAt, endsAt };
}

function suggested(startsAt: EpochS, endsAt: EpochS, zone: string): readonly DraftBreak[] {
  return suggestBreaks(startsAt, endsAt).map((rest) => ({
    id: commandKey(), minutes: String(rest.lengthS / 60), earliest: nightTimeOf(rest.earliestAt, zone), latest: nightTimeOf(rest.latestAt, zone),
  }));
}

/** Who works, from when to when, with which breaks. */
export function ShiftPeople({ draft, setup, startsAt: shiftStartsAt, faultText, zone, onChange }: ShiftPeopleProps) {
  const say = useNightWords();
  const change = (personId: string, part: Partial<DraftPerson>) =>
    onChange(draft.people.map((person) => (person.personId === personId ? { ...person, ...part } : person)));
  const suggestAll = () => onChange(draft.people.map((person) => {
    const { startsAt, endsAt } = hoursOf(person, shiftStartsAt, zone);
    return person.works && startsAt !== undefined && endsAt !== undefined ? { ...person, breaks: suggested(startsAt, endsAt, zone) } : person;
  }));
  return (
    <section className={css['roster']}>
      <div className={css['line']}>
        <h3>{say('people.title')}</h3>
        <Button onClick={suggestAll}>{say('people.suggest')}</Button>
      </div>
      <p className={css['quiet']}>{say('people.rules')}</p>
      <div className={css['panels']}>
        {draft.people.map((person) => (
          <Person
            key={person.personId} {...{ person, shiftStartsAt, faultText, zone }}
            name={setup.crew.find(({ id }) => id === person.personId)?.name ?? ''} onChange={(part) => change(person.personId, part)}
          />
        ))}
      </div>
    </section>
  );
}

interface PersonProps {
  readonly person: DraftPerson;
  readonly name: string;
  readonly shiftStartsAt: EpochS | undefined;
  readonly faultText: (field: string) => string | undefined;
  readonly zone: string;
  readonly onChange: (part: Partial<DraftPerson>) => void;
}

function Person({ person, name, shiftStartsAt, faultText, zone, onChange }: PersonProps) {
  const say = useNightWords();
  const shared = useSharedWords();
  const field = `people.${person.personId}`;
  const { from, startsAt, endsAt } = hoursOf(person, shiftStartsAt, zone);
  const changeBreak = (id: string, part: Partial<DraftBreak>) => onChange({ breaks: person.breaks.map((rest) => (rest.id === id ? { ...rest, ...part } : rest)) });
  const add = () => {
    if (startsAt === undefined || endsAt === undefined) return;
    const middle = later(startsAt, (endsAt - startsAt) / 2);
    onChange({ breaks: [...person.breaks, { id: commandKey(), minutes: '10', earliest: nightTimeOf(later(middle, -1800), zone), latest: nightTimeOf(middle, zone) }] });
  };
  return (
    <div className={css['entry']} data-off={!person.works} role="group" aria-label={name}>
      <label className={css['tick']}>
        <input type="checkbox" checked={person.works} onChange={(event) => onChange({ works: event.target.checked })} />
        {name}
        {!person.works && <span className={css['quiet']}>{say('people.off')}</span>}
      </label>
      {person.works && (
        <>
          <div className={css['threes']}>
            <NightTimeField label={say('people.from')} zone={zone} from={from} value={person.from} wrong={faultText(`${field}.from`)} onChange={(time) => onChange({ from: time })} />
            <NightTimeField label={say('people.to')} zone={zone} from={startsAt} value={person.to} wrong={faultText(`${field}.to`)} onChange={(to) => onChange({ to })} />
          </div>
          {person.breaks.map((rest) => {
            const at = `${field}.breaks.${rest.id}`;
            return (
              <div key={rest.id} className={css['rest']} role="group" aria-label={say('rest.label', { name })}>
                <Field label={say('rest.minutes')} unit="min" inputMode="numeric" value={rest.minutes} wrong={faultText(`${at}.minutes`)} onChange={(event) => changeBreak(rest.id, { minutes: event.target.value })} />
                <NightTimeField label={say('rest.earliest')} zone={zone} from={startsAt} value={rest.earliest} wrong={faultText(`${at}.earliest`)} onChange={(earliest) => changeBreak(rest.id, { earliest })} />
                <NightTimeField label={say('rest.latest')} zone={zone} from={startsAt} value={rest.latest} wrong={faultText(`${at}.latest`)} onChange={(latest) => changeBreak(rest.id, { latest })} />
                <button type="button" className={css['away']} aria-label={`${shared('do.remove')}: ${say('rest.label', { name })}`} onClick={() => onChange({ breaks: person.breaks.filter(({ id }) => id !== rest.id) })}>✕</button>
              </div>
            );
          })}
          <div className={css['line']}>
            <Button onClick={add}>{say('rest.add')}</Button>
          </div>
        </>
      )}
    </div>
  );
}
