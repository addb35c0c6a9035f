const FULL_TURN_DEG = 360;

/**
 * Angle between where the wind comes from and where a pit's firebox end looks. Source: geometry.
 *
 * @param wind.fromDeg     compass heading that the wind comes from, any number of degrees
 * @param wind.fireEndDeg  compass heading towards which the firebox end looks
 * @returns rad, 0 (blows onto the firebox end) to pi (blows onto the stack end); which side it leans to does not matter
 */
export function windFromFireEndRad(wind: { readonly fromDeg: number; readonly fireEndDeg: number }): number {
  const apart = (((wind.fromDeg - wind.fireEndDeg) % FULL_TURN_DEG) + FULL_TURN_DEG) % FULL_TURN_DEG;
  return (Math.min(apart, FULL_TURN_DEG - apart) * Math.PI) / 180;
}
