import { randomUUID } from 'node:crypto';
import { connect, createServer, type Server } from 'node:net';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { measured } from './measured.js';
import { Folder, House } from './one-house.js';

/** The figure that is asked for is for 1000: FAULTS_CUTS=1000. */
const CUTS = Number(process.env['FAULTS_CUTS'] ?? 150);

let folder: Folder;
let house: House;
let line: Server;
/** What the house answered and nobody got. */
let answered: string[];

/** A line that carries what is asked, and breaks when the answer comes. */
beforeEach(async () => {
  folder = new Folder();
  house = await (await House.start(folder)).ready();
  await house.firstRun();
  answered = [];
  line = createServer((near) => {
    const far = connect(Number(new URL(house.at).port), '127.0.0.1');
    near.pipe(far);
    let came = '';
    far.on('data', (chunk: Buffer) => {
      came += chunk.toString();
      const [head = '', body] = came.split('\r\n\r\n');
      if (body === undefined || Buffer.byteLength(body) < Number(/content-length: (\d+)/i.exec(head)?.[1])) return;
      answered.push(body);
      near.resetAndDestroy();
      far.destroy();
    });
    for (const end of [near, far]) end.on('error', () => undefined);
  });
  await new Promise<void>((done) => line.listen(0, '127.0.0.1', done));
});
afterEach(async () => {
  line.close();
  await house.end('SIGKILL');
  await folder.remove();
});

it('the line is cut after the commit and before the answer: what is sent again brings the first answer, byte for byte, and is kept once', async () => {
  const { port } = line.address() as { port: number };
  const through = { post: (body: object) => fetch(`http://127.0.0.1:${port}/api/lots`, { method: 'POST', headers: { 'content-type': 'application/json', cookie: house.person.cookie }, body: JSON.stringify(body) }) };
  for (let nth = 0; nth < CUTS; nth += 1) {
    const id = randomUUID();
    const lot = { key: randomUUID(), pieces: 20 + nth, lot: { id, name: `Lot ${nth}`, species: 'white-oak', lengthM: 0.5, thicknessM: 0.12, moisture: 0.22, boughtAt: '2026-06-01T12:00:00Z', priceCents: 30_000 } };
    await expect(through.post(lot)).rejects.toThrow();
    const again = await house.post('/lots', lot);
    expect([again.status, await again.text()]).toEqual([201, answered[nth]]);
  }
  const { wood } = await house.get<{ wood: { lots: { name: string }[] } }>('/state');
  expect(wood.lots.map(({ name }) => name).sort()).toEqual(Array.from({ length: CUTS }, (_, nth) => `Lot ${nth}`).sort());
  measured('R18', `${CUTS} cuts: ${CUTS} equal answers, ${wood.lots.length} rows`);
});
