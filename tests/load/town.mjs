// Yards that all burn: pits, a night's shift, and the devices of those who work there.
import { createHash, randomBytes, randomUUID } from 'node:crypto';

const hashOf = (token) => createHash('sha256').update(token).digest();
const newToken = () => randomBytes(32).toString('base64url');
const at = (hours) => `${new Date(Date.now() + hours * 3_600_000).toISOString().slice(0, 19)}Z`;
export const now = () => at(0);

const pitOf = (nth) => ({
  id: randomUUID(), name: `Pit ${nth + 1}`, xM: 3 + 3.5 * nth, yM: 5, fireEnd: 'left', fireEndHeadingDeg: 270, chamberLengthM: 2.3, chamberDiameterM: 0.76, fireboxLengthM: 0.61, fireboxDiameterM: 0.61,
  steelThicknessM: 0.0095, stackHeightM: 1.5, stackDiameterM: 0.15, zones: [{ lengthM: 0.76 }, { lengthM: 0.76 }, { lengthM: 0.76 }],
  probes: [{ id: randomUUID(), name: 'fire end', zone: 0 }, { id: randomUUID(), name: 'stack end', zone: 2 }], band: { lowC: 121, highC: 127 }, retired: false,
});

/** A device of a yard, with somebody signed in on it where a person is given: the headers by which it is known. */
async function enrol(database, yardId, kind, personId) {
  const [deviceId, device, session] = [randomUUID(), newToken(), newToken()];
  await database.query('insert into device values ($1, $2, $3, $4, $5, now(), null, null)', [deviceId, yardId, `${kind} ${deviceId.slice(0, 4)}`, kind, hashOf(device)]);
  if (kind === 'gateway') return { authorization: `Bearer ${device}` };
  if (!personId) return { cookie: `stokehold_device=${device}; stokehold_yard=${yardId}` };
  await database.query('insert into session (token_hash, device_id, crew_member_id, began_at, last_used_at) values ($1, $2, $3, now(), now())', [hashOf(session), deviceId, personId]);
  return { cookie: `stokehold_device=${device}; stokehold_session=${session}; stokehold_yard=${yardId}` };
}

/** One yard with its pits alight in a shift of its people, each with a phone in hand. */
async function burningYard(database, ask, { nth, pits, people, walls }) {
  const yardId = randomUUID();
  await database.query(`insert into yard values ($1, $2, 'America/Chicago', 'us', 'en', 60, 25, 0, 20, 24, 1.2, 1.4, 5, false, 0, now())`, [yardId, `Yard ${nth + 1}`]);
  const crew = Array.from({ length: people }, (_, one) => ({ id: randomUUID(), name: `Hand ${one + 1}`, role: one === 0 ? 'manager' : 'crew' }));
  for (const { id, name, role } of crew) {
    await database.query(`insert into crew_member values ($1, $2, $3, $4, 'en', 2000, null, false)`, [id, yardId, name, role]);
    await database.query(`insert into skill values ($1, 'fire')`, [id]);
  }
  const phones = [];
  for (const { id } of crew) phones.push(await enrol(database, yardId, 'hand', id));
  const boards = [];
  for (let one = 0; one < walls; one++) boards.push(await enrol(database, yardId, 'wall'));
  const burning = Array.from({ length: pits }, (_, one) => pitOf(one));
  for (const pit of burning) await ask(phones[0], '/pits', { key: randomUUID(), pit });
  await ask(phones[0], '/shifts', {
    key: randomUUID(), id: randomUUID(), startsAt: at(-0.6), endsAt: at(10),
    people: crew.map(({ id }) => ({ personId: id, startsAt: at(-0.6), endsAt: at(10), breaks: [] })), pits: burning.map(({ id, band }) => ({ pitId: id, band, lightAt: at(-0.5) })),
  });
  return { yardId, phones, boards, gateway: await enrol(database, yardId, 'gateway'), pits: burning.map(({ id, probes }) => ({ id, probes: probes.map((probe) => probe.id) })) };
}

/** So many yards with as many pits and boards in all; asked for through `base`. */
export async function openTown(database, base, { yards, pits, boards, people = 4 }) {
  const ask = async (who, path, body) => {
    const answer = await fetch(`${base}/api${path}`, { method: 'POST', headers: { 'content-type': 'application/json', ...who }, body: JSON.stringify(body) });
    if (!answer.ok) throw new Error(`${path}: ${answer.status} ${await answer.text()}`);
  };
  const town = [];
  for (let nth = 0; nth < yards; nth++) {
    const share = (all) => Math.floor((all * (nth + 1)) / yards) - Math.floor((all * nth) / yards);
    town.push(await burningYard(database, ask, { nth, pits: share(pits), walls: share(boards), people }));
  }
  return town;
}
