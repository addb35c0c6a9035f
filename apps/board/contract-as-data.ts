import { fileURLToPath } from 'node:url';
import { runnerImport, type Plugin } from 'vite';
import { z } from 'zod';
import type * as Contract from '../../libs/domain/contract/index.js';

/** What a phone at a fire and a wall ask for: it comes with them. What the desks ask for comes when they do. */
const AT_HAND = ['me', 'state', 'enrolDevice', 'signInChoices', 'signIn', 'signOut', 'recordCheck', 'reportBreak', 'finishTask', 'reportPresence', 'acknowledgeAlarm', 'shelveAlarm', 'unshelveAlarm'] as const;

const CONTRACT = fileURLToPath(new URL('../../libs/domain/contract/index.ts', import.meta.url));
const contract = async () => (await runnerImport<typeof Contract>(CONTRACT, { configFile: false, resolve: { conditions: ['source'] } })).module;

const shapesOf = (shapes: Readonly<Record<string, z.ZodType>>) => z.toJSONSchema(z.object(shapes), { reused: 'ref' });

/** Where each route lies, and whether it wants a key and the device's clock. */
const waysOf = ({ routes }: typeof Contract) =>
  Object.fromEntries(
    Object.entries(routes as Readonly<Record<string, Contract.Route>>).map(([name, { method, path, body }]) => {
      const fields = body instanceof z.ZodObject ? Object.keys(body.shape) : [];
      return [name, { method, path, wants: ['key', 'sentAt'].filter((field) => fields.includes(field)) }];
    }),
  );

const repliesOf = ({ routes }: typeof Contract, isAsked: (name: string) => boolean) =>
  Object.fromEntries(Object.entries(routes).filter(([name]) => isAsked(name)).map(([name, { reply }]) => [name, reply]));

const isAtHand = (name: string) => (AT_HAND as readonly string[]).includes(name);
const DATA: Readonly<Record<string, (known: typeof Contract) => object>> = {
  'contract:ways': waysOf,
  'contract:hand': (known) => shapesOf({ ...repliesOf(known, isAtHand), change: known.liveChange, beat: known.liveBeat, clock: known.yardClock, problem: known.problem }),
  'contract:desk': (known) => shapesOf(repliesOf(known, (name) => !isAtHand(name))),
};

/**
 * Hands the contract to the board as plain data: the way to each route, and what each reply must look like, as JSON Schema.
 * The schemas themselves, with what they are made by, are more than a fifth of what a phone would have to load.
 */
export const contractAsData = (): Plugin => ({
  name: 'contract-as-data',
  resolveId: (id) => (id in DATA ? `\0${id}` : undefined),
  load: async (id) => {
    const dataOf = DATA[id.slice(1)];
    return id.startsWith('\0') && dataOf ? `export default JSON.parse(${JSON.stringify(JSON.stringify(dataOf(await contract())))})` : undefined;
  },
});
