import { toIso, type EpochS } from '@stokehold/domain/quantity';
import type { Figures } from '../units/figures.js';
import type { ShownAs } from '../units/scale.js';
import { typedHour } from '../units/typed-hour.js';
import { typedNumber } from '../units/typed-number.js';
import { chosen, meaningOf } from '../units/typed-wall-time.js';

/** What is wrong with what stands in a field. */
export type Wrong =
  | { readonly code: 'needed' | 'not-a-number' | 'whole-number' | 'time-missing' }
  | { readonly code: 'between'; readonly low: string; readonly high: string }
  | { readonly code: 'too-long'; readonly count: number }
  | { readonly code: 'time-skipped'; readonly from: string; readonly to: string };
export type Wrongs = Readonly<Record<string, Wrong>>;

/** A wall time as it stands in its field. */
export interface TypedWall {
  readonly wall: string;
  readonly again: boolean;
}
interface NumberWanted {
  /** How it is shown; without it a plain number. */
  readonly as?: ShownAs;
  /** SI for a quantity; both ends may be. */
  readonly min: number;
  readonly max: number;
  readonly whole?: boolean;
  /** What stood there before: left as it was shown, it stays as it was, to the last digit. */
  readonly was?: number | undefined;
}

/** Reads the fields of a form into SI and instants, and remembers every field that cannot be read and why. */
export class FormReading {
  private readonly found: Record<string, Wrong> = {};
  constructor(private readonly figures: Figures, private readonly zone: string) {}

  get wrongs(): Wrongs {
    return this.found;
  }
  get good(): boolean {
    return Object.keys(this.found).length === 0;
  }
  private wrong(field: string, wrong: Wrong): undefined {
    this.found[field] = wrong;
    return undefined;
  }

  /** SI of a typed number in the yard's units; undefined, and a fault, where it is none or out of range. */
  number(field: string, typed: string, { as, min, max, whole, was }: NumberWanted): number | undefined {
    if (as && was !== undefined && typed === String(this.figures.shown(as, was))) return was;
    if (typed.trim() === '') return this.wrong(field, { code: 'needed' });
    const shown = typedNumber(typed);
    if (shown === undefined) return this.wrong(field, { code: 'not-a-number' });
    if (whole && !Number.isInteger(shown)) return this.wrong(field, { code: 'whole-number' });
    const value = as ? this.figures.si(as, shown) : shown;
    // What is shown as the limit may be typed as the limit, though rounding put it a hair outside.
    const allowed = as ? Math.abs(this.figures.si(as, 1) - this.figures.si(as, 0)) / 2 : 0;
    if (!(value >= min - allowed && value <= max + allowed)) {
      const say = (limit: number) => (as ? this.figures.of(as, limit) : String(limit));
      return this.wrong(field, { code: 'between', low: say(min), high: say(max) });
    }
    return Math.min(max, Math.max(min, value));
  }
  /** The same for a number that may be left out. */
  optionalNumber(field: string, typed: string, wanted: NumberWanted): number | undefined {
    return typed.trim() === '' ? undefined : this.number(field, typed, wanted);
  }
  /** Whole cents from an amount of money. */
  cents(field: string, typed: string, maxCents: number): number | undefined {
    const amount = this.number(field, typed.replace('$', ''), { min: 0, max: maxCents / 100 });
    return amount === undefined ? undefined : Math.round(amount * 100);
  }
  /** A time of the day as 'HH:mm'. */
  clock(field: string, typed: string): string | undefined {
    return typedHour(typed) ?? this.wrong(field, { code: 'time-missing' });
  }
  text(field: string, typed: string, longest = 60): string | undefined {
    const text = typed.trim();
    if (text === '') return this.wrong(field, { code: 'needed' });
    return text.length > longest ? this.wrong(field, { code: 'too-long', count: longest }) : text;
  }
  at(field: string, { wall, again }: TypedWall): EpochS | undefined {
    const meaning = meaningOf(wall, this.zone);
    if (meaning.kind === 'skipped') return this.wrong(field, { code: 'time-skipped', from: meaning.from, to: meaning.to });
    return chosen(meaning, again) ?? this.wrong(field, { code: 'time-missing' });
  }
  instant(field: string, typed: TypedWall): string | undefined {
    const at = this.at(field, typed);
    return at === undefined ? undefined : toIso(at);
  }
}
