import { z } from 'zod';
import { frac, instant } from './field.js';

/** How a part of the house stands: it does its work, does it badly or not much longer, does not, or was never asked to. */
export const PART_STATES = ['down', 'limps', 'works', 'unused'] as const;
export type PartState = (typeof PART_STATES)[number];

/** What the status page looks at, in the order in which a night leans on it. */
export const HOUSE_PARTS = ['database', 'disk', 'outbox', 'tick', 'clock', 'push', 'computations', 'probes', 'broker', 'forecast', 'webhook', 'backup', 'redis', 'processes'] as const;
export type HousePart = (typeof HOUSE_PARTS)[number];

/** Everything that may be found of a part, and what it says of its state. What it means and what to do stands in words under the same name. */
export const FINDINGS = {
  'database-answers': { part: 'database', state: 'works' },
  'database-slow': { part: 'database', state: 'limps' },
  'database-full': { part: 'database', state: 'down' },
  'database-away': { part: 'database', state: 'down' },
  'disk-room': { part: 'disk', state: 'works' },
  'disk-filling': { part: 'disk', state: 'limps' },
  'disk-nearly-full': { part: 'disk', state: 'limps' },
  'disk-full': { part: 'disk', state: 'down' },
  'disk-unread': { part: 'disk', state: 'limps' },
  'outbox-empty': { part: 'outbox', state: 'works' },
  'outbox-behind': { part: 'outbox', state: 'limps' },
  'outbox-stuck': { part: 'outbox', state: 'down' },
  'tick-told': { part: 'tick', state: 'works' },
  'tick-rests': { part: 'tick', state: 'works' },
  'tick-late': { part: 'tick', state: 'down' },
  'nobody-leads': { part: 'tick', state: 'limps' },
  'clock-steady': { part: 'clock', state: 'works' },
  'clock-held': { part: 'clock', state: 'limps' },
  'push-beats': { part: 'push', state: 'works' },
  'push-nobody': { part: 'push', state: 'works' },
  'push-silent': { part: 'push', state: 'down' },
  'computations-end': { part: 'computations', state: 'works' },
  'computations-ended': { part: 'computations', state: 'limps' },
  'work-left-aside': { part: 'computations', state: 'limps' },
  'probes-none': { part: 'probes', state: 'unused' },
  'probes-read': { part: 'probes', state: 'works' },
  'probes-rest': { part: 'probes', state: 'works' },
  'probes-some-silent': { part: 'probes', state: 'limps' },
  'gateways-silent': { part: 'probes', state: 'limps' },
  'probes-silent': { part: 'probes', state: 'down' },
  'broker-none': { part: 'broker', state: 'unused' },
  'broker-there': { part: 'broker', state: 'works' },
  'broker-away': { part: 'broker', state: 'down' },
  'forecast-none': { part: 'forecast', state: 'unused' },
  'forecast-unplaced': { part: 'forecast', state: 'unused' },
  'forecast-waited-for': { part: 'forecast', state: 'limps' },
  'forecast-known': { part: 'forecast', state: 'works' },
  'forecast-ageing': { part: 'forecast', state: 'limps' },
  'forecast-away': { part: 'forecast', state: 'down' },
  'webhook-none': { part: 'webhook', state: 'unused' },
  'webhook-takes': { part: 'webhook', state: 'works' },
  'webhook-untried': { part: 'webhook', state: 'works' },
  'webhook-behind': { part: 'webhook', state: 'limps' },
  'webhook-silent': { part: 'webhook', state: 'down' },
  'backup-taken': { part: 'backup', state: 'works' },
  'backup-old': { part: 'backup', state: 'limps' },
  'backup-never': { part: 'backup', state: 'limps' },
  'redis-none': { part: 'redis', state: 'unused' },
  'redis-answers': { part: 'redis', state: 'works' },
  'redis-away': { part: 'redis', state: 'limps' },
  'one-process': { part: 'processes', state: 'works' },
  'several-processes': { part: 'processes', state: 'works' },
  'process-fell-silent': { part: 'processes', state: 'limps' },
  'versions-differ': { part: 'processes', state: 'limps' },
} as const satisfies Readonly<Record<string, { readonly part: HousePart; readonly state: PartState }>>;
export type Finding = keyof typeof FINDINGS;

/** What a finding speaks of; each finding has its own few. */
export const findingFigures = z.object({
  count: z.number().int().optional(),
  of: z.number().int().optional(),
  /** How full. */
  usedFrac: frac.optional(),
  leftBytes: z.number().optional(),
  sizeBytes: z.number().optional(),
  answerS: z.number().optional(),
  /** By how much the machine's clock shows more than the time that the house goes by; negative: less. */
  aheadS: z.number().int().optional(),
  /** When it last did its work. */
  lastAt: instant.optional(),
  /** Of gateways, computations or versions. */
  names: z.array(z.string()).optional(),
  /** The database lies on a server of its own, whose disk this house does not see. */
  elsewhere: z.boolean().optional(),
});
export type FindingFigures = z.infer<typeof findingFigures>;

export const partView = z.object({
  part: z.enum(HOUSE_PARTS),
  state: z.enum(PART_STATES),
  finding: z.enum(Object.keys(FINDINGS) as [Finding, ...Finding[]]),
  /** Since when it stands so, as far back as that is known; null where it is not. */
  since: instant.nullable(),
  figures: findingFigures,
});
export type PartView = z.infer<typeof partView>;

/** How the house stands at one instant, every part once. */
export const houseStatus = z.object({ at: instant, version: z.string(), runsSince: instant, parts: z.array(partView) });
export type HouseStatus = z.infer<typeof houseStatus>;
