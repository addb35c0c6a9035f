type Kind = 'string' | 'number' | 'integer' | 'boolean' | 'null' | 'object' | 'array';
/** JSON Schema as zod writes it (draft 2020-12), as far as the contract's replies need it. */
export interface Shape {
  readonly $ref?: string;
  readonly type?: Kind | readonly Kind[];
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly anyOf?: readonly Shape[];
  readonly oneOf?: readonly Shape[];
  readonly allOf?: readonly Shape[];
  readonly properties?: Readonly<Record<string, Shape>>;
  readonly required?: readonly string[];
  readonly propertyNames?: Shape;
  readonly additionalProperties?: Shape | boolean;
  readonly items?: Shape;
  readonly prefixItems?: readonly Shape[];
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly pattern?: string;
  readonly minLength?: number;
  readonly maxLength?: number;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly exclusiveMinimum?: number;
  readonly exclusiveMaximum?: number;
}
/** Shapes by name, and what several of them share. */
export interface Shapes {
  readonly properties: Readonly<Record<string, Shape>>;
  readonly $defs?: Readonly<Record<string, Shape>>;
}

/** Where a value is not as it should be: '' for the value itself, 'pits.2.due' within it; undefined where all is well. */
export type FaultIn = (value: unknown) => string | undefined;
type Fields = Readonly<Record<string, unknown>>;

const within = (key: string | number, fault: string) => (fault === '' ? String(key) : `${key}.${fault}`);
const fieldsOf = (value: unknown): Fields | undefined => (typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Fields) : undefined);

const IS: Readonly<Record<Kind, (value: unknown) => boolean>> = {
  string: (value) => typeof value === 'string',
  number: (value) => typeof value === 'number' && Number.isFinite(value),
  integer: (value) => Number.isSafeInteger(value),
  boolean: (value) => typeof value === 'boolean',
  null: (value) => value === null,
  object: (value) => fieldsOf(value) !== undefined,
  array: Array.isArray,
};

function ofText({ pattern, minLength = 0, maxLength = Infinity }: Shape): FaultIn {
  const form = pattern === undefined ? undefined : new RegExp(pattern, 'u');
  return (value) => (typeof value !== 'string' || ((form?.test(value) ?? true) && value.length >= minLength && value.length <= maxLength) ? undefined : '');
}

function ofNumber({ minimum = -Infinity, maximum = Infinity, exclusiveMinimum = -Infinity, exclusiveMaximum = Infinity }: Shape): FaultIn {
  return (value) => (typeof value !== 'number' || (value >= minimum && value <= maximum && value > exclusiveMinimum && value < exclusiveMaximum) ? undefined : '');
}

/** A field that is not in the shape is let through: a newer house may say more. */
function ofFields({ properties = {}, required = [], propertyNames, additionalProperties }: Shape, read: (shape: Shape) => FaultIn): FaultIn {
  const known = Object.entries(properties).map(([key, shape]) => [key, read(shape)] as const);
  const others = typeof additionalProperties === 'object' ? read(additionalProperties) : undefined;
  const names = propertyNames && read(propertyNames);
  return (value) => {
    const fields = fieldsOf(value);
    if (!fields) return undefined;
    for (const key of required) if (fields[key] === undefined) return key;
    for (const [key, faultIn] of known) {
      const fault = fields[key] === undefined ? undefined : faultIn(fields[key]);
      if (fault !== undefined) return within(key, fault);
    }
    if (!others && !names) return undefined;
    for (const key of Object.keys(fields)) {
      const fault = names?.(key) ?? (key in properties ? undefined : others?.(fields[key]));
      if (fault !== undefined) return within(key, fault);
    }
    return undefined;
  };
}

function ofItems({ items, prefixItems = [], minItems = 0, maxItems = Infinity }: Shape, read: (shape: Shape) => FaultIn): FaultIn {
  const first = prefixItems.map(read);
  const rest = items && read(items);
  return (value) => {
    if (!Array.isArray(value)) return undefined;
    if (value.length < Math.max(minItems, first.length) || value.length > maxItems) return '';
    for (let nth = 0; nth < value.length; nth++) {
      const fault = (first[nth] ?? rest)?.(value[nth]);
      if (fault !== undefined) return within(nth, fault);
    }
    return undefined;
  };
}

function ofChoices(choices: readonly FaultIn[]): FaultIn {
  return (value) => (choices.some((faultIn) => faultIn(value) === undefined) ? undefined : '');
}

/** What each keyword of a shape asks for. A keyword that is in none of them says nothing of the value, or is not written by zod for what the contract uses: a test holds that. */
function asked(shape: Shape, read: (shape: Shape) => FaultIn, shared: (ref: string) => FaultIn): FaultIn[] {
  const { $ref, type, enum: allowed = 'const' in shape ? [shape.const] : undefined, anyOf, oneOf, allOf = [] } = shape;
  const kinds = type === undefined ? [] : [type].flat();
  const has = (...keywords: readonly (keyof Shape)[]) => keywords.some((keyword) => keyword in shape);
  return [
    ...($ref ? [shared($ref)] : []),
    ...(kinds.length > 0 ? [(value: unknown) => (kinds.some((kind) => IS[kind](value)) ? undefined : '')] : []),
    ...(allowed ? [(value: unknown) => (allowed.includes(value) ? undefined : '')] : []),
    ...[anyOf, oneOf].flatMap((choices) => (choices ? [ofChoices(choices.map(read))] : [])),
    ...allOf.map(read),
    ...(has('pattern', 'minLength', 'maxLength') ? [ofText(shape)] : []),
    ...(has('minimum', 'maximum', 'exclusiveMinimum', 'exclusiveMaximum') ? [ofNumber(shape)] : []),
    ...(has('properties', 'propertyNames', 'additionalProperties') ? [ofFields(shape, read)] : []),
    ...(has('items', 'prefixItems', 'minItems', 'maxItems') ? [ofItems(shape, read)] : []),
  ];
}

/** What finds the fault in a value of one of these shapes; made when it is first needed. */
export function faultsBy({ properties, $defs = {} }: Shapes): (name: string) => FaultIn {
  const made = new Map<string, FaultIn>();
  const shared = (ref: string): FaultIn => {
    const known = made.get(ref);
    if (known) return known;
    const shape = $defs[ref.replace('#/$defs/', '')];
    if (!shape) throw new Error(`the contract's data has no ${ref}`);
    const faultIn = read(shape);
    made.set(ref, faultIn);
    return faultIn;
  };
  const read = (shape: Shape): FaultIn => {
    const all = asked(shape, read, shared);
    const [only] = all;
    if (only && all.length === 1) return only;
    return (value) => {
      for (const faultIn of all) {
        const fault = faultIn(value);
        if (fault !== undefined) return fault;
      }
      return undefined;
    };
  };
  return (name) => {
    const known = made.get(name);
    if (known) return known;
    const shape = properties[name];
    if (!shape) throw new Error(`the contract's data has no ${name}`);
    const faultIn = read(shape);
    made.set(name, faultIn);
    return faultIn;
  };
}
