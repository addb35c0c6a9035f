/** '12 s', '3 min', '2 h 05': an age as a board says it, whole units, rounded down. */
export function ageText(seconds: number): string {
  if (seconds < 120) return `${Math.floor(seconds)} s`;
  const minutes = Math.floor(seconds / 60);
  return minutes < 120 ? `${minutes} min` : `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, '0')}`;
}
