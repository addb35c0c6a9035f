import { Injectable } from '@nestjs/common';
import type { RandomStream } from '@stokehold/domain/quantity';
import { v7 } from 'uuid';

/** New ids, in the order of time. A practice night hands in its own stream, so that the same seed makes the same rows. */
@Injectable()
export class Ids {
  private stream?: { random: RandomStream; made: number };

  next<I extends string = string>(): I {
    if (!this.stream) return v7() as I;
    const { random, made } = this.stream;
    this.stream.made = made + 1;
    return v7({ msecs: made, random: Uint8Array.from({ length: 16 }, () => random.below(256)) }) as I;
  }

  fromNowOnBy(random: RandomStream): void {
    this.stream = { random, made: 0 };
  }
}
