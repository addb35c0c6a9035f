import type { AdviceView, AirSetView } from '@stokehold/domain/contract';
import { airSaid } from '../../parts/air-said.js';
import { Choice } from '../../parts/choice.js';
import { useFireWords } from '../../words/fire.js';
import { useRoundWords } from '../../words/round.js';
import { airChosen, changedSaid } from './air-chosen.js';
import css from './round.module.css';

const DOORS: readonly AirSetView['door'][] = ['shut', 'one-finger', 'usual', 'two-fingers', 'hand-wide'];
const DAMPERS: readonly AirSetView['damper'][] = ['half', 'three-quarters', 'open'];
const SCREENS = ['no', 'yes'] as const;

interface AirProps {
  readonly before: AirSetView;
  readonly chosen: AirSetView | undefined;
  readonly onAir: (air: AirSetView) => void;
}

/** Where the advice is about the air: left as it was, or as advised, in one touch. As it was stands chosen: nothing is sent that nobody did. */
export function AirAsAdvised({ before, chosen, advice, onAir }: AirProps & { readonly advice: NonNullable<AdviceView['air']> }) {
  const say = useRoundWords();
  const fire = useFireWords();
  return (
    <Choice
      className={`${css['choice']} ${css['airAdvised']}`} optionClassName={css['middling']} label={say('askAir')} value={airChosen(chosen, before, advice.set)}
      onChoose={(which) => onAir(which === 'advised' ? advice.set : before)}
      options={[
        { value: 'before', label: say('air.before', { air: changedSaid(before, advice.changes, fire) }) },
        { value: 'advised', label: say('air.advised', { air: changedSaid(advice.set, advice.changes, fire) }) },
      ]}
    />
  );
}

/** How door, damper and screen were left; what was found before stands there until somebody says otherwise. */
export function AirLeft({ before, chosen, onAir }: AirProps) {
  const say = useRoundWords();
  const fire = useFireWords();
  const air = chosen ?? before;
  const row = { className: css['choice'], optionClassName: css['middling'] };
  return (
    <section className={css['gauges']}>
      <h2>{say('askAir')}</h2>
      <p>{airSaid(air, fire)}</p>
      <Choice {...row} columns={3} label={say('askDoor')} value={air.door} onChoose={(door) => onAir({ ...air, door })} options={DOORS.map((door) => ({ value: door, label: fire(`door.${door}`) }))} />
      <Choice {...row} label={say('askDamper')} value={air.damper} onChoose={(damper) => onAir({ ...air, damper })} options={DAMPERS.map((damper) => ({ value: damper, label: fire(`damper.${damper}`) }))} />
      <Choice {...row} label={say('askScreen')} value={air.screen ? 'yes' : 'no'} onChoose={(screen) => onAir({ ...air, screen: screen === 'yes' })} options={SCREENS.map((screen) => ({ value: screen, label: fire(`screen.${screen}`) }))} />
    </section>
  );
}
