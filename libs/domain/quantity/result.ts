/** What happens on a good night is a value, not an exception: the caller must look at both ways. */
export type Result<T, E> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly refusal: E };

export const ok = <T>(value: T): Result<T, never> => ({ ok: true, value });
export const refuse = <E>(refusal: E): Result<never, E> => ({ ok: false, refusal });
