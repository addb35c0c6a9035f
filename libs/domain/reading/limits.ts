/** Where a probe is: at grate height in a chamber, or in a piece of meat. */
export type ProbeUse = 'chamber' | 'food';

/** What a probe of one use can show, and how fast, before it is doubted. */
export interface SignalLimits {
  /** Outside these the sensor does not work, °C. */
  readonly leastC: number;
  readonly mostC: number;
  /** Above this it may be right but is unusual, °C. */
  readonly usualMostC: number;
  /** K/s. */
  readonly suspectKPerS: number;
  readonly badKPerS: number;
  /** A lone leap of more than this between samples 10 s apart, K. */
  readonly spikeK: number;
  /** The same value to the last digit for so long, and in so many samples. */
  readonly stillSuspectS: number;
  /** Absent where a signal that stands still may be what there is to see. */
  readonly stillBadS?: number;
  /** Below this a chamber is cold and may stand still, °C. */
  readonly stillAboveC: number;
  /** A probe whose signal was always this still is not doubted for standing still, K. */
  readonly stillNoiseK: number;
  /** Standard deviation from sample to sample, K. */
  readonly noisyK: number;
}

/**
 * A chamber over a fire never stands still; a piece of meat that stalls does, for hours: there only a signal that lost its noise is
 * doubted, and never more than doubted. Source: our own choice, after the tests of [QARTOD]; figures as in the rows of practice for
 * chamber and food probes read every ten seconds.
 */
export const SIGNAL_LIMITS: Readonly<Record<ProbeUse, SignalLimits>> = {
  chamber: {
    leastC: -40, mostC: 650, usualMostC: 350, suspectKPerS: 2, badKPerS: 10, spikeK: 5, stillSuspectS: 600, stillBadS: 1200, stillAboveC: 60, stillNoiseK: 0, noisyK: 3,
  },
  food: {
    leastC: -20, mostC: 150, usualMostC: 102, suspectKPerS: 0.1, badKPerS: 5, spikeK: 2, stillSuspectS: 1800, stillAboveC: -20, stillNoiseK: 0.04, noisyK: 1,
  },
};

/** Fewer identical samples than these are chance where a probe is read seldom and coarsely. */
export const STILL_SUSPECT_SAMPLES = 10;
/** And fewer than these, before such a probe is bad. */
export const STILL_BAD_SAMPLES = 20;
/** The limits of leaps are for samples this far apart; ones further apart may differ by more, s. */
export const SAMPLE_S = 10;
/** After a gap of more than this, a sample is compared with nothing, s. */
export const GAP_S = 300;
/** A leap that no thing of its mass makes is doubted for so long before the new level is taken as it is, s. */
export const LEAP_HELD_S = 600;
/** How far back noise is remembered, s. */
export const NOISE_OVER_S = 300;
/** Samples further apart than this say nothing of noise, s. */
export const NOISE_GAP_S = 60;
