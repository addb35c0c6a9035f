import type { CookView } from '@stokehold/domain/contract';
import { type Cut, SPREAD, type Trait, truePiece } from '@stokehold/domain/food';
import { type CookId, type EpochS, fromIso, MINUTE_S, type PitId, randomStream, type RandomStream, seedFrom } from '@stokehold/domain/quantity';

/** True pieces differ from the model's middle in everything in which the forecast thinks that they may, and as widely. Source: our own choice. */
const { airLean: _ofTheForecastAlone, ...DIFFERS } = SPREAD;
/** A meat probe's noise, K. */
const PROBE_SD_K = 0.4;
/** How often the true air of a zone is noted. */
export const NOTE_EVERY_S = 5 * MINUTE_S;

interface TrueCook {
  readonly onAt: EpochS;
  readonly cut: Cut;
  readonly pieceKg: number;
  readonly traits: Partial<Record<Trait, number>>;
  readonly airC: number[];
  lies: CookView['lies'][number];
}

/** What the food really does on a practice night: each cook a piece of its own, in the air that its zone really has. */
export class FoodTruth {
  private readonly cooks = new Map<CookId, TrueCook>();
  private readonly noise: RandomStream;

  constructor(private readonly seed: number) {
    this.noise = randomStream(seedFrom(seed, 'meat probes'));
  }

  /**
   * Notes the air of each cook that lies on a pit, and of one that came off the air where it lay: when it would have been done there.
   * Asked every `NOTE_EVERY_S`. A cook of an unknown cut has no truth.
   */
  note(cooks: readonly CookView[], cutOf: (cook: CookView) => Cut | undefined, zoneTempC: (pitId: PitId, zone: number) => number | undefined): void {
    for (const cook of cooks) {
      const lies = cook.lies[0] ?? this.cooks.get(cook.id)?.lies;
      const cut = cutOf(cook);
      const airC = lies && zoneTempC(lies.pitId, lies.zone);
      if (!lies || !cut || cook.onAt === null || airC === undefined) continue;
      const known: TrueCook = this.cooks.get(cook.id) ?? { onAt: fromIso(cook.onAt), cut, pieceKg: cook.weightKg / cook.pieces, traits: this.traitsOf(cook), airC: [], lies };
      known.airC.push(airC);
      known.lies = lies;
      this.cooks.set(cook.id, known);
    }
  }

  /** When a cook was truly done, or would have been where it lay; the last air holds. */
  doneAt(cookId: CookId): EpochS | undefined {
    const own = this.cooks.get(cookId);
    return own && pieceOf(own).doneAt;
  }

  /** What a probe in the core of each cook shows now. */
  shown(cooks: readonly CookView[], now: EpochS): { readonly cookId: CookId; readonly tempC: number }[] {
    return cooks.flatMap(({ id, offAt, lies }) => {
      const own = this.cooks.get(id);
      if (!own || offAt !== null || lies.length === 0) return [];
      const { readings } = pieceOf(own);
      const last = readings.filter(({ at }) => at <= now).at(-1);
      return last ? [{ cookId: id, tempC: Math.round((last.tempC + PROBE_SD_K * this.noise.normal()) * 10) / 10 }] : [];
    });
  }

  private traitsOf(cook: CookView): TrueCook['traits'] {
    const random = randomStream(seedFrom(this.seed, 'food', cook.cut, cook.weightKg, cook.pieces));
    return Object.fromEntries(Object.entries(DIFFERS).map(([trait, sd]) => [trait, sd * random.normal()]));
  }
}

const pieceOf = ({ cut, pieceKg, onAt, airC, traits }: TrueCook) => truePiece({ cut, pieceKg, onAt, air: { from: onAt, stepS: NOTE_EVERY_S, tempC: airC }, seed: 1 }, traits, 60);
