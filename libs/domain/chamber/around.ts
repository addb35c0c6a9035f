import type { Surroundings } from '../fire/index.js';
import { USUAL_DOOR_GAP_M } from '../fire/pit-shape.js';
import { clamp } from '../quantity/index.js';
import { windFromFireEndRad } from './wind-angle.js';

/**
 * What one pit's fire has around it in the yard's weather, with the door and the damper as in everyday firing.
 *
 * @param yard.fromDeg     compass heading that the wind comes from
 * @param yard.fireEndDeg  compass heading towards which the pit's firebox end looks
 * @param yard.foodLoadFrac  food on the grates, 0 to 1; more counts as full
 */
export function surroundingsOf(yard: {
  readonly windMPerS: number; readonly gustMPerS: number; readonly fromDeg: number; readonly ambientTempC: number; readonly rainFrac: number;
  readonly fireEndDeg: number; readonly foodLoadFrac: number;
}): Surroundings {
  return {
    weather: {
      windMPerS: yard.windMPerS,
      gustMPerS: yard.gustMPerS,
      fromFireEndRad: windFromFireEndRad(yard),
      ambientTempC: yard.ambientTempC,
      rainFrac: yard.rainFrac,
    },
    air: { doorGapM: USUAL_DOOR_GAP_M, damperFrac: 1 },
    foodLoadFrac: clamp(yard.foodLoadFrac, 0, 1),
  };
}
