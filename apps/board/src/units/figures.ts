import type { Language, Units } from '@stokehold/domain/contract';
import { scaleOf, type ShownAs } from './scale.js';

type When = string | number;

/** Every figure on a screen is written by this: units by the yard, words by the person, times by the yard's zone. */
export interface Figures {
  /** '250 °F', '2.4 lb': an SI value with its unit. */
  readonly of: (as: ShownAs, si: number) => string;
  /** '250': the same without its unit, where the column cannot be mistaken. */
  readonly bare: (as: ShownAs, si: number) => string;
  /** '250°' */
  readonly degrees: (tempC: number) => string;
  readonly unit: (as: ShownAs) => string;
  /** For a field: the shown number, rounded as it is shown. */
  readonly shown: (as: ShownAs, si: number) => number;
  /** From a field: the SI value of a shown number. */
  readonly si: (as: ShownAs, shown: number) => number;
  readonly count: (n: number, digits?: number) => string;
  readonly percent: (frac: number) => string;
  /** '38 MB', '61.2 GB': as disks are sold. */
  readonly bytes: (bytes: number) => string;
  readonly money: (cents: number) => string;
  /** '$4.20/lb' from cents per kilogram. */
  readonly moneyPerMass: (centsPerKg: number) => string;
  /** '02:14', on the yard's wall clock. */
  readonly time: (at: When) => string;
  /** 'Sat 02:14' */
  readonly dayTime: (at: When) => string;
  /** 'Sat, Mar 14' */
  readonly day: (at: When) => string;
  /** 'Mar 14, 2027': for what may lie years ahead. */
  readonly date: (at: When) => string;
  /** 'Mar' */
  readonly month: (at: When) => string;
  /** '8 h 46' or '12 min', whole minutes, rounded down; never negative. */
  readonly span: (seconds: number) => string;
}

/** Keeps a number and its unit on one line. */
const BLANK = '\u00a0';
const LOCALE: Readonly<Record<Language, string>> = { en: 'en-US', es: 'es-US' };

export interface FiguresOf {
  readonly units: Units;
  readonly timeZone: string;
  readonly language: Language;
}

/** Makes what is asked for when it is first asked for, and once. */
function atFirst<K extends readonly number[], T>(make: (...key: K) => T): (...key: K) => T {
  const made = new Map<number | undefined, T>();
  return (...key) => {
    const there = made.get(key[0]) ?? make(...key);
    made.set(key[0], there);
    return there;
  };
}

function timesIn(timeZone: string, language: Language) {
  const locale = LOCALE[language];
  const as = (options: Intl.DateTimeFormatOptions) => {
    const format = atFirst(() => new Intl.DateTimeFormat(locale, { timeZone, ...options }));
    return (at: When) => format().format(typeof at === 'string' ? Date.parse(at) : at);
  };
  const time = as({ hour: '2-digit', minute: '2-digit', hourCycle: 'h23' });
  const weekday = as({ weekday: 'short' });
  return { time, dayTime: (at: When) => (language === 'es' ? `${time(at)} del ${weekday(at)}` : `${weekday(at)} ${time(at)}`), day: as({ weekday: 'short', month: 'short', day: 'numeric' }), month: as({ month: 'short' }), date: as({ month: 'short', day: 'numeric', year: 'numeric' }) };
}

const known = new Map<string, Figures>();

/** The figures of a yard in a language. Made once: a browser takes its time over a format. */
export function figuresOf(of: FiguresOf): Figures {
  const key = [of.units, of.timeZone, of.language].join();
  const figures = known.get(key) ?? newFigures(of);
  known.set(key, figures);
  return figures;
}

function newFigures({ units, timeZone, language }: FiguresOf): Figures {
  const locale = LOCALE[language];
  const byDigits = atFirst((digits: number) => new Intl.NumberFormat(locale, { minimumFractionDigits: digits, maximumFractionDigits: digits }));
  const number = (value: number, digits: number) => {
    const rounded = Number(value.toFixed(digits));
    // A temperature of -0.3 is shown as 0, not as -0.
    return byDigits(digits).format(rounded === 0 ? 0 : rounded);
  };
  const inCurrency = atFirst(() => new Intl.NumberFormat(locale, { style: 'currency', currency: 'USD', currencyDisplay: 'narrowSymbol' }));
  const money = (cents: number) => inCurrency().format(cents / 100);
  const bare = (as: ShownAs, si: number) => number(scaleOf(units, as).shown(si), scaleOf(units, as).digits);
  return {
    bare,
    of: (as, si) => `${bare(as, si)}${BLANK}${scaleOf(units, as).unit}`,
    degrees: (tempC) => `${bare('temp', tempC)}°`,
    unit: (as) => scaleOf(units, as).unit,
    shown: (as, si) => Number(scaleOf(units, as).shown(si).toFixed(scaleOf(units, as).digits)),
    si: (as, shown) => scaleOf(units, as).si(shown),
    count: (n, digits = 0) => number(n, digits),
    percent: (frac) => `${number(frac * 100, 0)}${BLANK}%`,
    bytes: (bytes) => (bytes < 999.5e6 ? `${number(bytes / 1e6, 0)}${BLANK}MB` : `${number(bytes / 1e9, bytes < 99.95e9 ? 1 : 0)}${BLANK}GB`),
    money,
    moneyPerMass: (centsPerKg) => `${money(centsPerKg / scaleOf(units, 'mass').shown(1))}/${scaleOf(units, 'mass').unit}`,
    ...timesIn(timeZone, language),
    span: (seconds) => {
      const minutes = Math.floor(Math.max(0, seconds) / 60);
      const hours = Math.floor(minutes / 60);
      return hours > 0 ? `${hours} h ${String(minutes % 60).padStart(2, '0')}` : `${minutes} min`;
    },
  };
}
