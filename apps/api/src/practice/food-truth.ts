import type { CookView } from '@stokehold/domain/contract';
import { type Cut, truePiece } from '@stokehold/domain/food';
import { type CookId, type EpochS, fromIso, MINUTE_S, type PitId, randomStream, type RandomStream, seedFrom } from '@stokehold/domain/quantity';

/** How far true pieces differ from the model's middle: spread of the log of a factor. Source: our own choice, as wide as the forecast thinks. */
const DIFFERS = { pace: 0.08, thick: 0.045, shape: 0.07, wet: 0.2, draught: 0.25, humid: 0.4 } as const;
/** A meat probe's noise, K. */
const PROBE_SD_K = 0.4;
/** How often the true air of a zone is noted. */
export const NOTE_EVERY_S = 5 * MINUTE_S;

interface TrueCook {
  readonly onAt: EpochS;
  readonly cut: Cut;
  readonly pieceKg: number;
  readonly traits: Partial<Record<keyof typeof DIFFERS, number>>;
  readonly airC: number[];
}

/** What the food really does on a practice night: each cook a piece of its own, in the air that its zone really has. */
export class FoodTruth {
  private readonly cooks = new Map<CookId, TrueCook>();
  private readonly noise: RandomStream;

  constructor(private readonly seed: number) {
    this.noise = randomStream(seedFrom(seed, 'meat probes'));
  }

  /** Notes the air of each cook that lies on a pit; asked every `NOTE_EVERY_S`. A cook of an unknown cut has no truth. */
  note(cooks: readonly CookView[], cutOf: (cook: CookView) => Cut | undefined, zoneTempC: (pitId: PitId, zone: number) => number | undefined): void {
    for (const cook of cooks) {
      const lie = cook.lies[0];
      const cut = cutOf(cook);
      const airC = lie && zoneTempC(lie.pitId, lie.zone);
      if (!cut || cook.onAt === null || cook.offAt !== null || airC === undefined) continue;
      const known = this.cooks.get(cook.id) ?? { onAt: fromIso(cook.onAt), cut, pieceKg: cook.weightKg / cook.pieces, traits: this.traitsOf(cook), airC: [] };
      known.airC.push(airC);
      this.cooks.set(cook.id, known);
    }
  }

  /** What a probe in the core of each cook shows now. */
  shown(cooks: readonly CookView[], now: EpochS): { readonly cookId: CookId; readonly tempC: number }[] {
    return cooks.flatMap(({ id, offAt, lies }) => {
      const own = this.cooks.get(id);
      if (!own || offAt !== null || lies.length === 0) return [];
      const { readings } = truePiece({ cut: own.cut, pieceKg: own.pieceKg, onAt: own.onAt, air: { from: own.onAt, stepS: NOTE_EVERY_S, tempC: own.airC }, seed: 1 }, own.traits, 60);
      const last = readings.filter(({ at }) => at <= now).at(-1);
      return last ? [{ cookId: id, tempC: Math.round((last.tempC + PROBE_SD_K * this.noise.normal()) * 10) / 10 }] : [];
    });
  }

  private traitsOf(cook: CookView): TrueCook['traits'] {
    const random = randomStream(seedFrom(this.seed, 'food', cook.cut, cook.weightKg, cook.pieces));
    return Object.fromEntries(Object.entries(DIFFERS).map(([trait, sd]) => [trait, sd * random.normal()]));
  }
}
