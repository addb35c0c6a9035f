import { hourly, hoursOf, type ForecastHour, place } from './forecast-forms.js';

/** Why no forecast came: no answer in time, a status, a redirect to another house, or an answer that is none. */
export type ForecastTrouble = 'no-answer' | 'refused' | 'redirected-away' | 'not-a-forecast';
export type Forecast = { readonly hours: readonly ForecastHour[]; readonly unreadable: number } | { readonly trouble: ForecastTrouble };

const ANSWER_WITHIN_MS = 10_000;
const MOST_BYTES = 3_000_000;
const MOST_REDIRECTS = 3;
/** The service asks for a name to be sent. */
const USER_AGENT = 'stokehold (self-hosted kitchen board)';

class Trouble extends Error {
  constructor(readonly trouble: ForecastTrouble) {
    super(trouble);
  }
}

/**
 * Asks the public forecast service for the hours ahead of a place: first for the place's own address, then for its hours. The place is
 * sent to four decimals, about 10 m. Never throws: what went wrong is a value.
 *
 * @param address  of the service, without a path; its answers may name addresses of its own host only
 */
export async function fetchForecast(address: string, { latDeg, lonDeg }: { readonly latDeg: number; readonly lonDeg: number }): Promise<Forecast> {
  try {
    const of = new URL(address);
    const short = (deg: number) => Number(deg.toFixed(4));
    const at = place.safeParse(await ask(new URL(`/points/${short(latDeg)},${short(lonDeg)}`, of), of.host));
    if (!at.success) throw new Trouble('not-a-forecast');
    const ahead = hourly.safeParse(await ask(new URL(at.data.properties.forecastHourly), of.host));
    if (!ahead.success) throw new Trouble('not-a-forecast');
    const read = hoursOf(ahead.data);
    if (read.hours.length === 0) throw new Trouble('not-a-forecast');
    return read;
  } catch (error) {
    return { trouble: error instanceof Trouble ? error.trouble : 'no-answer' };
  }
}

async function ask(url: URL, host: string, redirects = 0): Promise<unknown> {
  if (url.host !== host || redirects > MOST_REDIRECTS) throw new Trouble('redirected-away');
  const answer = await fetch(url, { redirect: 'manual', signal: AbortSignal.timeout(ANSWER_WITHIN_MS), headers: { 'user-agent': USER_AGENT, accept: 'application/geo+json' } });
  const next = answer.headers.get('location');
  if (answer.status >= 300 && answer.status < 400 && next) {
    await answer.body?.cancel();
    return ask(new URL(next, url), host, redirects + 1);
  }
  if (!answer.ok) {
    await answer.body?.cancel();
    throw new Trouble('refused');
  }
  const text = await textOf(answer);
  try {
    return JSON.parse(text);
  } catch {
    throw new Trouble('not-a-forecast');
  }
}

async function textOf(answer: Response): Promise<string> {
  const parts: Uint8Array[] = [];
  let bytes = 0;
  for await (const part of answer.body as unknown as AsyncIterable<Uint8Array>) {
    bytes += part.length;
    if (bytes > MOST_BYTES) throw new Trouble('not-a-forecast');
    parts.push(part);
  }
  return Buffer.concat(parts).toString('utf8');
}
