export type {
  Absence, BreakWindow, FrozenWork, Pin, RoundParameters, RoundPerson, RoundPit, RoundProblem, RoundTask, Work, WorkPromise,
} from './problem.js';
export { PARAMETERS, parameter, workKey } from './problem.js';
export type {
  Assignment, AssignmentReason, Bound, ChangeCause, Hindrance, Levels, LoadHour, LoadMend, PlanChange, PlanResult, Repair, Round,
  RoundPlan, UnplacedReason,
} from './plan.js';
export { validateRounds } from './validate.js';
export type { RoundRefusal } from './validate.js';
export { boundOf } from './bound.js';
export { checkRounds } from './checker.js';
export type { Violation } from './checker.js';
export { dispatchRounds } from './dispatch-rounds.js';
export { loadOf } from './load.js';
export { roundsOf } from './rounds-of.js';
export { generatedNight } from './generated-night.js';
export type { GeneratedNight } from './generated-night.js';
export { planRounds } from './plan-rounds.js';
export type { PlanOptions } from './plan-rounds.js';
export { planYards } from './yards.js';
export type { YardNight, YardOptions } from './yards.js';
export { changesBetween, promisesOf } from './changes.js';
export { repairRounds, worthRepair } from './repair.js';
export type { RepairWorth } from './repair.js';
// answers
export { isBetter } from './answers/better.js';
export type { AnswerOptions } from './answers/answered.js';
export { hindrance, hindrances } from './answers/hinders.js';
export { levelsApart } from './answers/levels-apart.js';
export type { LevelCost } from './answers/levels-apart.js';
export { whatIf } from './answers/what-if.js';
export type { WhatIf } from './answers/what-if.js';
export { whyNot } from './answers/why-not.js';
export type { Relaxation, WhyNot } from './answers/why-not.js';
export { whyPerson } from './answers/why-person.js';
export type { Alternative, WhyPerson } from './answers/why-person.js';
