import type { PitSettings, Setup, YardSettings } from '@stokehold/domain/contract';
import { useRef, useState, type KeyboardEvent, type PointerEvent, type ReactNode } from 'react';
import { useCommand } from '../../live/use-command.js';
import { useSetupChanged } from '../../live/use-setup.js';
import { Button } from '../../parts/button.js';
import { Failure } from '../../parts/failure.js';
import { Panel } from '../../parts/panel.js';
import { useWidth } from '../../parts/use-width.js';
import { useFigures } from '../../units/use-figures.js';
import { useSetupWords } from '../../words/setup.js';
import { useSharedWords } from '../../words/shared.js';
import { footprint, nameM, onPlan, reachBelow, stepped, turnOf, type Place } from './plan-geometry.js';
import css from './setup.module.css';

const WOOD = 'wood';
const RAD_PER_DEG = Math.PI / 180;

/** What was moved on the plan and is not saved yet, and saving it: pit by pit, so that what was saved stays saved when one fails. */
function useMoves(setup: Setup) {
  const [moved, setMoved] = useState<Readonly<Record<string, Place>>>({});
  const [done, setDone] = useState(false);
  const savePit = useCommand('savePit');
  const saveYard = useCommand('saveYard');
  const changed = useSetupChanged();
  const move = (id: string, place: Place) => {
    setMoved({ ...moved, [id]: place });
    setDone(false);
  };
  const save = async () => {
    const left = { ...moved };
    for (const pit of setup.pits) {
      const place = left[pit.id];
      if (!place) continue;
      if (!(await savePit.send({ pit: { ...pit, ...place } }))) break;
      delete left[pit.id];
    }
    const wood = left[WOOD];
    if (wood && (await saveYard.send({ yard: { ...settingsOf(setup.yard), woodPlace: wood } }))) delete left[WOOD];
    await changed();
    setMoved(left);
    setDone(Object.keys(left).length === 0);
  };
  return { moved, move, done, save: () => void save(), undo: () => setMoved({}), sending: savePit.sending || saveYard.sending, failed: savePit.failed ?? saveYard.failed };
}

/** The yard from above. Pits and the wood are moved by dragging, or with the arrow keys once chosen. */
export function YardPlan({ setup, mayMove }: { readonly setup: Setup; readonly mayMove: boolean }) {
  const say = useSetupWords();
  const shared = useSharedWords();
  const { moved, move, done, save, undo, sending, failed } = useMoves(setup);
  const { yard } = setup;
  const isMoved = Object.keys(moved).length > 0;
  return (
    <Panel title={say('plan.title', { yard: yard.name })}>
      <Ground yard={yard}>
        {(metresAt, fontM) => (
          <>
            <Movable id={WOOD} name={say('plan.wood')} place={moved[WOOD] ?? yard.woodPlace} {...{ yard, mayMove, metresAt, fontM }} reachM={0.75} onMove={move}>
              <Wood />
            </Movable>
            {setup.pits.filter(({ retired }) => !retired).map((pit) => (
              <Movable key={pit.id} id={pit.id} name={pit.name} place={moved[pit.id] ?? pit} {...{ yard, mayMove, metresAt, fontM }} reachM={reachBelow(pit, turnOf(pit, yard))} onMove={move}>
                <PitFromAbove pit={pit} turn={turnOf(pit, yard)} />
              </Movable>
            ))}
          </>
        )}
      </Ground>
      {mayMove && <p className={css['quiet']}>{say('plan.how')}</p>}
      <Failure of={failed} />
      {mayMove && (
        <div className={css['line']}>
          <Button look="main" disabled={sending || !isMoved} onClick={save}>
            {sending ? shared('saving') : say('plan.save')}
          </Button>
          {isMoved && <Button onClick={undo}>{shared('do.undo')}</Button>}
          {done && <span role="status">{shared('saved')}</span>}
        </div>
      )}
    </Panel>
  );
}

/** The settings alone, as they are sent: without what the server adds. */
export function settingsOf(yard: Setup['yard']): YardSettings {
  const { id: _id, practice: _practice, ...settings } = yard;
  return settings;
}

type MetresAt = (event: PointerEvent) => Place | undefined;

function Ground({ yard, children }: { readonly yard: YardSettings; readonly children: (metresAt: MetresAt, fontM: number) => ReactNode }) {
  const say = useSetupWords();
  const figures = useFigures();
  const svg = useRef<SVGSVGElement>(null);
  const { ref, width: shownPx } = useWidth<HTMLDivElement>(900);
  const { planWidthM: width, planHeightM: height, planTopDeg } = yard;
  const metresAt: MetresAt = ({ clientX, clientY }) => {
    const toScreen = svg.current?.getScreenCTM();
    if (!toScreen) return undefined;
    const { x, y } = new DOMPoint(clientX, clientY).matrixTransform(toScreen.inverse());
    return { xM: x, yM: y };
  };
  const mesh = Array.from({ length: Math.floor(width / 5) }, (_, n) => `M${(n + 1) * 5} 0V${height}`).concat(
    Array.from({ length: Math.floor(height / 5) }, (_, n) => `M0 ${(n + 1) * 5}H${width}`),
  );
  return (
    <div ref={ref}>
      <svg ref={svg} className={css['plan']} viewBox={`-0.6 -0.6 ${width + 1.2} ${height + 1.2}`} role="group" aria-label={say('plan.spoken', { width: figures.of('ground', width), height: figures.of('ground', height) })}>
        <rect x="0" y="0" width={width} height={height} rx="0.5" className={css['ground']} />
        <path d={mesh.join('')} className={css['mesh']} />
        <g transform={`translate(${width - 1.9} 2.4)`} className={css['north']}>
          <path d="M0 -1.1 0.55 0.9 0 0.5 -0.55 0.9Z" transform={`rotate(${-planTopDeg})`} />
          <text x={-1.6 * Math.sin(planTopDeg * RAD_PER_DEG)} y={-1.6 * Math.cos(planTopDeg * RAD_PER_DEG) + 0.28} textAnchor="middle" fontSize="0.8">{say('plan.north')}</text>
        </g>
        {children(metresAt, nameM(width, shownPx))}
      </svg>
    </div>
  );
}

interface MovableProps {
  readonly id: string;
  readonly name: string;
  readonly place: Place;
  readonly yard: YardSettings;
  readonly mayMove: boolean;
  readonly metresAt: MetresAt;
  readonly onMove: (id: string, place: Place) => void;
  /** How far it reaches below its middle, and how large its name is, metres. */
  readonly reachM: number;
  readonly fontM: number;
  readonly children: ReactNode;
}

function Movable({ id, name, place, yard, mayMove, metresAt, onMove, reachM, fontM, children }: MovableProps) {
  const say = useSetupWords();
  const figures = useFigures();
  const grip = useRef<Place>(undefined);
  const take = (event: PointerEvent<SVGGElement>) => {
    const at = metresAt(event);
    if (!at || !mayMove) return;
    grip.current = { xM: at.xM - place.xM, yM: at.yM - place.yM };
    event.currentTarget.setPointerCapture(event.pointerId);
  };
  const drag = (event: PointerEvent) => {
    const at = grip.current && metresAt(event);
    if (at && grip.current) onMove(id, onPlan({ xM: at.xM - grip.current.xM, yM: at.yM - grip.current.yM }, yard));
  };
  const key = (event: KeyboardEvent) => {
    const next = mayMove ? stepped(place, event.key, event.shiftKey, yard) : undefined;
    if (!next) return;
    event.preventDefault();
    onMove(id, next);
  };
  const spoken = say('plan.place', { name, x: figures.of('ground', place.xM), y: figures.of('ground', place.yM) });
  return (
    <g
      className={css['movable']} transform={`translate(${place.xM} ${place.yM})`} tabIndex={0} role={mayMove ? 'button' : 'img'} aria-label={spoken}
      aria-roledescription={mayMove ? say('plan.movable') : undefined}
      onPointerDown={take} onPointerMove={drag} onPointerUp={() => (grip.current = undefined)} onPointerCancel={() => (grip.current = undefined)} onKeyDown={key}
    >
      {children}
      <text className={css['pitName']} y={reachM + 0.1 + fontM} textAnchor="middle" fontSize={fontM}>{name}</text>
    </g>
  );
}

function PitFromAbove({ pit, turn }: { readonly pit: PitSettings; readonly turn: number }) {
  const { firebox, chamber, stack } = footprint(pit);
  return (
    <g transform={`rotate(${turn})`}>
      <rect x={chamber.x - 0.6} y={firebox.y - 0.6} width={chamber.width + 1.2} height={firebox.height + chamber.height + 1.2} className={css['grip']} rx="0.5" />
      <rect {...firebox} rx="0.08" className={css['firebox']} />
      <rect {...chamber} rx={chamber.width * 0.3} className={css['chamber']} />
      <circle cx={stack.x} cy={stack.y} r={stack.r} className={css['stackEnd']} />
    </g>
  );
}

function Wood() {
  return (
    <g className={css['woodPile']}>
      <rect x="-1.7" y="-1.1" width="3.4" height="2" className={css['grip']} rx="0.4" />
      {[-1.1, -0.55, 0, 0.55, 1.1].map((x) => <circle key={x} cx={x} cy={0.3} r="0.25" />)}
      {[-0.83, -0.28, 0.28, 0.83].map((x) => <circle key={x} cx={x} cy={-0.17} r="0.25" />)}
      {[-0.55, 0, 0.55].map((x) => <circle key={x} cx={x} cy={-0.64} r="0.25" />)}
    </g>
  );
}
