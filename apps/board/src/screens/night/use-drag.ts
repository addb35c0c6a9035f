import { epochS } from '@stokehold/domain/quantity';
import { useRef, type PointerEvent } from 'react';
import { useYard } from '../../live/use-yard.js';
import { useAsking } from './asked-work.js';
import type { Mark, PersonLane } from './lanes.js';
import { supposedByDrop } from './supposition.js';
import type { TimeScale } from './time-scale.js';

/** A finger that moves by less has touched, not dragged. */
const TOUCH_PX = 8;

interface Held {
  readonly x: number;
  readonly y: number;
  readonly mark: Mark | undefined;
  readonly breakId: string | undefined;
}

/** Marks and breaks of a person's lane: touched, they are asked about; dragged, it is asked what would happen. */
export function useDrag(lane: PersonLane, scale: TimeScale) {
  const state = useYard();
  const { askWork, suppose } = useAsking();
  const held = useRef<Held>(undefined);
  const hold = (what: Partial<Held>) => (event: PointerEvent<SVGElement>) => {
    held.current = { x: event.clientX, y: event.clientY, mark: undefined, breakId: undefined, ...what };
    event.currentTarget.setPointerCapture(event.pointerId);
  };
  const drop = (event: PointerEvent<SVGElement>) => {
    const from = held.current;
    held.current = undefined;
    if (!from || !state) return;
    if (Math.hypot(event.clientX - from.x, event.clientY - from.y) < TOUCH_PX) {
      askWork(from.mark?.work ?? (from.breakId === undefined ? undefined : { kind: 'break', breakId: from.breakId }));
      return;
    }
    const under = document.elementsFromPoint(event.clientX, event.clientY).map((element) => element.closest<SVGElement>('[data-person]')).find(Boolean);
    const toPerson = under?.dataset['person'];
    if (!toPerson) return;
    const { left, width } = under.getBoundingClientRect();
    const at = epochS(Math.round(scale.span.from + ((event.clientX - left) / width) * (scale.span.until - scale.span.from)));
    const what = supposedByDrop({ mark: from.mark, breakId: from.breakId, fromPerson: lane.personId, toPerson, at }, state);
    if (what) suppose(what);
  };
  const handles = (what: Partial<Held>) => ({ onPointerDown: hold(what), onPointerUp: drop, onPointerCancel: () => (held.current = undefined) });
  return { ofMark: (mark: Mark) => handles({ mark }), ofBreak: (breakId: string) => handles({ breakId }) };
}
