/** What varies from cook to cook and is learned, each as the log of a factor on the model's own value. */
export const LEARNED_KEYS = ['pace', 'wet', 'thick'] as const;
export type LearnedKey = (typeof LEARNED_KEYS)[number];

/** A normal belief about one effect: mean and variance of a log factor. */
export interface Effect {
  readonly mean: number;
  readonly variance: number;
}
/** Effects of one cut in all pits, or of one pit on all cuts. */
export interface Effects {
  /** Finished cooks it rests on. */
  readonly cooks: number;
  readonly of: Readonly<Record<LearnedKey, Effect>>;
}
/** What a yard has learned about this cut and about this pit; a cook's factor is their product and its own. */
export interface Learned {
  readonly cut: Effects;
  readonly pit: Effects;
}
