/** How people are called across a yard: by the first of their names, or by the whole where two share it. */
export function calledNames(people: readonly { readonly id: string; readonly name: string }[]): ReadonlyMap<string, string> {
  const first = (name: string) => name.trim().split(/\s+/)[0] ?? name;
  const count = new Map<string, number>();
  for (const { name } of people) count.set(first(name), (count.get(first(name)) ?? 0) + 1);
  return new Map(people.map(({ id, name }) => [id, count.get(first(name)) === 1 ? first(name) : name]));
}
