import { type Cents, cents, type EpochS, requireRange } from '../quantity/index.js';

export interface Span {
  readonly from: EpochS;
  readonly until: EpochS;
}
/** How the yard pays; law and contract decide what may be set. */
export interface PayRules {
  /** A break up to this long is paid time. 29 CFR 785.18: rest of 5 to about 20 min is worked time. [CFR29-785] */
  readonly paidBreakUpToS: number;
  /** Extra for night hours, thousandths of the rate. */
  readonly nightExtraPermille: number;
  /** Hours beyond this in one shift are overtime, s. */
  readonly overtimeAfterS: number;
  readonly overtimeExtraPermille: number;
}
/** Rest is paid, nights and long shifts as any hour: what holds until a yard sets its own. Source: [CFR29-785] for the break; common practice, no source. */
export const PLAIN_PAY: PayRules = { paidBreakUpToS: 20 * 60, nightExtraPermille: 0, overtimeAfterS: 24 * 3600, overtimeExtraPermille: 0 };

/** One person's shift as it was worked. */
export interface Worked {
  readonly spans: readonly Span[];
  readonly breaks: readonly Span[];
  readonly centsPerHour: number;
}
export interface Pay {
  readonly paidS: number;
  readonly unpaidBreakS: number;
  readonly nightS: number;
  readonly overtimeS: number;
  readonly costCents: Cents;
}

const lengthOf = ({ from, until }: Span) => Math.max(0, until - from);
const overlap = (a: Span, b: Span): Span => ({ from: Math.max(a.from, b.from) as EpochS, until: Math.min(a.until, b.until) as EpochS });
const total = (spans: readonly Span[]) => spans.reduce((sum, span) => sum + lengthOf(span), 0);

/** What is left of a span when others are cut out of it. */
function without(span: Span, cuts: readonly Span[]): readonly Span[] {
  return cuts.reduce<readonly Span[]>((parts, cut) => parts.flatMap((part) => {
    if (cut.until <= part.from || cut.from >= part.until) return [part];
    return [{ from: part.from, until: cut.from }, { from: cut.until, until: part.until }].filter((one) => one.until > one.from);
  }), [span]);
}

/**
 * What one person's shift costs: time there without long breaks, nights and overtime dearer.
 *
 *     cents = round( rate (paid + night * extra + overtime * extra) / 3600 )          whole seconds and thousandths: no rounding before
 *
 * @param worked   rate 0 to 1e6 cents an hour; spans that do not overlap
 * @param rules    the yard's
 * @param nights   the yard's night hours as instants, of all nights that matter
 * @returns Held to libs/domain/cost/pay.test.ts
 */
export function payOf(worked: Worked, rules: PayRules, nights: readonly Span[]): Pay {
  requireRange('rate (cents an hour)', worked.centsPerHour, 0, 1e6);
  const unpaid = worked.breaks.filter((rest) => lengthOf(rest) > rules.paidBreakUpToS);
  const paid = worked.spans.flatMap((span) => without(span, unpaid));
  const paidS = total(paid);
  const nightS = total(paid.flatMap((span) => nights.map((night) => overlap(span, night)).filter((part) => part.until > part.from)));
  const overtimeS = Math.max(0, paidS - rules.overtimeAfterS);
  const parts = paidS * 1000 + nightS * rules.nightExtraPermille + overtimeS * rules.overtimeExtraPermille;
  return { paidS, unpaidBreakS: total(worked.spans) - paidS, nightS, overtimeS, costCents: cents(Math.round((parts * worked.centsPerHour) / 3_600_000)) };
}
