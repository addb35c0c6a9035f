import type { CookForecast, CookView, CookWhatIf, FindingView, FoodEntryView } from '@stokehold/domain/contract';
import type { Figures } from '../../units/figures.js';
import type { SayFoodWords } from '../../words/food.js';

/** On the pits first, the soonest done before; then those that wait; then those that came off, the latest first. */
export function cooksInOrder(cooks: readonly CookView[]): readonly CookView[] {
  const rank = (cook: CookView) => (cook.offAt !== null ? 2 : cook.onAt !== null ? 0 : 1);
  const when = (cook: CookView) => (cook.offAt !== null ? -Date.parse(cook.offAt) : Date.parse(cook.forecast?.p50At ?? cook.comesOffAt ?? '9999-01-01T00:00:00Z'));
  return [...cooks].sort((a, b) => rank(a) - rank(b) || when(a) - when(b) || (a.id < b.id ? -1 : 1));
}

/** When a cook is done, in a sentence: a band, never a single time. */
export function doneSaid(say: SayFoodWords, figures: Figures, { p10At, p50At, p90At, neverFrac, problem }: CookForecast): string {
  if (p50At && p10At) return say('done.about', { time: figures.dayTime(p50At), low: figures.time(p10At), high: p90At ? figures.time(p90At) : '…' });
  return problem === null || problem === 'not-in-this-heat' ? say('done.never', { percent: figures.percent(neverFrac) }) : say('done.cannot');
}

/** Seconds count where minutes would hide them. */
export const spanSaid = (figures: Figures, seconds: number): string => (seconds < 120 ? `${Math.round(seconds)} s` : figures.span(seconds));

function askedSaid(say: SayFoodWords, figures: Figures, { limit, required: { tempC, durationS } }: FindingView): string {
  const temp = figures.of('food', tempC);
  switch (limit) {
    case 'hot-hold':
    case 'roast-oven':
      return say('finding.asksAtLeast', { temp });
    case 'cold-hold':
      return say('finding.asksAtMost', { temp });
    case 'cooling':
    case 'come-up':
    case 'time-control':
      return say('finding.asksWithin', { temp, span: spanSaid(figures, durationS) });
    case 'cooking':
    case 'reheat':
      return durationS > 0 ? say('finding.asks', { temp, span: spanSaid(figures, durationS) }) : say('finding.asksTemp', { temp });
  }
}

/** What was measured against which section: numbers, and no word of being fit to serve. */
export function findingSaid(say: SayFoodWords, figures: Figures, finding: FindingView): string {
  const asked = askedSaid(say, figures, finding);
  const { measured, section } = finding;
  if (!measured) return say('finding.notMeasured', { section, asked });
  if (measured.durationS < 1) return say('finding.measuredTemp', { temp: figures.of('food', measured.tempC), section, asked });
  return say('finding.measured', { temp: figures.of('food', measured.tempC), span: spanSaid(figures, measured.durationS), section, asked });
}

/** What can still be done, or has to be; nothing where nothing is asked. */
export function remediesSaid(say: SayFoodWords, { outcome, remedies, answered }: FindingView): string | undefined {
  if (answered) return say('finding.answered');
  if (remedies.length === 0) return undefined;
  const said = remedies.map((remedy) => say(`remedy.${remedy}`)).join(', ');
  return say(outcome === 'at-risk' ? 'finding.still' : 'finding.now', { remedies: said });
}

/** One line of the log. */
export function entrySaid(say: SayFoodWords, figures: Figures, entry: Pick<FoodEntryView, 'kind' | 'tempC' | 'stage' | 'wrappedIn' | 'action' | 'limit'>): string {
  switch (entry.kind) {
    case 'reading':
      return say('log.reading', { temp: figures.of('food', entry.tempC ?? 0), stage: say(`stage.${entry.stage ?? 'cooking'}`) });
    case 'wrapped':
      return say('log.wrapped', { in: say(`wrap.${entry.wrappedIn ?? 'foil'}`) });
    case 'action':
      return say('log.action', { action: say(`remedy.${entry.action ?? 'measure-now'}`), limit: say(`limit.${entry.limit ?? 'cooking'}`) });
  }
}

/** A change nearer than this to nothing is none, s. */
const SAME_S = 180;

/** What a change would do to the done time. */
export function whatIfSaid(say: SayFoodWords, figures: Figures, { middleS, p50At }: CookWhatIf): string {
  if (middleS === null || p50At === null) return say('whatIf.never');
  const time = figures.dayTime(p50At);
  if (Math.abs(middleS) < SAME_S) return say('whatIf.same', { time });
  return say(middleS > 0 ? 'whatIf.later' : 'whatIf.earlier', { span: figures.span(Math.abs(middleS)), time });
}
