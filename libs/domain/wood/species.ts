/** The hardwoods a yard is likely to burn. */
export const SPECIES = [
  'shagbark-hickory', 'pecan', 'white-oak', 'red-oak', 'post-oak', 'live-oak', 'sugar-maple', 'black-cherry', 'white-ash', 'beech',
  'red-alder', 'apple', 'mesquite',
] as const;
export type Species = (typeof SPECIES)[number];

/** What the handbook prints for a species. */
export interface SpeciesValues {
  /** Basic specific gravity: dry mass over green volume, over that of water. */
  readonly basicGravity: number;
  /** Volume lost from green to bone dry, per cent of the green volume. */
  readonly shrinkagePercent: number;
}

/**
 * Basic specific gravity from [FPL-GTR-190] Table 5-3, volumetric shrinkage from its Table 4-3. The gravity of apple and
 * mesquite is uncertain (mesquite 0.58 to 0.80); shrinkage of apple and mesquite from memory. Within one species the
 * density of single trees varies by about 10 % (coefficient of variation, same chapter).
 */
export const SPECIES_VALUES: Readonly<Record<Species, SpeciesValues>> = {
  'shagbark-hickory': { basicGravity: 0.64, shrinkagePercent: 16.7 },
  pecan: { basicGravity: 0.6, shrinkagePercent: 13.6 },
  'white-oak': { basicGravity: 0.6, shrinkagePercent: 16.3 },
  'red-oak': { basicGravity: 0.56, shrinkagePercent: 13.7 },
  'post-oak': { basicGravity: 0.6, shrinkagePercent: 16.2 },
  'live-oak': { basicGravity: 0.8, shrinkagePercent: 14.7 },
  'sugar-maple': { basicGravity: 0.56, shrinkagePercent: 14.7 },
  'black-cherry': { basicGravity: 0.47, shrinkagePercent: 11.5 },
  'white-ash': { basicGravity: 0.55, shrinkagePercent: 13.3 },
  beech: { basicGravity: 0.56, shrinkagePercent: 17.2 },
  'red-alder': { basicGravity: 0.37, shrinkagePercent: 12.6 },
  apple: { basicGravity: 0.61, shrinkagePercent: 17 },
  mesquite: { basicGravity: 0.7, shrinkagePercent: 5 },
};
