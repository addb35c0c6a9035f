interface Board {
  /** The last number heard, how many changes, how many numbers were missing, how often it came in, and when it heard something last by `performance.now()`. */
  readonly heard: { readonly seq: number; readonly changes: number; readonly gaps: number; readonly opened: number; readonly lastMs: number };
  close(): void;
}
export declare function openBoards(
  base: string,
  town: readonly { readonly boards: readonly Record<string, string>[] }[],
  onCheck: (pitId: string) => void,
): { readonly all: readonly Board[]; open(): number; close(): void };
