import { type EpochS, later, MINUTE_S } from '../quantity/index.js';
import { advance } from './advance.js';
import { airOf, type AirSet } from './air-set.js';
import { type Advice, advise, type WoodAtHand } from './advise.js';
import { lookAhead } from './ahead.js';
import type { FireBelief } from './belief.js';
import { beliefFromBytes, beliefToBytes, UnreadableBeliefError } from './bytes.js';
import { seeCheck } from './check.js';
import { type Due, dueFrom, HORIZON_MIN, troubleBegins } from './due.js';
import { estimateOf, type FireEstimate } from './estimate.js';
import { fanOf, type FireForecast } from './forecast.js';
import { kindle } from './kindle.js';
import { type LearnedPoint, learnedOf } from './learned.js';
import type { Kindling } from './lit.js';
import type { Band, BedGrade, FirePosition, PitShape, SplitLeft, Surroundings, WoodOn } from './pit.js';
import { type ProbeEnd, seeReadings } from './see.js';
import type { FireTrouble } from './trouble.js';
import { troublesOf } from './troubled.js';

/** A look at a fire: what was seen there, and what was put on. */
export interface Look {
  readonly at: EpochS;
  readonly bed: BedGrade;
  readonly left: SplitLeft;
  readonly fireEndTempC?: number;
  readonly stackEndTempC?: number;
  readonly on: WoodOn;
  readonly position: FirePosition;
  /** How the air was left behind; remembered until the next look that says so. Without it the air stays as it was. */
  readonly air?: AirSet;
}

/** What the probes showed at the two ends in a stretch of time that ended so; an end that was not read is absent. */
export interface ReadingMean {
  readonly until: EpochS;
  readonly fireEndTempC?: number;
  readonly stackEndTempC?: number;
}

/** One fire with all that its next belief is made from; plain data, so that a worker thread can do it. */
export interface FireToCarry {
  readonly from: Kindling | { readonly belief: Uint8Array };
  readonly shape: PitShape;
  /** Draws the members of a fire that is kindled here. */
  readonly seed: number;
  readonly to: EpochS;
  readonly around: Surroundings;
  readonly band: Band;
  /** What the probes showed, by the end of each stretch; in order of time. */
  readonly readings: readonly ReadingMean[];
  readonly look?: Look;
  readonly lastLookAt: EpochS;
  readonly wantsOutlook: boolean;
  readonly advice?: { readonly wood: WoodAtHand; readonly seed: number };
}
/** The fire at its time: what is believed of it, and what was asked for. */
export interface CarriedFire {
  readonly belief: Uint8Array;
  /** As believed right after the look, or after the fire was kindled. */
  readonly looked?: Uint8Array;
  readonly estimate: FireEstimate;
  readonly outlook?: { readonly forecast: FireForecast; readonly due: Due };
  readonly advice?: Advice;
  /** What is wrong at this fire, most urgent first; grease is looked for in raw readings, see `runningAway`. */
  readonly troubles?: readonly FireTrouble[];
  /** What this pit has shown of its own so far. */
  readonly learned?: LearnedPoint;
  /** Ends whose probes said what cannot be, and those that did so for so long that they are lost. */
  readonly rejected: readonly ProbeEnd[];
  readonly lost: readonly ProbeEnd[];
}

/** How far ahead a forecast looks, and how fine the fan is drawn. */
const HORIZON_S = 90 * MINUTE_S;
const FAN_STEP_S = 2 * MINUTE_S;

/** A fire on its way through time: only forwards; what happened before it is taken in now. */
class Way {
  readonly rejected = new Set<ProbeEnd>();
  readonly lost = new Set<ProbeEnd>();
  constructor(
    public belief: FireBelief,
    private readonly asked: Surroundings,
  ) {}

  /** What the fire has around it, with the air as it was left there. */
  get around(): Surroundings {
    return { ...this.asked, air: this.belief.air ? airOf(this.belief.air) : this.asked.air };
  }

  to(at: EpochS): void {
    if (at > this.belief.at) this.belief = advance(this.belief, { ...this.around, to: at });
  }

  read({ until, ...temps }: ReadingMean): void {
    this.to(until);
    const seen = seeReadings(this.belief, temps);
    this.belief = seen.belief;
    for (const end of seen.rejected) this.rejected.add(end);
    for (const end of seen.lost) this.lost.add(end);
  }

  /** A reading from the future is used for nothing, and its ends are named. */
  refuse({ fireEndTempC, stackEndTempC }: ReadingMean): false {
    if (fireEndTempC !== undefined) this.rejected.add('fire-end');
    if (stackEndTempC !== undefined) this.rejected.add('stack-end');
    return false;
  }

  look({ at, ...seen }: Look): void {
    this.to(at);
    this.belief = seeCheck(this.belief, seen);
  }
}

/** A belief of an older version of the house cannot be read: then somebody kept the fire, and a fair bed is where the last look left it. */
function begin({ from, shape, seed, around, lastLookAt }: FireToCarry): FireBelief {
  const kindled = (how: Kindling) => kindle({ ...how, shape, seed, ambientTempC: around.weather.ambientTempC });
  if (!('belief' in from)) return kindled(from);
  try {
    return beliefFromBytes(from.belief);
  } catch (error) {
    if (error instanceof UnreadableBeliefError) return kindled({ at: lastLookAt, state: 'fair' });
    throw error;
  }
}

/** Fan and due time from one look ahead: as far as the fan, and on where no trouble is in sight by then. */
function outlookOf(belief: FireBelief, around: Surroundings, fire: FireToCarry): NonNullable<CarriedFire['outlook']> {
  const ahead = lookAhead(belief, around, HORIZON_S / MINUTE_S, { most: HORIZON_MIN, isWanted: (seen) => !troubleBegins(seen, fire.band) });
  return { forecast: fanOf(belief, { ...fire, horizonS: HORIZON_S, stepS: FAN_STEP_S }, ahead), due: dueFrom(belief, { ...fire, lookAgainAt: belief.lookAgainAt }, ahead) };
}

/** Right after a look somebody is wanted back when it is best to, with nothing added to what was just done. */
function wantedBack(belief: FireBelief, advice: Advice | undefined): FireBelief {
  const { lookAgainAt: _before, ...rest } = belief;
  const adding = advice?.expects ? [advice.expects, ...advice.alternatives] : [];
  const nothing = adding.find(({ action }) => action === 'rake');
  return nothing ? { ...rest, lookAgainAt: later(belief.at, nothing.lookAgainS) } : rest;
}

/**
 * Carries one fire to its time: readings and a look in their order, then what is believed, and when asked what will be.
 * Same input, same output, to the last bit.
 */
export function carryFire(fire: FireToCarry): CarriedFire {
  const { look, band, to } = fire;
  const way = new Way(begin(fire), fire.around);
  const isNew = !('belief' in fire.from);
  const readings = fire.readings.filter((reading) => reading.until <= to || way.refuse(reading));
  for (const reading of readings.filter(({ until }) => !look || until <= look.at)) way.read(reading);
  if (look) way.look(look);
  const looked = look || isNew ? beliefToBytes(way.belief) : undefined;
  for (const reading of readings.filter(({ until }) => look && until > look.at)) way.read(reading);
  way.to(to);
  const { around } = way;
  const advice = fire.advice && advise(way.belief, { ...around, band, effort: 'quick', ...fire.advice });
  const belief = look ? wantedBack(way.belief, advice) : way.belief;
  return {
    belief: beliefToBytes(belief),
    ...(looked && { looked }),
    estimate: estimateOf(belief),
    ...(fire.wantsOutlook && { outlook: outlookOf(belief, around, fire) }),
    ...(advice && { advice }),
    troubles: troublesOf(belief, around),
    learned: learnedOf(belief),
    rejected: [...way.rejected].sort(),
    lost: [...way.lost].sort(),
  };
}
