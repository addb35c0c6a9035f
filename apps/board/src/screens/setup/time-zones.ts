/** Names of the time zone database that this device knows, in order. */
export const timeZones = (): readonly string[] => Intl.supportedValuesOf('timeZone');

/** Whether a name is one of the time zone database's. */
export function isTimeZone(name: string): boolean {
  try {
    new Intl.DateTimeFormat('en-US', { timeZone: name });
    return name.length >= 3 && !/^[+-]/.test(name);
  } catch {
    return false;
  }
}
