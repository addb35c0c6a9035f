import { Link } from 'wouter';
import { useNightWords, type SayNightWords } from '../../words/night.js';
import { bandKeptFrac, bandStretches, type CookSpan, type PitLane } from './lanes.js';
import { LATE_FROM_S, MarkShape } from './mark.js';
import type { Drawing } from './night-picture.js';
import css from './night-picture.module.css';
import { BED_FIT_S } from './suggestions.js';

const RIBBON_PX = 40;
const COOK_PX = 24;
const MARKS_PX = 24;
const TOP_PX = 8;

export function PitLaneRow({ lane, drawing }: { readonly lane: PitLane; readonly drawing: Drawing }) {
  const say = useNightWords();
  const { scale, figures, lines } = drawing;
  const { xOf } = scale;
  const time = (at: number) => figures.time(at * 1000);
  const marksY = TOP_PX + RIBBON_PX + MARKS_PX - 2;
  const cooksY = TOP_PX + RIBBON_PX + MARKS_PX + 4;
  const highPx = cooksY + lane.cookRows * (COOK_PX + 3) + 4;
  const kept = bandKeptFrac(lane);
  return (
    <>
      <div className={css['name']}>
        <Link href={`/pit/${lane.pitId}`}>{lane.name}</Link>
        <span className={css['under']}>
          {figures.bare('temp', lane.band.lowC)}–{figures.of('temp', lane.band.highC)}
        </span>
        {kept !== undefined && <span className={css['under']}>{say('bandKept', { percent: figures.percent(kept) })}</span>}
        <Link href={`/night?show=cooks&pit=${lane.pitId}`} className={css['under']}>
          {say('show.cooks')}
        </Link>
      </div>
      <svg width={scale.widthPx} height={highPx} role="img" aria-label={spoken(lane, say, time)}>
        {lines(highPx)}
        <Fire {...{ lane, drawing }} />
        {lane.window && (
          <path
            className={css['window']}
            d={`M${xOf(lane.window.from)} ${marksY - 5}V${marksY + 2}H${xOf(lane.window.until)}V${marksY - 5}M${xOf(lane.window.dueAt)} ${marksY - 3}V${marksY + 2}`}
          >
            <title>{say('mark.window', { from: time(lane.window.from), due: time(lane.window.dueAt), until: time(lane.window.until) })}</title>
          </path>
        )}
        {lane.marks.map((mark, index) => (
          <MarkShape
            key={index} mark={mark} x={xOf(mark.at)} dueX={xOf((mark.at - mark.lateS) as typeof mark.at)} y={marksY - 1}
            title={[
              say(mark.past ? 'mark.done' : 'mark.planned', { time: time(mark.at) }),
              mark.lateS >= LATE_FROM_S ? say('mark.late', { count: Math.round(mark.lateS / 60) }) : '',
            ].filter(Boolean).join(', ')}
          />
        ))}
        {lane.cooks.map((cook) => (
          <CookBar key={cook.cook.id} {...{ cook, drawing }} y={cooksY + cook.row * (COOK_PX + 3)} />
        ))}
      </svg>
    </>
  );
}

/** The fire over time: lit, start-up until the bed is fit, then its band; the measured line and where it left the band. */
function Fire({ lane, drawing }: { readonly lane: PitLane; readonly drawing: Drawing }) {
  const { xOf } = drawing.scale;
  const { burns, band, temps } = lane;
  const fit = Math.min(burns.from + BED_FIT_S, burns.until) as typeof burns.from;
  const spreadK = Math.max(14, (band.highC - band.lowC) * 2.4);
  const middleC = (band.lowC + band.highC) / 2;
  const yOf = (tempC: number) => {
    const y = TOP_PX + RIBBON_PX / 2 - ((tempC - middleC) / spreadK) * RIBBON_PX;
    return Math.min(TOP_PX + RIBBON_PX, Math.max(TOP_PX, y));
  };
  const line = temps.map(({ at, tempC }) => `${xOf(at).toFixed(1)} ${yOf(tempC).toFixed(1)}`).join('L');
  const highY = yOf(band.highC);
  return (
    <g>
      <path className={css['startUp']} d={`M${xOf(burns.from)} ${yOf(band.lowC)}L${xOf(fit)} ${highY}V${yOf(band.lowC)}Z`} />
      <rect className={css['band']} x={xOf(fit)} y={highY} width={Math.max(0, xOf(burns.until) - xOf(fit))} height={yOf(band.lowC) - highY} />
      {bandStretches(lane).map(({ from, until, side }) =>
        side === 'in' ? null : (
          <rect key={from} className={css['outside']} x={xOf(from)} y={side === 'below' ? yOf(band.lowC) : TOP_PX} width={xOf(until) - xOf(from)} height={side === 'below' ? TOP_PX + RIBBON_PX - yOf(band.lowC) : highY - TOP_PX} />
        ),
      )}
      <path className={css['lit']} d={`M${xOf(burns.from)} ${TOP_PX + RIBBON_PX}v-12q5 -14 0 -20q10 8 10 20q0 6 -3 12z`} />
      {temps.length > 1 && <path className={css['line']} d={`M${line}`} />}
    </g>
  );
}

/** From here on the name of a bar that began long ago is out of sight. */
const OUT_OF_SIGHT_PX = 110;

function CookBar({ cook: span, drawing, y }: { readonly cook: CookSpan; readonly drawing: Drawing; readonly y: number }) {
  const say = useNightWords();
  const { scale: { xOf }, figures, now, scrolls } = drawing;
  const { cook, from, until, open, pieces } = span;
  const x = Math.max(0, xOf(from));
  const width = Math.max(6, xOf(until) - x);
  const end = cook.offAt ? say('cook.wasOff', { time: figures.time(cook.offAt) }) : open ? '' : say('cook.off', { time: figures.time(until * 1000) });
  const room = width > 250;
  return (
    <svg x={x} y={y} width={width} height={COOK_PX}>
      <title>{[say('cook.named', { cut: cook.cut, count: pieces }), end].filter(Boolean).join(', ')}</title>
      <rect className={cook.offAt ? css['cookOff'] : css['cook']} x={1} y={1} width={open ? width + 12 : width - 2} height={COOK_PX - 2} rx={6} />
      <text className={css['cookName']} x={9} y={17}>
        {say('cook.named', { cut: cook.cut, count: pieces })}
      </text>
      {scrolls && now < until && xOf(now) - x > OUT_OF_SIGHT_PX && (
        <text className={css['cookName']} x={xOf(now) - x + 9} y={17} aria-hidden="true">
          {say('cook.named', { cut: cook.cut, count: pieces })}
        </text>
      )}
      {room && end && (
        <text className={css['cookEnd']} x={width - 9} y={17} textAnchor="end">
          {end}
        </text>
      )}
    </svg>
  );
}

function spoken(lane: PitLane, say: SayNightWords, time: (at: number) => string): string {
  const parts = [
    say('spoken.pit', { name: lane.name, lit: time(lane.burns.from), until: time(lane.burns.until) }),
    lane.window && say('mark.window', { from: time(lane.window.from), due: time(lane.window.dueAt), until: time(lane.window.until) }),
    ...lane.cooks.map(({ cook, pieces, open, until }) => [say('cook.named', { cut: cook.cut, count: pieces }), open ? '' : say('cook.off', { time: time(until) })].filter(Boolean).join(', ')),
  ];
  return parts.filter(Boolean).join('. ');
}
