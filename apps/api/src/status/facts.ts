/** Room on the disk of the data folder of one process. */
export interface DiskSeen {
  readonly usedFrac: number;
  readonly leftBytes: number;
  /** Nothing more is taken in for want of room. */
  readonly isOut: boolean;
  /** How long it is as full as that: below 80 %, up to 90 %, above; and no room at all, s. */
  readonly forS: number;
}
/** A line to something outside, as the process that holds it sees it. */
export interface LineSeen {
  readonly isThere: boolean;
  /** How long it is so, s. */
  readonly forS: number;
}
/** One process of the house, as it last said of itself. */
export interface ProcessSeen {
  readonly version: string;
  readonly runsForS: number;
  /** Since it last said so, s. */
  readonly agoS: number;
  readonly leads: boolean;
  /** By how much its machine's clock shows more than the time it goes by, since it was set while a night ran, s; and for how long, s. */
  readonly clock: { readonly aheadS: number; readonly forS: number };
  /** Of this yard. */
  readonly boards: number;
  /** Since the last beat to boards of this yard, s; undefined where none was sent. */
  readonly beatAgoS: number | undefined;
  /** Undefined where none is set, or another process holds it. */
  readonly broker: LineSeen | undefined;
  readonly redis: LineSeen | undefined;
  /** Undefined where the folder could not be looked at. */
  readonly disk: DiskSeen | undefined;
  /** Computations that were ended at a limit within the last day, the last one first. */
  readonly ended: readonly { readonly name: string; readonly agoS: number }[];
}

/** Everything the status page is judged from; all times are ages in seconds, so that no clock is compared with another. */
export interface HouseFacts {
  readonly processes: readonly ProcessSeen[];
  readonly database: {
    /** Of what is asked and kept now, the middle of the last few; undefined while it does not answer, s. */
    readonly answerS: number | undefined;
    /** How long it is so: that it answers in time, slowly, or not at all, s. */
    readonly forS: number;
    readonly sizeBytes: number | undefined;
    /** Since it last refused for want of room, and since it first did without a pause, s. */
    readonly full: { readonly lastAgoS: number; readonly forS: number } | undefined;
    readonly elsewhere: boolean;
  };
  readonly brokerIsSet: boolean;
  readonly redisIsSet: boolean;
  readonly outbox: { readonly waiting: number; readonly oldestAgoS: number | undefined };
  /** The minute of this yard; told only while a shift runs, s. */
  readonly minute: { readonly shiftRunsForS: number | undefined; readonly toldAgoS: number | undefined };
  /** Work that failed as often as it is tried. */
  readonly leftAside: { readonly count: number; readonly agoS: number | undefined };
  readonly probes: {
    readonly of: number;
    readonly silent: number;
    /** How long the first of the silent ones is silent, and since anything was read, s. */
    readonly silentForS: number | undefined;
    readonly readAgoS: number | undefined;
    readonly gateways: readonly { readonly name: string; readonly silentForS: number }[];
    readonly fireBurns: boolean;
  };
  readonly forecast: { readonly isAsked: boolean; readonly isPlaced: boolean; readonly fetchedAgoS: number | undefined; readonly failsForS: number | undefined };
  readonly webhook: { readonly isSet: boolean; readonly waiting: number; readonly oldestAgoS: number | undefined; readonly takenAgoS: number | undefined };
  readonly backup: { readonly agoS: number } | undefined;
}
