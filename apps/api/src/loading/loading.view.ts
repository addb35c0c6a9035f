import type { CookPlanView, CookSupposed, LoadingView, MoveWeighed, PitLoadingView, SetAsideView } from '@stokehold/domain/contract';
import type { Cents, EpochS } from '@stokehold/domain/quantity';
import { toIso } from '@stokehold/domain/quantity';
import { type CookPlan, type CookPlanProblem, type CookPlanWhatIf, cookPlanParameter } from '@stokehold/scheduling/cook-plan';
import type { LoadingFacts, LoadingPit, LoadingPlanned, PitLoading, SetAside } from '@stokehold/scheduling/loading';
import type { HandMoved } from '@stokehold/scheduling/placement';

const MILLION = 1e6;
const isoOrNull = (at: EpochS | undefined) => (at === undefined ? null : toIso(at));

function pitView({ pitId, problem, plan }: PitLoading, { position, longerWood }: LoadingPit): PitLoadingView {
  return {
    pitId, position,
    zones: problem.zones.map(({ id, airTempC, radiantWPerM2, fireEnd }) => ({ zone: Number(id), airTempC, radiantWPerM2, fireEnd })),
    placings: plan.placings.map(({ cookId, zoneId, pieces, offByK, comesOffAt, turnEveryS, reason, elsewhere }) => ({
      cookId, zone: Number(zoneId), pieces, offByK, comesOffAt: toIso(comesOffAt), turnEveryS: turnEveryS ?? null, reason,
      elsewhere: elsewhere.map(({ zoneId: other, moreS, hindrance }) => ({ zone: Number(other), moreS: moreS ?? null, hindrance: hindrance ?? null })),
    })),
    unplaced: plan.unplaced.map(({ cookId, pieces, hindrances }) => ({ cookId, pieces, hindrances: hindrances.map(({ zoneId, hindrance }) => ({ zone: Number(zoneId), hindrance })) })),
    handlings: plan.handlings.map((one) => ({ kind: one.kind, at: toIso(one.at), cookId: one.cookId, zone: Number(one.zoneId), withZone: one.kind === 'swap' ? Number(one.withZoneId) : null, pieces: one.pieces })),
    fireEndFree: (longerWood ? plan.fireEndFree : []).map(({ from, until }) => ({ from: toIso(from), until: toIso(until) })),
    priceS: plan.levels.priceS, boundS: plan.bound.priceS, proven: plan.proven,
  };
}

function cookPlanView(problem: CookPlanProblem, plan: CookPlan): CookPlanView {
  const tempOf = (cookId: string, way: number) => problem.cooks.find(({ id }) => id === cookId)!.ways[way]!.tempC;
  return {
    lateLimitFrac: cookPlanParameter(problem, 'lateFrac'),
    starts: plan.starts.map((one) => ({
      cookId: one.cookId, serviceId: one.serviceId, pitId: one.pitId, tempC: one.tempC, onAt: toIso(one.onAt), wrapAt: isoOrNull(one.wrapAt), latestOnAt: toIso(one.latestOnAt), offBy: toIso(one.offBy),
      likelyOffAt: toIso(one.likelyOffAt), offNotBefore: toIso(one.offNotBefore), offNotAfter: toIso(one.offNotAfter), lateFrac: one.lateMillionths / MILLION, keptTooLongS: one.keptTooLongS, reason: one.reason,
    })),
    unplaced: plan.unplaced.map(({ cookId, hindrances }) => ({ cookId, hindrances: [...hindrances] })),
    burns: plan.burns.map(({ pitId, tempC, lightAt, firstOnAt, lastOffBy, woodKg, woodCents, crewS, fullestFrac }) => ({
      pitId, tempC, lightAt: isoOrNull(lightAt), firstOnAt: toIso(firstOnAt), lastOffBy: toIso(lastOffBy), woodKg, woodCents: woodCents as Cents, crewS, fullestFrac,
    })),
    services: plan.services.map((one) => ({
      serviceId: one.serviceId, readyBy: toIso(one.readyBy), lateFrac: one.lateMillionths / MILLION, atRisk: one.atRisk, promisableAt: isoOrNull(one.promisableAt),
      help: one.help.map(({ code, cookId, start, lateMillionths, moreCents }) => ({ code, cookId, pitId: start.pitId, tempC: tempOf(cookId, start.way), onAt: toIso(start.onAt), lateFrac: lateMillionths / MILLION, moreCents })),
    })),
    crewHours: plan.crewHours.map((one) => ({ ...one, from: toIso(one.from) })),
    costCents: plan.levels.costCents, boundCents: plan.boundCents, proven: plan.proven,
  };
}

const CODES: Readonly<Partial<Record<SetAside['refusal']['code'], SetAsideView['code']>>> = {
  'service-too-early': 'service-too-early', 'piece-heavier-than-any-pit-bears': 'piece-too-heavy', 'piece-heavier-than-pit-bears': 'piece-too-heavy', 'cook-larger-than-any-pit': 'too-large',
  'piece-larger-than-any-zone': 'too-large', 'weight-not-above-zero': 'weight-not-above-zero', 'no-way': 'no-way', 'zones-overlap': 'zones-wrong', 'zone-empty': 'zones-wrong', 'no-zones': 'zones-wrong', 'too-many': 'too-many',
};

function setAsideView({ cookId, serviceId, pitId, refusal }: SetAside): SetAsideView {
  const early = refusal.code === 'service-too-early' ? refusal.services.find((one) => one.serviceId === serviceId) : undefined;
  return { cookId: cookId ?? null, serviceId: serviceId ?? null, pitId: pitId ?? null, code: CODES[refusal.code] ?? 'not-plannable', earliestAt: isoOrNull(early?.at), waitsFor: early?.why ?? null, slowest: early?.cookId ?? null };
}

/** What the screens show of the loading and the cook plan. */
export const loadingView = (planned: LoadingPlanned, facts: LoadingFacts): LoadingView => ({
  madeAt: toIso(facts.now), cookPlan: planned.cooks ? cookPlanView(planned.cooks.problem, planned.cooks.plan) : null, pits: planned.pits.map((pit) => pitView(pit, facts.pits.find(({ id }) => id === pit.pitId)!)), setAside: planned.setAside.map(setAsideView),
});

const MOVE_CODES: Readonly<Record<HandMoved['after']['violations'][number]['code'], MoveWeighed['breaks'][number]['code'] | undefined>> = {
  'unknown-cook': 'unknown', 'unknown-zone': 'unknown', 'pieces-not-whole': 'pieces-wrong', 'pieces-more-than-cook': 'pieces-wrong', 'zone-over-full': 'over-full', 'zone-over-weight': 'over-weight', 'pit-over-weight': 'over-weight',
  scorches: 'scorches', drips: 'drips', 'pieces-missing': undefined, 'turn-missing': undefined, 'turn-too-much': undefined, 'swap-of-nothing': undefined, 'wrong-fire-end': undefined, 'wrong-level': undefined, 'below-bound': undefined,
};

export const moveView = ({ moreS, moreUnplaced, after }: HandMoved): MoveWeighed => ({
  moreS: Number.isFinite(moreS) ? moreS : 0, moreUnplaced: Number.isFinite(moreUnplaced) ? moreUnplaced : 0,
  breaks: after.violations.flatMap(({ code, zoneId }) => {
    const shown = MOVE_CODES[code];
    return shown ? [{ code: shown, zone: zoneId === undefined || Number.isNaN(Number(zoneId)) ? null : Number(zoneId) }] : [];
  }),
});

const BREAKS: Readonly<Partial<Record<CookPlanWhatIf['after']['violations'][number]['code'], CookSupposed['breaks'][number]>>> = {
  'fixed-changed': 'fixed', 'before-pit-ready': 'pit-not-ready', 'pit-not-free': 'pit-not-free', 'pit-over-full': 'over-full', 'pit-over-weight': 'over-weight',
};

export const supposedView = ({ before, after, moreCents }: CookPlanWhatIf): CookSupposed => ({
  moreCents,
  services: after.services.map(({ serviceId, lateMillionths }) => ({ serviceId, beforeLateFrac: (before.services.find((one) => one.serviceId === serviceId)?.lateMillionths ?? 0) / MILLION, afterLateFrac: lateMillionths / MILLION })),
  keptTooLongS: after.levels.keptTooLongS, crewOverS: after.levels.crewOverS, breaks: [...new Set(after.violations.map(({ code }) => BREAKS[code] ?? ('other' as const)))],
});
