/** Under which the cache holds who is looking. */
export const ME = ['me'] as const;
/** Under which the cache holds everything that a board shows. */
export const STATE = ['state'] as const;
