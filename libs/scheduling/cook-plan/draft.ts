import { addOver, crewOverS, crewThere } from './crew-hours.js';
import type { CookPlanLevels } from './plan.js';
import type { Choice, CookTable } from './table.js';

/** A plan while it is worked on: which choice each cook has, and from which step. */
export class Draft {
  readonly chosen: (Choice | undefined)[];
  readonly on: Int32Array;
  /** Cooks on each pit. */
  readonly onPit: number[][];
  private readonly there: Float64Array;
  private readonly needed: Float64Array;

  constructor(readonly table: CookTable) {
    this.chosen = table.problem.cooks.map(() => undefined);
    this.on = new Int32Array(table.problem.cooks.length);
    this.onPit = table.problem.pits.map(() => []);
    this.there = crewThere(table.problem);
    this.needed = new Float64Array(this.there.length);
  }

  put(choice: Choice, on: number): void {
    this.chosen[choice.cook] = choice;
    this.on[choice.cook] = on;
    this.onPit[choice.pit]!.push(choice.cook);
  }

  lift(cook: number): void {
    const choice = this.chosen[cook];
    if (!choice) return;
    const list = this.onPit[choice.pit]!;
    list.splice(list.indexOf(cook), 1);
    this.chosen[cook] = undefined;
  }

  copyFrom(chosen: readonly (Choice | undefined)[], on: Int32Array): void {
    for (const list of this.onPit) list.length = 0;
    for (const [cook, choice] of chosen.entries()) {
      this.chosen[cook] = choice;
      if (choice) this.onPit[choice.pit]!.push(cook);
    }
    this.on.set(on);
  }

  /** Heat, weight and grate allow it, beside what lies on the pit. */
  fits({ cook, pit, heat, steps }: Choice, on: number): boolean {
    const { cooks, pits } = this.table.problem;
    const { areaM2, bearsKg } = pits[pit]!;
    const off = on + steps;
    const list = this.onPit[pit]!;
    for (const other of list) if (this.chosen[other]!.heat !== heat) return false;
    for (let mark = -1; mark < list.length; mark++) {
      const moment = mark < 0 ? on : this.on[list[mark]!]!;
      if (moment < on || moment >= off) continue;
      let [area, mass] = [cooks[cook]!.areaM2, cooks[cook]!.massKg];
      for (const other of list) {
        if (this.on[other]! > moment || this.on[other]! + this.chosen[other]!.steps <= moment) continue;
        area += cooks[other]!.areaM2;
        mass += cooks[other]!.massKg;
      }
      if (area > areaM2 + 1e-9 || mass > bearsKg + 1e-9) return false;
    }
    return true;
  }

  /** First step and last step of a pit's food; undefined when it has none. */
  window(pit: number): readonly [first: number, last: number] | undefined {
    const list = this.onPit[pit]!;
    if (list.length === 0) return undefined;
    let [first, last] = [Infinity, -Infinity];
    for (const cook of list) {
      first = Math.min(first, this.on[cook]!);
      last = Math.max(last, this.on[cook]! + this.chosen[cook]!.steps);
    }
    return [first, last];
  }

  private burnsCents(): number {
    let cents = 0;
    for (let pit = 0; pit < this.onPit.length; pit++) {
      const window = this.window(pit);
      if (window) cents += this.table.burnCents(pit, this.chosen[this.onPit[pit]![0]!]!.heat, window[0], window[1]);
    }
    return cents;
  }

  /** Work by hour: fires kept, cooks loaded, wrapped and unloaded. */
  work(): Float64Array {
    const { problem, stepS } = this.table;
    const at = (step: number) => problem.from + step * stepS;
    this.needed.fill(0);
    for (const [p, pit] of problem.pits.entries()) {
      const window = this.window(p);
      if (!window) continue;
      const from = pit.burningAtC === undefined ? at(window[0]) - pit.warmUpS : Math.min(problem.from, at(window[0]));
      addOver(this.needed, problem.from, { from: Math.max(problem.from, from), until: at(window[1]), sPerHour: pit.crewSPerHour });
    }
    for (const [c, choice] of this.chosen.entries()) {
      if (!choice) continue;
      const cook = problem.cooks[c]!;
      const wrapAfterS = cook.ways[choice.way]!.wrapAfterS;
      const on = at(this.on[c]!);
      this.job(on, cook.loadS);
      if (wrapAfterS !== undefined) this.job(on + wrapAfterS, cook.wrapS);
      this.job(at(this.on[c]! + choice.steps), cook.unloadS);
    }
    return this.needed;
  }

  private job(from: number, lengthS: number): void {
    if (lengthS > 0 && from >= this.table.problem.from) addOver(this.needed, this.table.problem.from, { from, until: from + lengthS, sPerHour: 3600 });
  }

  crewThere(): Float64Array {
    return this.there;
  }

  levels(): CookPlanLevels {
    const { table } = this;
    let [unplaced, lateMillionths, keptTooLongS, own] = [0, 0, 0, 0];
    for (const [cook, choice] of this.chosen.entries()) {
      if (!choice) {
        unplaced += 1;
        continue;
      }
      const on = this.on[cook]!;
      lateMillionths += Math.max(0, table.lateMillionths(choice, on) - table.mayBeLateMillionths(choice));
      keptTooLongS += table.keptTooLongS(choice, on);
      own += table.ownCents(choice, on);
    }
    return {
      unplaced, lateMillionths, keptTooLongS, crewOverS: crewOverS(this.work(), this.there), costCents: own + this.burnsCents(),
    };
  }
}

/** Less than 0 when the first plan is the better one. */
export function compareLevels(one: CookPlanLevels, other: CookPlanLevels): number {
  return one.unplaced - other.unplaced || one.lateMillionths - other.lateMillionths || one.keptTooLongS - other.keptTooLongS || one.crewOverS - other.crewOverS || one.costCents - other.costCents;
}
