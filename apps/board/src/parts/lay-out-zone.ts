export interface Spot {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** More pieces than this are not told apart from across a yard. */
export const MOST_DRAWN = 12;

/** Spots for the pieces of one zone: two rows, three for many; as large as the room allows, filled from the fire end. */
export function layOutZone(pieces: number, room: Spot): readonly Spot[] {
  const drawn = Math.min(pieces, MOST_DRAWN);
  if (drawn <= 0) return [];
  const rows = drawn > 8 ? 3 : drawn > 1 ? 2 : 1;
  const columns = Math.ceil(drawn / rows);
  const pitch = room.width / Math.max(columns, 2);
  const gap = Math.min(5, pitch * 0.14);
  const tall = room.height / Math.max(rows, 2);
  return Array.from({ length: drawn }, (_, n) => ({
    x: room.x + Math.floor(n / rows) * pitch + gap / 2,
    y: room.y + (n % rows) * tall + tall * 0.06,
    width: pitch - gap,
    height: tall * 0.88,
  }));
}
