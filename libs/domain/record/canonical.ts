/** Half of a surrogate pair without its other half: no text that UTF-8 could carry. */
const LONE_SURROGATE = /[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/;

/**
 * The one text of a JSON value by the JSON Canonicalization Scheme: no white space, members in the order of their names'
 * UTF-16 code units, numbers and texts as ECMAScript writes them. [RFC8785] 3.2
 *
 * @param value plain JSON; a member that is `undefined` is left out, as JSON has none
 * @returns the text, to be read as UTF-8; throws a TypeError for what JSON cannot carry: NaN, infinities, functions, half a surrogate pair.
 * Held to tests/published/record-canonical.test.ts
 */
export function canonicalJson(value: unknown): string {
  if (value === null || typeof value === 'boolean') return String(value);
  if (typeof value === 'number' && Number.isFinite(value)) return JSON.stringify(value);
  if (typeof value === 'string' && !LONE_SURROGATE.test(value)) return JSON.stringify(value);
  if (Array.isArray(value)) return `[${value.map((item) => canonicalJson(item)).join(',')}]`;
  if (typeof value === 'object') return `{${members(value).join(',')}}`;
  throw new TypeError(`JSON has no ${typeof value === 'number' ? String(value) : typeof value === 'string' ? 'half of a character' : typeof value}.`);
}

const members = (value: object): string[] =>
  Object.entries(value)
    .filter(([, member]) => member !== undefined)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([name, member]) => `${canonicalJson(name)}:${canonicalJson(member)}`);
