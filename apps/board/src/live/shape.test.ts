import { liveBeat, liveChange, problem, routes, yardClock } from '@stokehold/domain/contract';
import desk from 'contract:desk';
import hand from 'contract:hand';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { z } from 'zod';
import { faultsBy, type Shape, type Shapes } from './shape.js';

/** Every shape that the board reads, with the contract's own schema of it: zod is the yardstick. */
const readBy = (shapes: Shapes) => Object.keys(shapes.properties).map((name) => ({ name, shapes, schema: schemaOf(name) }));
const schemaOf = (name: string): z.ZodType => ({ change: liveChange, beat: liveBeat, clock: yardClock, problem })[name] ?? routes[name as keyof typeof routes].reply;
const all = [...readBy(hand), ...readBy(desk)];

const TEXT_BY_FORMAT: Readonly<Record<string, fc.Arbitrary<unknown>>> = {
  uuid: fc.uuid(),
  'date-time': fc.date({ min: new Date('2000-01-01'), max: new Date('2199-12-31'), noInvalidDate: true }).map((date) => date.toISOString()),
};
const text = ({ pattern, minLength = 0, maxLength = 12 }: Shape) => pattern ? fc.stringMatching(new RegExp(pattern, 'u')).filter((drawn) => drawn.length <= maxLength) : fc.stringMatching(/^[a-z]*$/).map((drawn) => drawn.padEnd(minLength, 'a').slice(0, maxLength));

/** Draws values of a shape. */
function drawn(shape: Shape & { readonly format?: string }, { $defs = {} }: Shapes): fc.Arbitrary<unknown> {
  const of = (inner: Shape) => drawn(inner, { properties: {}, $defs });
  if (shape.$ref) return of({ ...$defs[shape.$ref.replace('#/$defs/', '')], ...Object.fromEntries(Object.entries(shape).filter(([key]) => key !== '$ref')) });
  if ('const' in shape) return fc.constant(shape.const);
  if (shape.enum) return fc.constantFrom(...shape.enum);
  const choices = shape.anyOf ?? shape.oneOf;
  if (choices) return fc.oneof(...choices.map(of));
  if (shape.allOf) return of(shape.allOf[0]!);
  if (Array.isArray(shape.type)) return fc.oneof(...shape.type.map((type) => of({ ...shape, type })));
  const { minimum: min = -1e6, maximum: max = 1e6, exclusiveMinimum, exclusiveMaximum } = shape;
  switch (shape.type) {
    case 'string':
      return (shape.format && TEXT_BY_FORMAT[shape.format]) || text(shape);
    case 'number':
      return fc.double({ min: exclusiveMinimum ?? min, max: exclusiveMaximum ?? max, minExcluded: exclusiveMinimum !== undefined, maxExcluded: exclusiveMaximum !== undefined, noNaN: true });
    case 'integer':
      return fc.integer({ min: Math.max(exclusiveMinimum === undefined ? min : exclusiveMinimum + 1, -1e6), max: Math.min(max, 1e6) });
    case 'boolean':
      return fc.boolean();
    case 'null':
      return fc.constant(null);
    case 'array':
      return shape.prefixItems
        ? fc.tuple(...shape.prefixItems.map(of))
        : fc.array(of(shape.items ?? {}), { minLength: shape.minItems ?? 0, maxLength: Math.max(shape.minItems ?? 0, Math.min(shape.maxItems ?? 2, 2)) });
    case 'object':
      if (typeof shape.additionalProperties === 'object') {
        const value = of(shape.additionalProperties);
        if (shape.required) return fc.record(Object.fromEntries(shape.required.map((key) => [key, value])), { noNullPrototype: true });
        return fc.dictionary(of(shape.propertyNames ?? { type: 'string' }) as fc.Arbitrary<string>, value, { maxKeys: 2, noNullPrototype: true });
      }
      return fc.record(Object.fromEntries(Object.entries(shape.properties ?? {}).map(([key, inner]) => [key, of(inner)])), { requiredKeys: [...(shape.required ?? [])], noNullPrototype: true });
    default:
      return fc.anything();
  }
}

const WRONG = [null, '', 'x', -1e12, 0.5, 7, true, [], {}, [null]];
/** The same value with something else in one place, found by counting its parts. */
function spoilt(value: unknown, nth: number, by: unknown): unknown {
  let left = nth;
  const walk = (part: unknown): unknown => {
    if (left-- === 0) return by;
    if (Array.isArray(part)) return part.map(walk);
    if (typeof part === 'object' && part !== null) return Object.fromEntries(Object.entries(part).map(([key, inner]) => [key, walk(inner)]));
    return part;
  };
  return walk(value);
}

/** Rules that no form can hold ("low below high", a known time zone) are the server's: it asked for them when it took the fact in. */
type Issue = z.core.$ZodIssue;
const isOfForm = (issue: Issue): boolean => (issue.code === 'invalid_union' ? issue.errors.every((branch) => branch.some(isOfForm)) : issue.code !== 'custom');
const isInForm = (schema: z.ZodType, value: unknown) => !(schema.safeParse(value).error?.issues.some(isOfForm) ?? false);

describe('what the board is told is read as the contract reads it', () => {
  it.each(all)('$name: as it is, and with something wrong in it', ({ name, shapes, schema }) => {
    const faultIn = faultsBy(shapes)(name);
    const shape = shapes.properties[name]!;
    fc.assert(
      fc.property(drawn(shape, shapes), fc.nat(60), fc.constantFrom(...WRONG), (value, nth, wrong) => {
        expect(faultIn(value)).toBeUndefined();
        expect(isInForm(schema, value)).toBe(true);
        const other = spoilt(value, nth, wrong);
        expect(faultIn(other) === undefined, JSON.stringify(other)).toBe(isInForm(schema, other));
      }),
      { numRuns: 60 },
    );
  });

  it('a fault is named by its place', () => {
    const faultIn = faultsBy({ properties: { pits: { type: 'array', items: { type: 'object', properties: { due: { type: 'string' } }, required: ['due'] } } } })('pits');
    expect(faultIn([{ due: 'now' }, { due: 3 }])).toBe('1.due');
    expect(faultIn([{ due: 'now' }, {}])).toBe('1.due');
    expect(faultIn({})).toBe('');
  });

  it('a newer house may say more', () => {
    expect(faultsBy(hand)('clock')({ now: '2027-03-14T08:00:00Z', speed: 1, since: 'yesterday' })).toBeUndefined();
  });

  it('no keyword of the data goes unread', () => {
    const READ = ['$ref', 'type', 'const', 'enum', 'anyOf', 'oneOf', 'allOf', 'properties', 'required', 'propertyNames', 'additionalProperties', 'items', 'prefixItems', 'minItems', 'maxItems', 'pattern', 'minLength', 'maxLength', 'minimum', 'maximum', 'exclusiveMinimum', 'exclusiveMaximum'];
    /** What says nothing of the value, or the same as a pattern beside it. */
    const ASIDE = ['format', 'default'];
    const seen = new Set<string>();
    const walk = (shape: Shape): void => {
      for (const key of Object.keys(shape)) seen.add(key);
      for (const inner of [...Object.values<Shape>(shape.properties ?? {}), ...(shape.anyOf ?? []), ...(shape.oneOf ?? []), ...(shape.allOf ?? []), ...(shape.prefixItems ?? []), shape.items, shape.propertyNames, typeof shape.additionalProperties === 'object' ? shape.additionalProperties : undefined]) if (inner) walk(inner);
    };
    for (const { properties, $defs = {} } of [hand, desk]) for (const shape of [...Object.values<Shape>(properties), ...Object.values<Shape>($defs)]) walk(shape);
    expect([...seen].filter((key) => !READ.includes(key) && !ASIDE.includes(key))).toEqual([]);
  });
});
