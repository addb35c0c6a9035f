// Loaded before the program: its clock shows so many milliseconds more than the machine's as FAULTS_CLOCK says, read anew on SIGUSR2.
import { readFileSync } from 'node:fs';

const Machine = Date;
let aheadMs = 0;
process.on('SIGUSR2', () => (aheadMs = Number(readFileSync(process.env.FAULTS_CLOCK, 'utf8'))));

globalThis.Date = class Date extends Machine {
  constructor(...given) {
    if (given.length === 0) super(Machine.now() + aheadMs);
    else super(...given);
  }
  static now() {
    return Machine.now() + aheadMs;
  }
};
