import type { CookPlanView } from '@stokehold/domain/contract';
import { useRef, useState, type KeyboardEvent, type PointerEvent } from 'react';
import { useWidth } from '../../../parts/use-width.js';
import css from './cook-plan.module.css';
import { droppedAt, type CookBar, type PlanShape, shapeOf } from './plan-shape.js';
import { cutOf, pitOf, serviceOf, type Telling } from './telling.js';

const ROW = 34;
const HEAD = 30;
const QUARTER_MS = 900_000;
const ARROWS: Readonly<Record<string, number>> = { ArrowLeft: -QUARTER_MS, ArrowRight: QUARTER_MS };
/** Room that the name of an hour takes. */
const MARK_PX = 72;
/** A bar this narrow has no room for its name. */
const NAMED_PX = 64;

interface PictureProps {
  readonly plan: CookPlanView;
  readonly telling: Telling;
  /** Another time for a cook is asked about. */
  readonly onSuppose: (cookId: string, onAtMs: number) => void;
  readonly supposed: { readonly cookId: string; readonly onAtMs: number } | undefined;
}

/** The fires with their cooks on one line of time; a bar can be dragged or moved with the arrow keys. */
export function PlanPicture({ plan, telling, onSuppose, supposed }: PictureProps) {
  const { ref, width } = useWidth<HTMLDivElement>(900);
  const shape = shapeOf(plan, Math.max(2, Math.floor(width / MARK_PX)));
  let y = HEAD;
  const lanes = shape.pits.map((pit) => {
    const top = y;
    y += 26 + pit.rows * ROW;
    return { pit, top };
  });
  return (
    <div ref={ref} className={css['picture']}>
      <svg width={width} height={y + 6} role="group" aria-label={telling.say('title')}>
        {shape.hours.map(({ at, ms }) => (
          <g key={ms}>
            <path d={`M${at * width} ${HEAD - 8}V${y}`} className={css['hour']} />
            {at < 0.97 && <text x={at * width + 3} y={HEAD - 12} className={css['hourName']}>{telling.figures.time(ms)}</text>}
          </g>
        ))}
        {lanes.map(({ pit, top }) => (
          <g key={pit.pitId} transform={`translate(0 ${top})`}>
            <text x="2" y="18" className={css['pitName']}>{pitOf(telling, pit.pitId)}</text>
            <rect x={pit.fire.from * width} y="24" width={pit.fire.width * width} height={pit.rows * ROW - 4} rx="6" className={css['fire']} />
            {pit.bars.map((bar) => (
              <Bar key={bar.cookId} {...{ bar, shape, width, plan, telling, onSuppose, supposed }} />
            ))}
          </g>
        ))}
        {shape.services.map(({ serviceId, at }) => (
          <g key={serviceId}>
            <path d={`M${at * width - 1} ${HEAD - 4}V${y}`} className={css['service']} />
            <title>{serviceOf(telling, serviceId)}</title>
          </g>
        ))}
      </svg>
    </div>
  );
}

function Bar({ bar, shape, width, plan, telling, onSuppose, supposed }: PictureProps & { readonly bar: CookBar; readonly shape: PlanShape; readonly width: number }) {
  const start = plan.starts.find(({ cookId }) => cookId === bar.cookId)!;
  const heldAt = useRef<number>(undefined);
  const [movedPx, setMoved] = useState(0);
  const own = supposed?.cookId === bar.cookId ? supposed : undefined;
  const shiftPx = movedPx || (own ? ((own.onAtMs - Date.parse(start.onAt)) / (shape.untilMs - shape.fromMs)) * width : 0);
  const hold = (event: PointerEvent<SVGGElement>) => {
    heldAt.current = event.clientX;
    event.currentTarget.setPointerCapture(event.pointerId);
  };
  const move = (event: PointerEvent) => heldAt.current !== undefined && setMoved(event.clientX - heldAt.current);
  const drop = () => {
    if (heldAt.current !== undefined && Math.abs(movedPx) > 4) onSuppose(bar.cookId, droppedAt(start.onAt, movedPx / width, shape));
    heldAt.current = undefined;
    setMoved(0);
  };
  const press = (event: KeyboardEvent) => {
    const by = ARROWS[event.key];
    if (!by) return;
    event.preventDefault();
    onSuppose(bar.cookId, (own?.onAtMs ?? Date.parse(start.onAt)) + by);
  };
  const [x, w] = [bar.from * width + shiftPx, Math.max(6, bar.width * width)];
  const cut = cutOf(telling, bar.cookId);
  return (
    <g
      className={css['bar']} tabIndex={0} role="button" aria-label={telling.say('bar', { cut, pit: pitOf(telling, start.pitId), time: telling.figures.dayTime(own?.onAtMs ?? start.onAt) })}
      transform={`translate(${x} ${26 + bar.row * ROW})`} onPointerDown={hold} onPointerMove={move} onPointerUp={drop} onPointerCancel={drop} onKeyDown={press}
    >
      <rect width={w} height={ROW - 8} rx="5" className={bar.atRisk ? css['risk'] : css['food']} />
      <rect x={Math.max(0, (bar.likely - bar.from) * width)} width={Math.max(0, w - (bar.likely - bar.from) * width)} height={ROW - 8} rx="5" className={css['late']} />
      {w > NAMED_PX && <text x="8" y="18" className={css['cookName']}>{bar.atRisk ? '▲ ' : ''}{cut.slice(0, Math.floor((w - 12) / 8))}</text>}
    </g>
  );
}
