/** Since when something is as it is: instants by a steady clock, in ms. */
export class Lasting<T> {
  private held: { readonly value: T; readonly sinceMs: number } | undefined;

  /** It is so at this instant; gives since when it is, s. */
  at(nowMs: number, value: T): number {
    if (this.held?.value !== value) this.held = { value, sinceMs: nowMs };
    return (nowMs - this.held.sinceMs) / 1000;
  }
}
