/** Mean width of a letter of Barlow Semi Condensed 600 over its font size; our own measure of the names of trees. */
const LETTER_EM = 0.485;

interface FitName {
  readonly name: string;
  readonly roomPx: number;
  readonly wantedPx: number;
  readonly leastPx: number;
}

/** The font size at which a name fits its room: as wanted, or less, but never under what can be read. */
export const fitNamePx = ({ name, roomPx, wantedPx, leastPx }: FitName): number =>
  Math.round(Math.min(wantedPx, Math.max(leastPx, roomPx / (LETTER_EM * Math.max(1, name.length)))));
