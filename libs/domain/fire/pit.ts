import { requireRange } from '../quantity/index.js';
import type { Piece } from '../wood/index.js';

/** A pit as the yard set it up: inside measures, in metres. */
export interface PitShape {
  readonly chamberLengthM: number;
  readonly chamberDiameterM: number;
  readonly fireboxLengthM: number;
  readonly fireboxDiameterM: number;
  readonly steelThicknessM: number;
  readonly stackHeightM: number;
  readonly stackDiameterM: number;
  /** Zones of grate that the crew speaks of, counted from the fire end. */
  readonly zones: number;
}

export interface Weather {
  readonly windMPerS: number;
  readonly gustMPerS?: number;
  /** Angle between where the wind comes from and where the firebox end looks, rad: 0 blows onto the firebox end, pi onto the stack end. */
  readonly fromFireEndRad: number;
  readonly ambientTempC: number;
  /** 0 dry, 1 full rain. */
  readonly rainFrac: number;
}

/** How far the firebox door stands open, and how far the stack damper. */
export interface Air {
  readonly doorGapM: number;
  readonly damperFrac: number;
  /** A wind screen stands before the firebox: most of the wind's push is gone there. */
  readonly screened?: boolean;
}

/** What a fire has around it; held for the whole span of an advance or a forecast. */
export interface Surroundings {
  readonly weather: Weather;
  readonly air: Air;
  /** Food on the grates, 0 none to 1 full. */
  readonly foodLoadFrac: number;
}

export type BedGrade = 'low' | 'fair' | 'full';
/** What is left of the freshest split: broken down to coals, some of it, most of it. */
export type SplitLeft = 'coals' | 'some' | 'most';
/** Where the fire lies in the firebox. */
export type FirePosition = 'door' | 'middle' | 'throat';
/** The band a pit is to be held in. */
export interface Band {
  readonly lowC: number;
  readonly highC: number;
}

/** What was done at a fire check. */
export interface WoodOn {
  readonly pieces: readonly Piece[];
  /** Raked with nothing laid; where wood is laid the coals are raked anyway, see `isRaked`. */
  readonly raked: boolean;
}
/** A split wants coals under the whole of it, so whoever lays one rakes them even first. Source: common practice, no source. */
export const isRaked = ({ pieces, raked }: WoodOn): boolean => raked || pieces.length > 0;
/** Pieces laid on at one check, at most. */
export const MOST_PIECES_LAID = 6;

/** @throws OutOfRangeError when a measure is not that of a pit this model can speak of */
export function requirePitShape(shape: PitShape): void {
  requireRange('chamber length (m)', shape.chamberLengthM, 0.4, 15);
  requireRange('chamber diameter (m)', shape.chamberDiameterM, 0.2, 3);
  requireRange('firebox length (m)', shape.fireboxLengthM, 0.2, 3);
  requireRange('firebox diameter (m)', shape.fireboxDiameterM, 0.2, 3);
  requireRange('steel thickness (m)', shape.steelThicknessM, 0.001, 0.05);
  requireRange('stack height (m)', shape.stackHeightM, 0.2, 8);
  requireRange('stack diameter (m)', shape.stackDiameterM, 0.03, 1);
  requireRange('zones', shape.zones, 1, 12);
}

/** @throws OutOfRangeError when weather, air or load cannot be */
export function requireSurroundings({ weather, air, foodLoadFrac }: Surroundings): void {
  requireRange('wind (m/s)', weather.windMPerS, 0, 60);
  requireRange('wind angle (rad)', weather.fromFireEndRad, -7, 7);
  requireRange('ambient temperature (°C)', weather.ambientTempC, -50, 60);
  requireRange('rain', weather.rainFrac, 0, 1);
  requireRange('door gap (m)', air.doorGapM, 0, 1);
  requireRange('damper', air.damperFrac, 0, 1);
  requireRange('food load', foodLoadFrac, 0, 1);
}
