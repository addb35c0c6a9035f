/**
 * A time of day as a person types it, as 'HH:mm': '19:30', '7.30 pm', '1930', '7 p. m.', '730a'.
 * undefined for anything else.
 */
export function typedHour(text: string): string | undefined {
  const match = /^\s*(\d{1,2})(?:\s*[:.,h]?\s*(\d{2}))?\s*([ap])?\.?\s*(?:m\.?)?\s*$/i.exec(text);
  if (!match?.[1]) return undefined;
  const half = match[3]?.toLowerCase();
  let hour = Number(match[1]);
  const minute = Number(match[2] ?? '0');
  if (half && (hour < 1 || hour > 12)) return undefined;
  if (half) hour = (hour % 12) + (half === 'p' ? 12 : 0);
  if (hour > 23 || minute > 59) return undefined;
  return `${String(hour).padStart(2, '0')}:${String(minute).padStart(2, '0')}`;
}
