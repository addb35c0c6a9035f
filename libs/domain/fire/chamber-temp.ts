import { GAUGE_K } from './layout.js';

/** What the crew calls the pit's temperature: middle of the gauges at its fire end and its stack end, K. */
export const chamberK = (x: Float64Array, member: number) => 0.5 * (x[member + GAUGE_K]! + x[member + GAUGE_K + 2]!);
