import { Injectable } from '@nestjs/common';

/** Refusals that come sooner after each other are one trouble. */
const ONE_TROUBLE_MS = 60_000;

/** When the database last had no room for what was sent to it; instants by `performance.now()`. */
@Injectable()
export class WantOfRoom {
  private trouble: { firstMs: number; lastMs: number } | undefined;

  get last(): { readonly firstMs: number; readonly lastMs: number } | undefined {
    return this.trouble;
  }

  /** Something was refused for want of room, now. */
  note(): void {
    const now = performance.now();
    const goesOn = this.trouble && now - this.trouble.lastMs <= ONE_TROUBLE_MS;
    this.trouble = { firstMs: goesOn ? this.trouble!.firstMs : now, lastMs: now };
  }
}
