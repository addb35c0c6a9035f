import type { CookView, PitView, YardState } from '@stokehold/domain/contract';
import { useState } from 'react';
import { useCommand } from '../../live/use-command.js';
import { Caution } from '../../parts/caution.js';
import { Field } from '../../parts/field.js';
import { Form, Panel } from '../../parts/panel.js';
import { PitDrawing } from '../../parts/pit-drawing.js';
import { useDeskWords } from '../../words/desk.js';
import { useNightWords } from '../../words/night.js';
import css from './night.module.css';
import { liesWhilePlacing, placed, placingOf, spot, type Placing } from './placing.js';

interface PlaceFormProps {
  readonly state: YardState;
  readonly cook: CookView;
  readonly onDone: () => void;
}

/** Pieces into zones by hand, on a drawing of each pit as it stands in the yard. */
export function PlaceForm({ state, cook, onDone }: PlaceFormProps) {
  const say = useNightWords();
  const command = useCommand('placeCook');
  const [placing, setPlacing] = useState<Placing>(() => placingOf(cook));
  const [tried, setTried] = useState(false);
  const result = placed(placing, cook.pieces);
  const burning = state.pits.filter(({ pit, tonight }) => !pit.retired && (tonight !== null || cook.lies.some(({ pitId }) => pitId === pit.id)));
  const offered = burning.length > 0 ? burning : state.pits.filter(({ pit }) => !pit.retired);

  const send = async () => {
    setTried(true);
    if (result.kind !== 'lies') return;
    if (await command.send({ cookId: cook.id, lies: [...result.lies] })) onDone();
  };
  const lying = result.kind === 'unreadable' ? undefined : result.pieces;
  return (
    <Panel title={say('place.title', { cut: cook.cut })}>
      <Form onSend={() => void send()} sending={command.sending} failed={command.failed} does={say('place.save')} onCancel={onDone}>
        <p role="status" className={result.kind === 'too-many' ? css['warn'] : undefined}>
          {lying !== undefined && say(result.kind === 'too-many' ? 'place.tooMany' : 'place.count', { lying, count: cook.pieces })}
        </p>
        {offered.map((view) => (
          <PitZones
            key={view.pit.id} {...{ view, placing }} lies={liesWhilePlacing(state, cook, placing, view.pit.id)}
            unreadable={tried && result.kind === 'unreadable' ? result.spots : []} onChange={setPlacing}
          />
        ))}
        <Caution about="lift" />
      </Form>
    </Panel>
  );
}

interface PitZonesProps {
  readonly view: PitView;
  readonly placing: Placing;
  readonly lies: ReturnType<typeof liesWhilePlacing>;
  readonly unreadable: readonly string[];
  readonly onChange: (placing: Placing) => void;
}

function PitZones({ view, placing, lies, unreadable, onChange }: PitZonesProps) {
  const say = useNightWords();
  const desk = useDeskWords();
  const { pit, fire } = view;
  const zones = pit.zones.map((_, zone) => zone);
  const last = zones.length - 1;
  const name = (zone: number) => (zone === 0 ? say('place.fireEnd') : zone === last ? say('place.stackEnd') : say('place.zone', { zone: zone + 1 }));
  // The boxes stand under their zones: where the fire end is on the right, zone 1 is the rightmost.
  const inOrder = pit.fireEnd === 'left' ? zones : [...zones].reverse();
  return (
    <div className={css['entry']} role="group" aria-label={pit.name}>
      <strong className={css['big']}>{pit.name}</strong>
      <div className={css['pitWithZones']}>
        <div className={css['drawing']}>
          <PitDrawing pit={pit} lies={lies} bedFrac={fire ? fire.bedKg / fire.fullBedKg : null} lit={fire !== null && fire.mode !== 'out'} />
        </div>
        <div className={pit.fireEnd === 'left' ? css['zonesLeft'] : css['zonesRight']}>
          {inOrder.map((zone) => (
            <Field
              key={zone} label={name(zone)} inputMode="numeric" value={placing[spot(pit.id, zone)] ?? ''}
              aria-label={say('place.zoneOf', { zone: zone + 1, pit: pit.name, count: zones.length })}
              wrong={unreadable.includes(spot(pit.id, zone)) ? desk('wholeNumber') : undefined}
              onChange={(event) => onChange({ ...placing, [spot(pit.id, zone)]: event.target.value })}
            />
          ))}
        </div>
      </div>
    </div>
  );
}
