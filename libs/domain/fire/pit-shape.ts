import { type FireParameters, REFERENCE_PIT } from './parameters.js';
import { type PitShape, requirePitShape } from './pit.js';

/** The pit that the parameters were fitted for: 30 in by 90 in chamber, 24 in firebox, 3/8 in steel, 6 in stack. */
export const REFERENCE_SHAPE: PitShape = {
  chamberLengthM: 2.28,
  chamberDiameterM: 0.762,
  fireboxLengthM: 0.61,
  fireboxDiameterM: 0.61,
  steelThicknessM: 0.0095,
  stackHeightM: 1.5,
  stackDiameterM: 0.15,
  zones: 3,
};
/** Door gap of everyday firing, m: the gap at which a pit's reference flow is stated. Source: common practice, no source (about an inch). */
export const USUAL_DOOR_GAP_M = 0.0254;

const drumAreaM2 = (lengthM: number, diameterM: number) => Math.PI * diameterM * (lengthM + diameterM / 2);

/** Inlet and stack in series: A^-2 = A_in^-2 + A_st^-2. Source: geometry. */
export const seriesAreaM2 = (inletM2: number, stackM2: number) =>
  inletM2 > 0 && stackM2 > 0 ? 1 / Math.sqrt(1 / inletM2 ** 2 + 1 / stackM2 ** 2) : 0;

/**
 * Parameters of a pit of another size, from those of the reference pit: areas with the walls, masses with area and
 * thickness, bed with the firebox floor, grates and food with the length and width, air with the openings and the root of the height.
 * Source: geometry. The reference shape gives the reference parameters.
 *
 * @throws OutOfRangeError for a shape that is no pit
 */
export function parametersOf(shape: PitShape): FireParameters {
  const known = REMEMBERED.get(shape) ?? scaled(shape);
  REMEMBERED.set(shape, known);
  return known;
}

/** A shape does not change, and one carry asks for its parameters a dozen times. */
const REMEMBERED = new WeakMap<PitShape, FireParameters>();

function scaled(shape: PitShape): FireParameters {
  requirePitShape(shape);
  const p = REFERENCE_PIT;
  const r = REFERENCE_SHAPE;
  const thickness = shape.steelThicknessM / r.steelThicknessM;
  const shell = drumAreaM2(shape.chamberLengthM, shape.chamberDiameterM) / drumAreaM2(r.chamberLengthM, r.chamberDiameterM);
  const grate = (shape.chamberLengthM * shape.chamberDiameterM) / (r.chamberLengthM * r.chamberDiameterM);
  const wall = drumAreaM2(shape.fireboxLengthM, shape.fireboxDiameterM) / drumAreaM2(r.fireboxLengthM, r.fireboxDiameterM);
  const floor = (shape.fireboxLengthM * shape.fireboxDiameterM) / (r.fireboxLengthM * r.fireboxDiameterM);
  const door = shape.fireboxDiameterM / r.fireboxDiameterM;
  const stackAreaM2 = p.stackAreaM2 * (shape.stackDiameterM / r.stackDiameterM) ** 2;
  const usualArea = (width: number, leak: number, stack: number) => seriesAreaM2(width * USUAL_DOOR_GAP_M + leak, stack);
  const air =
    (usualArea(p.doorWidthM * door, p.leakAreaM2 * door, stackAreaM2) / usualArea(p.doorWidthM, p.leakAreaM2, p.stackAreaM2)) *
    Math.sqrt(shape.stackHeightM / r.stackHeightM);
  return {
    ...p,
    bedKg: p.bedKg * floor,
    bedAreaM2: p.bedAreaM2 * floor,
    bedBurnKgPerS: p.bedBurnKgPerS * floor,
    bedEdgeAreaM2: p.bedEdgeAreaM2 * floor,
    bedHeatJPerK: p.bedHeatJPerK * floor,
    ashKg: p.ashKg * floor,
    fireboxAreaM2: p.fireboxAreaM2 * wall,
    fireboxHeatJPerK: p.fireboxHeatJPerK * wall * thickness,
    stackHeightM: shape.stackHeightM,
    stackAreaM2,
    airKgPerS: p.airKgPerS * air,
    leastAirKgPerS: p.leastAirKgPerS * air,
    doorWidthM: p.doorWidthM * door,
    leakAreaM2: p.leakAreaM2 * door,
    shellAreaM2: p.shellAreaM2 * shell,
    shellHeatJPerK: p.shellHeatJPerK * shell * thickness,
    innerWPerK: p.innerWPerK * grate,
    innerHeatJPerK: p.innerHeatJPerK * grate,
    foodWPerK: p.foodWPerK * grate,
    foodHeatJPerK: p.foodHeatJPerK * grate,
    mixingWPerK: p.mixingWPerK * (shape.chamberDiameterM / r.chamberDiameterM) ** 2,
    gaugeRadiantKPerW: p.gaugeRadiantKPerW / grate,
  };
}
