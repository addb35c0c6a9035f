export type { LoadingCook, LoadingFacts, LoadingPit } from './facts.js';
export { planLoading } from './plan-loading.js';
export type { LoadingPlanned, PitLoading, SetAside } from './plan-loading.js';
