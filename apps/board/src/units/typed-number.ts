/**
 * A number as a person types it: decimal point or comma, blanks around it, a sign, a unit or degree sign behind it.
 * undefined for anything else; also for '1,234.5', which could mean two things.
 */
export function typedNumber(text: string): number | undefined {
  const match = /^\s*([+-]?\d+(?:[.,]\d*)?|[+-]?[.,]\d+)\s*(?:°?\s*[A-Za-z%/]*|°)\s*$/.exec(text);
  if (!match?.[1]) return undefined;
  const value = Number(match[1].replace(',', '.'));
  return Number.isFinite(value) ? value : undefined;
}
