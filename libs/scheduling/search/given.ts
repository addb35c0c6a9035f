/** Default, least and greatest value of each parameter of a planner. */
export type Ranges<P> = { readonly [K in keyof P]: { readonly usual: number; readonly min: number; readonly max: number } };

/** The value of a parameter: as given, else the usual one. */
export const parameterOf = <P>(ranges: Ranges<P>, given: { readonly [K in keyof P]?: number } | undefined, name: keyof P): number => given?.[name] ?? ranges[name].usual;

/** The first parameter that was given outside its range. Held to given.test.ts. */
export function outOfRange<P>(ranges: Ranges<P>, given: { readonly [K in keyof P]?: number } | undefined): keyof P | undefined {
  return (Object.keys(ranges) as (keyof P)[]).find((name) => {
    const value = parameterOf(ranges, given, name);
    return !(value >= ranges[name].min && value <= ranges[name].max);
  });
}

/** The first thing wrong with any of these; undefined when nothing is. */
export function firstWrong<T, W>(things: readonly T[], look: (thing: T, nth: number) => W | undefined): W | undefined {
  for (const [nth, thing] of things.entries()) {
    const wrong = look(thing, nth);
    if (wrong !== undefined) return wrong;
  }
  return undefined;
}
