/** The eight winds by the heading they come from, degrees clockwise from north. */
export const WINDS = ['n', 'ne', 'e', 'se', 's', 'sw', 'w', 'nw'] as const;
export type Wind = (typeof WINDS)[number];
export const headingOf = (wind: Wind): number => WINDS.indexOf(wind) * 45;
/** The nearest of the eight. */
export const windOf = (headingDeg: number): Wind => WINDS[Math.round((((headingDeg % 360) + 360) % 360) / 45) % 8] ?? 'n';
