import type { EpochS, LotId, PitId } from '@stokehold/domain/quantity';

/** Splits of one pile for one load. */
export interface LoadWood {
  readonly pileId: string;
  readonly lotId: LotId;
  /** Offcuts of the lot, taken along by whoever lights or tends. */
  readonly isOffcut: boolean;
  readonly pieces: number;
  readonly way: 'as-is' | 'trimmed';
  readonly cuts: number;
  readonly offcuts: number;
}

/** What goes on one pit's cart at one time, for the hours it is meant for. */
export interface CartLoad {
  readonly pitId: PitId;
  readonly from: EpochS;
  readonly until: EpochS;
  /** In order of pile. */
  readonly wood: readonly LoadWood[];
  readonly heatJ: number;
  /** Missing of the need, and of the reserve, at the end of these hours: counted from the night's start. */
  readonly shortJ: number;
  readonly reserveShortJ: number;
  /** Heat of the wrong species beside the kitchen's wish. */
  readonly mixOffJ: number;
}

/** Wood to bring to a pit's cart: a task of the rounds. */
export interface Haul {
  readonly pitId: PitId;
  /** Index of the load in `loads`. */
  readonly load: number;
  readonly pieces: number;
  readonly fromPlaces: readonly string[];
  /** Ways to walk there and back, laying on and taking off. */
  readonly lengthS: number;
  readonly earliestAt: EpochS;
  readonly dueAt: EpochS;
  /** Later than this the cart may be empty before the wood is there. */
  readonly latestAt: EpochS;
}

/** What a plan is worth: its parts, and their sum in mills. */
export interface PullWorth {
  readonly shortJ: number;
  readonly reserveShortJ: number;
  readonly mixOffJ: number;
  /** Mean wetness of the wettest pit, thousandths above good wood, rounded up. */
  readonly worstWetPoints: number;
  /** Price of the wood, its trimming and its way, mills. */
  readonly woodMills: number;
  /** Splits of lots that their pits were not told of. */
  readonly changedPieces: number;
  readonly totalMills: number;
}

export interface PullPlan {
  /** In order of pit, then of time. */
  readonly loads: readonly CartLoad[];
  readonly hauls: readonly Haul[];
  readonly worth: PullWorth;
  /** No plan can cost less, mills. */
  readonly boundMills: number;
  /** (total - bound) / total; 0 proves it best. */
  readonly gapFrac: number;
}

/** One pit told otherwise than before. */
export interface PullChange {
  readonly pitId: PitId;
  readonly lotId: LotId;
  readonly piecesBefore: number;
  readonly piecesAfter: number;
  readonly because: 'burns-more' | 'burns-less' | 'mix-asked' | 'stock-changed' | 'made-room';
}
