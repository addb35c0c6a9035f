import fc from 'fast-check';

/** As much of JSON Schema as the document of the API uses. */
export interface Schema {
  readonly type?: string;
  readonly format?: string;
  readonly pattern?: string;
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly minimum?: number;
  readonly maximum?: number;
  readonly exclusiveMaximum?: number;
  readonly minLength?: number;
  readonly maxLength?: number;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly items?: Schema;
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly propertyNames?: Schema;
  readonly additionalProperties?: Schema | boolean;
}

/** What of the house a drawn request may speak of. */
export interface Ground {
  /** Ids of anything that is there. */
  readonly ids: readonly string[];
  /** Seconds since 1970. */
  readonly nowS: number;
}

/** Texts that have broken programs: SQL, HTML, formulas, paths, marks that turn the reading, halves of letters, the empty character. */
export const HARD_TEXTS = [
  `'; drop table yard; --`, `" or 1=1 --`, '$1 $$ \\', '<script>alert(1)</script>', '<img src=x onerror=alert(1)>', '&lt;b&gt;', '{{7*7}}${7*7}', '=1+1', '+cmd|x', '-2', '@SUM(A1)', '\t=1',
  '../../../etc/passwd', '..\\..\\boot.ini', '/dev/null', 'CON', 'a\u202egpj.exe', '\u200f\u2067مشرف\u2069', 'e\u0301', '\u{1f468}\u200d\u{1f373}', '\u0000', 'a\u0000b', '\ud800', 'x\udfff', '\ufeff', '\u2028', '\r\nSet-Cookie: a=b',
  '\u001b[31m', '%s%n%x', 'null', 'NaN', '__proto__', 'constructor', 'İıſK', ' ', '\u00a0', '0', 'x'.repeat(10_000),
] as const;

const MOST_ITEMS = 3;

/** Values that the schema takes, hard texts among them where it takes any text. */
export function taken(schema: Schema, ground: Ground): fc.Arbitrary<unknown> {
  if ('const' in schema) return fc.constant(schema.const);
  if (schema.enum) return fc.constantFrom(...schema.enum);
  const among = schema.anyOf ?? schema.oneOf;
  if (among) return fc.oneof(...among.map((one) => taken(one, ground)));
  switch (schema.type) {
    case 'string': return text(schema, ground);
    case 'integer': return fc.integer({ min: Math.ceil(schema.minimum ?? -1e9), max: Math.floor(schema.maximum ?? 1e9) });
    case 'number': return number(schema);
    case 'boolean': return fc.boolean();
    case 'null': return fc.constant(null);
    case 'array': return fc.array(taken(schema.items ?? {}, ground), { minLength: schema.minItems ?? 0, maxLength: Math.min(schema.maxItems ?? MOST_ITEMS, Math.max(MOST_ITEMS, schema.minItems ?? 0)) });
    case 'object': return object(schema, ground);
    default: return fc.jsonValue();
  }
}

function number({ minimum = -1e9, maximum, exclusiveMaximum }: Schema): fc.Arbitrary<number> {
  const max = exclusiveMaximum ?? maximum ?? 1e9;
  return fc.double({ min: minimum, max, maxExcluded: exclusiveMaximum !== undefined, noNaN: true });
}

function text({ format, pattern, minLength = 0, maxLength = 200 }: Schema, { ids, nowS }: Ground): fc.Arbitrary<string> {
  if (format === 'uuid') return fc.oneof({ weight: 3, arbitrary: fc.constantFrom(...ids) }, { weight: 1, arbitrary: fc.uuid() });
  if (format === 'date-time') {
    const iso = (seconds: number) => new Date(seconds * 1000).toISOString().replace('.000Z', 'Z');
    const near = fc.integer({ min: -86_400, max: 86_400 }).map((off) => iso(nowS + off));
    return fc.oneof({ weight: 4, arbitrary: near }, { weight: 1, arbitrary: fc.constantFrom('2000-01-01T00:00:00Z', '2199-12-31T23:59:59Z', '2024-02-29T12:00:00Z', '2027-03-14T08:00:00.123456789Z') });
  }
  if (pattern) return fc.stringMatching(new RegExp(pattern));
  const fits = (one: string) => one.trim().length >= minLength && one.trim().length <= maxLength;
  return fc.oneof(fc.constantFrom(...HARD_TEXTS.filter(fits)), fc.string({ minLength, maxLength: Math.min(maxLength, 60), unit: 'binary' }));
}

function object({ properties = {}, required = [], propertyNames, additionalProperties }: Schema, ground: Ground): fc.Arbitrary<object> {
  if (propertyNames && typeof additionalProperties === 'object') return fc.dictionary(taken(propertyNames, ground) as fc.Arbitrary<string>, taken(additionalProperties, ground), { maxKeys: MOST_ITEMS });
  const model = Object.fromEntries(Object.entries(properties).map(([name, schema]) => [name, taken(schema, ground)]));
  return fc.record(model, { requiredKeys: [...required] });
}

/** Where something else may be put in the place of a part: one setter for each part of a value. */
function places(value: unknown): ((put: unknown) => void)[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, part]) => [(put: unknown) => void ((value as Record<string, unknown>)[name] = put), ...places(part)]);
}

const wrong = fc.oneof(
  fc.constantFrom<unknown>(null, undefined, {}, [], [[[[]]]], '', 0, -1, 1e308, -1e308, 5e-324, 2 ** 53, true, '1', '2027-02-30T00:00:00Z', '2100-02-29T00:00:00Z', '0001-01-01T00:00:00Z', '9999-12-31T23:59:59Z', '2027-01-15T23:00:00', { $ne: null }, { toString: 1 }),
  fc.constantFrom<unknown>(...HARD_TEXTS),
  fc.jsonValue(),
);

/** Values that were taken once, with some parts exchanged for what does not belong there. */
export function twisted(schema: Schema, ground: Ground): fc.Arbitrary<unknown> {
  const changes = fc.array(fc.tuple(fc.nat(), wrong), { minLength: 1, maxLength: 3 });
  return fc.tuple(taken(schema, ground), changes).map(([value, all]) => {
    const whole = structuredClone({ value });
    for (const [nth, put] of all) {
      const here = places(whole);
      here[nth % here.length]!(structuredClone(put));
    }
    return whole.value;
  });
}
