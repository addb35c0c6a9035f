import { ok, refuse, type PersonId, type PitId, type Result, type TaskId } from '@stokehold/domain/quantity';
import { firstWrong, outOfRange } from '../search/index.js';
import { PARAMETERS, workKey, type RoundParameters, type RoundPerson, type RoundPit, type RoundProblem, type RoundTask, type Work } from './problem.js';

/** Why a problem is no problem; `where` names the part that has to be mended. */
export type RoundRefusal =
  | { readonly code: 'horizon-empty'; readonly where: 'until' }
  | { readonly code: 'not-whole-seconds'; readonly where: string }
  | { readonly code: 'same-id-twice'; readonly where: string }
  | { readonly code: 'unknown-place'; readonly where: string }
  | { readonly code: 'walking-table-not-square'; readonly where: 'walkS' }
  | { readonly code: 'walking-negative'; readonly where: string }
  | { readonly code: 'shift-empty'; readonly personId: PersonId }
  | { readonly code: 'shifts-overlap'; readonly personId: PersonId }
  | { readonly code: 'absence-backwards'; readonly personId: PersonId }
  | { readonly code: 'break-outside-shift'; readonly personId: PersonId; readonly breakId: string }
  | { readonly code: 'break-backwards'; readonly personId: PersonId; readonly breakId: string }
  | { readonly code: 'windows-out-of-order'; readonly pitId?: PitId; readonly taskId?: TaskId }
  | { readonly code: 'length-out-of-range'; readonly where: string }
  | { readonly code: 'weight-out-of-range'; readonly where: string }
  | { readonly code: 'too-many-checks'; readonly pitId: PitId }
  | { readonly code: 'parameter-out-of-range'; readonly where: keyof RoundParameters }
  | { readonly code: 'unknown-person'; readonly where: string }
  | { readonly code: 'unknown-work'; readonly where: string }
  | { readonly code: 'frozen-overlaps'; readonly where: string }
  | { readonly code: 'frozen-out-of-order'; readonly where: string }
  | { readonly code: 'pin-against-rule'; readonly where: string; readonly rule: 'skill' | 'shift' | 'people' | 'earliest' | 'break-owner' | 'twice' };

const MAX_LENGTH_S = 4 * 3600;
const MAX_CHECKS_PER_PIT = 500;
const LEAST_STRETCH_S = 600;
const MOST_STRETCH_S = 16 * 3600;

/**
 * A problem that the planner and its checker can trust, or the first thing wrong with it by name. An impossible night is
 * no refusal: it gets a partial plan. Held to libs/scheduling/rounds/validate.test.ts.
 */
export function validateRounds(problem: RoundProblem): Result<RoundProblem, RoundRefusal> {
  const refusal =
    numbersOf(problem) ?? placesOf(problem) ?? idsOf(problem) ?? firstWrong(problem.people, personOf) ??
    firstWrong(problem.pits, (pit) => pitOf(pit, problem)) ?? firstWrong(problem.tasks, taskOf) ?? parametersOf(problem) ?? frozenOf(problem) ?? firstWrong(problem.pins, (pin) => pinOf(pin, problem)) ??
    pinnedTwice(problem);
  return refusal ? refuse(refusal) : ok(problem);
}

type Found = RoundRefusal | undefined;

/** Every number of the problem is a whole one, wherever it stands; parameters may be fractions. */
function numbersOf(problem: RoundProblem): Found {
  const { parameters: _parameters, ...rest } = problem;
  const where = notWhole(rest, '');
  if (where !== undefined) return { code: 'not-whole-seconds', where };
  return problem.until > problem.from ? undefined : { code: 'horizon-empty', where: 'until' };
}

function notWhole(value: unknown, path: string): string | undefined {
  if (typeof value === 'number') return Number.isSafeInteger(value) ? undefined : path;
  if (typeof value !== 'object' || value === null) return undefined;
  for (const [key, inner] of Object.entries(value)) {
    const found = notWhole(inner, path === '' ? key : `${path}.${key}`);
    if (found !== undefined) return found;
  }
  return undefined;
}

function placesOf({ places, walkS, people, pits, tasks }: RoundProblem): Found {
  if (walkS.length !== places.length || walkS.some((row) => row.length !== places.length)) return { code: 'walking-table-not-square', where: 'walkS' };
  for (const [from, row] of walkS.entries()) {
    const to = row.findIndex((walk, i) => walk < 0 || (i === from && walk !== 0));
    if (to >= 0) return { code: 'walking-negative', where: `walkS.${from}.${to}` };
  }
  const used: readonly (readonly [string, string])[] = [
    ...people.map((person) => [`people.${person.id}`, person.atPlace] as const),
    ...pits.map((pit) => [`pits.${pit.id}`, pit.place] as const),
    ...tasks.map((task) => [`tasks.${task.id}`, task.place] as const),
  ];
  return firstWrong(used, ([where, place]) => (places.includes(place) ? undefined : { code: 'unknown-place', where }));
}

function idsOf({ places, people, pits, tasks }: RoundProblem): Found {
  const twice = (ids: readonly string[]) => ids.find((id, i) => ids.indexOf(id) !== i);
  const shifts = twice(people.map((person) => person.id));
  if (shifts !== undefined) {
    const [one, other] = people.filter((person) => person.id === shifts);
    const overlap = one !== undefined && other !== undefined && one.startsAt < other.endsAt && other.startsAt < one.endsAt;
    return overlap ? { code: 'shifts-overlap', personId: one.id } : { code: 'same-id-twice', where: `people.${shifts}` };
  }
  const again = twice(places) ?? twice(pits.map((pit) => pit.id)) ?? twice(tasks.map((task) => task.id)) ?? twice(people.flatMap((person) => person.breaks.map((rest) => rest.id)));
  return again === undefined ? undefined : { code: 'same-id-twice', where: again };
}

function personOf(person: RoundPerson): Found {
  if (person.endsAt <= person.startsAt) return { code: 'shift-empty', personId: person.id };
  if (person.stretchS !== undefined && (person.stretchS < LEAST_STRETCH_S || person.stretchS > MOST_STRETCH_S)) return { code: 'length-out-of-range', where: `people.${person.id}.stretchS` };
  if (person.absent?.some((absence) => absence.until < absence.from)) return { code: 'absence-backwards', personId: person.id };
  return firstWrong(person.breaks, (rest) => {
    const named = { personId: person.id, breakId: rest.id };
    if (rest.lengthS < 0 || rest.lengthS > MAX_LENGTH_S || rest.latestAt < rest.earliestAt) return { code: 'break-backwards', ...named };
    const outside = rest.startedAt === undefined && (rest.earliestAt < person.startsAt || rest.latestAt + rest.lengthS > person.endsAt);
    return outside ? { code: 'break-outside-shift', ...named } : undefined;
  });
}

const lengthOk = (lengthS: number) => lengthS >= 1 && lengthS <= MAX_LENGTH_S;
const weightOk = (weight: number) => weight >= 1 && weight <= 9;

function pitOf(pit: RoundPit, problem: RoundProblem): Found {
  const { first: window, gap } = pit;
  const inOrder = window.earliestAt <= window.dueAt && window.dueAt <= window.latestSafeAt && gap.earliestS >= 0 && gap.earliestS < gap.dueS && gap.dueS <= gap.latestSafeS;
  if (!inOrder) return { code: 'windows-out-of-order', pitId: pit.id };
  if (!lengthOk(pit.checkS)) return { code: 'length-out-of-range', where: `pits.${pit.id}.checkS` };
  if (!weightOk(pit.weight)) return { code: 'weight-out-of-range', where: `pits.${pit.id}.weight` };
  const spanS = (pit.keepUntil ?? problem.until) - problem.from;
  return spanS / gap.dueS > MAX_CHECKS_PER_PIT ? { code: 'too-many-checks', pitId: pit.id } : undefined;
}

function taskOf(task: RoundTask): Found {
  if (task.dueAt < task.earliestAt || task.latestAt < task.dueAt) return { code: 'windows-out-of-order', taskId: task.id };
  if (!lengthOk(task.lengthS)) return { code: 'length-out-of-range', where: `tasks.${task.id}.lengthS` };
  return weightOk(task.weight ?? 1) ? undefined : { code: 'weight-out-of-range', where: `tasks.${task.id}.weight` };
}

function parametersOf({ parameters }: RoundProblem): Found {
  const name = outOfRange(PARAMETERS, parameters);
  return name && { code: 'parameter-out-of-range', where: name };
}

/** What the problem says of a piece of work, or nothing if it does not know it. */
function rulesOf(work: Work, { people, pits, tasks }: RoundProblem) {
  if (work.kind === 'check') {
    const pit = pits.find((one) => one.id === work.pitId);
    return pit && work.nth >= (pit.firstNth ?? 1) ? { needs: 1, skill: pit.skill, earliestAt: undefined, owner: undefined } : undefined;
  }
  if (work.kind === 'task') {
    const task = tasks.find((one) => one.id === work.taskId);
    return task && { needs: task.people, skill: task.skill, earliestAt: task.earliestAt, owner: undefined };
  }
  const owner = people.find((person) => person.breaks.some((rest) => rest.id === work.breakId));
  const rest = owner?.breaks.find((one) => one.id === work.breakId);
  return owner && rest && { needs: 1, skill: undefined, earliestAt: rest.earliestAt, owner: owner.id };
}

function frozenOf(problem: RoundProblem): Found {
  const found = firstWrong(problem.frozen, (frozen): Found => {
    const where = workKey(frozen.work);
    if (!rulesOf(frozen.work, problem)) return { code: 'unknown-work', where };
    if (frozen.endsAt <= frozen.startsAt) return { code: 'length-out-of-range', where };
    return frozen.personIds.every((id) => problem.people.some((person) => person.id === id)) && frozen.personIds.length > 0 ? undefined : { code: 'unknown-person', where };
  });
  if (found) return found;
  const gapBefore = firstWrong(problem.pits, (pit): Found => {
    const nths = problem.frozen.flatMap(({ work }) => (work.kind === 'check' && work.pitId === pit.id ? [work.nth] : [])).sort((a, b) => a - b);
    const wrong = nths.find((nth, i) => nth !== (pit.firstNth ?? 1) + i);
    return wrong === undefined ? undefined : { code: 'frozen-out-of-order', where: `check/${pit.id}/${wrong}` };
  });
  if (gapBefore) return gapBefore;
  for (const [i, one] of problem.frozen.entries()) {
    for (const other of problem.frozen.slice(i + 1)) {
      const meet = one.startsAt < other.endsAt && other.startsAt < one.endsAt && one.personIds.some((id) => other.personIds.includes(id));
      if (meet || workKey(one.work) === workKey(other.work)) return { code: 'frozen-overlaps', where: workKey(other.work) };
    }
  }
  return undefined;
}

function pinOf(pin: RoundProblem['pins'][number], problem: RoundProblem): Found {
  const where = workKey(pin.work);
  const rules = rulesOf(pin.work, problem);
  if (!rules) return { code: 'unknown-work', where };
  const people = (pin.personIds ?? []).map((id) => problem.people.find((person) => person.id === id));
  if (people.includes(undefined)) return { code: 'unknown-person', where };
  if (pin.personIds && (new Set(pin.personIds).size !== rules.needs || pin.personIds.length !== rules.needs)) return { code: 'pin-against-rule', where, rule: 'people' };
  if (rules.owner !== undefined && pin.personIds && pin.personIds[0] !== rules.owner) return { code: 'pin-against-rule', where, rule: 'break-owner' };
  if (rules.skill !== undefined && people.some((person) => !person?.skills.includes(rules.skill ?? ''))) return { code: 'pin-against-rule', where, rule: 'skill' };
  const at = pin.startsAt;
  if (at === undefined) return undefined;
  if (rules.earliestAt !== undefined && at < rules.earliestAt) return { code: 'pin-against-rule', where, rule: 'earliest' };
  return people.some((person) => person && (at < person.startsAt || at >= person.endsAt)) ? { code: 'pin-against-rule', where, rule: 'shift' } : undefined;
}

function pinnedTwice({ pins }: RoundProblem): Found {
  const keys = pins.map((pin) => workKey(pin.work));
  const again = keys.find((key, i) => keys.indexOf(key) !== i);
  return again === undefined ? undefined : { code: 'pin-against-rule', where: again, rule: 'twice' };
}
