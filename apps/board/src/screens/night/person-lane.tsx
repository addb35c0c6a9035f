import { Link } from 'wouter';
import { useNightWords, type SayNightWords } from '../../words/night.js';
import { useSharedWords } from '../../words/shared.js';
import { sameWork, useAsking } from './asked-work.js';
import type { BreakSpan, Mark, PersonLane } from './lanes.js';
import { LATE_FROM_S, MarkShape } from './mark.js';
import type { Drawing } from './night-picture.js';
import css from './night-picture.module.css';
import { useDrag } from './use-drag.js';

const HIGH_PX = 46;
const LINE_PX = 37;
/** Wide enough for a gloved finger where marks stand apart. */
const GRIP_PX = 22;

interface PersonLaneRowProps {
  readonly lane: PersonLane;
  readonly drawing: Drawing;
  readonly nameOfPit: (id: string | null) => string | undefined;
}

export function PersonLaneRow({ lane, drawing, nameOfPit }: PersonLaneRowProps) {
  const say = useNightWords();
  const shared = useSharedWords();
  const { scale, figures, lines } = drawing;
  const { xOf } = scale;
  const time = (at: number) => figures.time(at * 1000);
  const { work: asked } = useAsking();
  const drag = useDrag(lane, scale);
  const missing = lane.missing;
  const apart = lane.presence === 'late' || lane.presence === 'away';
  return (
    <>
      <Link href="/night?show=crew" className={css['name']}>
        {lane.name}
        {apart && <span className={css['alert']}>{shared(`presence.${lane.presence}`)}</span>}
      </Link>
      <svg width={scale.widthPx} height={HIGH_PX} data-person={lane.personId} role="img" aria-label={spoken(lane, say, time)}>
        {lines(HIGH_PX)}
        <rect className={css['shift']} x={xOf(lane.shift.from)} y={8} width={xOf(lane.shift.until) - xOf(lane.shift.from)} height={HIGH_PX - 14} rx={7} />
        {lane.breaks.map((rest) => (
          <Rest key={rest.id} {...{ rest, xOf }} handles={rest.state === 'planned' ? drag.ofBreak(rest.id) : undefined} title={say(`rest.${rest.state}`, { from: time(rest.from), until: time(rest.until) })} />
        ))}
        {missing && (
          <g>
            <rect className={css['missing']} x={xOf(missing.from)} y={8} width={Math.max(0, xOf(missing.until) - xOf(missing.from))} height={HIGH_PX - 14} rx={7} />
            <text className={css['missingWord']} x={xOf(missing.from) + 6} y={24}>
              {say('picture.until', { time: time(missing.until) })}
            </text>
          </g>
        )}
        {lane.marks.map((mark, index) => {
          const x = xOf(mark.at);
          const dueX = xOf((mark.at - mark.lateS) as typeof mark.at);
          const shape = <MarkShape {...{ mark, x, dueX }} y={LINE_PX} chosen={mark.work !== null && sameWork(asked, mark.work)} title={markTitle(mark, say, time, nameOfPit)} />;
          if (mark.work === null) return <g key={index}>{shape}</g>;
          return (
            <g key={index} className={css['grip']} {...drag.ofMark(mark)}>
              <rect x={x - GRIP_PX / 2} y={4} width={GRIP_PX} height={HIGH_PX - 4} fill="transparent" />
              {shape}
            </g>
          );
        })}
        {lines(0)}
      </svg>
    </>
  );
}

interface RestProps {
  readonly rest: BreakSpan;
  readonly xOf: Drawing['scale']['xOf'];
  readonly title: string;
  readonly handles: ReturnType<ReturnType<typeof useDrag>['ofBreak']> | undefined;
}

function Rest({ rest, xOf, title, handles }: RestProps) {
  const x = xOf(rest.from);
  const width = Math.max(4, xOf(rest.until) - x);
  return (
    <rect {...handles} className={`${css['rest']} ${css[rest.state] ?? ''} ${handles ? css['grip'] : ''}`} x={x} y={rest.state === 'window' ? 12 : 8} width={width} height={rest.state === 'window' ? 9 : HIGH_PX - 14} rx={4}>
      <title>{title}</title>
    </rect>
  );
}

function markTitle(mark: Mark, say: SayNightWords, time: (at: number) => string, nameOfPit: (id: string | null) => string | undefined): string {
  const what = say(mark.kind === 'check' ? 'mark.check' : 'mark.task', { pit: nameOfPit(mark.pitId) ?? '' }).trim();
  const when = say(mark.past ? 'mark.done' : 'mark.planned', { time: time(mark.at) });
  const late = mark.lateS >= LATE_FROM_S ? `, ${say('mark.late', { count: Math.round(mark.lateS / 60) })}` : '';
  return `${what}, ${when}${late}`;
}

/** The lane in words, for those who do not see it. */
function spoken(lane: PersonLane, say: SayNightWords, time: (at: number) => string): string {
  const planned = lane.marks.filter(({ past }) => !past);
  const hours = say('spoken.person', { name: lane.name, from: time(lane.shift.from), until: time(lane.shift.until) });
  const work = say('spoken.work', { count: planned.length, late: planned.filter(({ lateS }) => lateS >= LATE_FROM_S).length });
  return [hours, ...lane.breaks.map((rest) => say(`rest.${rest.state}`, { from: time(rest.from), until: time(rest.until) })), work].join('. ');
}
