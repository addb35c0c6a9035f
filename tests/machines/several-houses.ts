import { LIVE, type LiveBeat, liveBeat, type LiveChange, liveChange, type YardState } from '@stokehold/domain/contract';
import { randomBytes, randomUUID } from 'node:crypto';
import { connect, createServer, type Server, type Socket as Line } from 'node:net';
import { setTimeout as pause } from 'node:timers/promises';
import { Client } from 'pg';
import { io, type Socket } from 'socket.io-client';
import { inject } from 'vitest';
import { Folder, House } from '../faults/one-house.js';

const redis = new URL(process.env['REDIS_URL'] ?? 'redis://127.0.0.1:6379');

async function onServer(sql: string): Promise<void> {
  const client = new Client({ connectionString: inject('databaseServer') });
  await client.connect();
  await client.query(sql).finally(() => client.end());
}

/** What several processes of the house share: a database, the folder of their key, and a line to Redis that can be cut. */
export class Ground {
  private readonly folder = new Folder();
  private readonly houses: House[] = [];

  private constructor(
    readonly databaseUrl: string,
    private readonly name: string,
    private readonly line: RedisLine,
  ) {}

  static async open(): Promise<Ground> {
    const name = `stokehold_test_${randomBytes(6).toString('hex')}`;
    await onServer(`create database ${name}`);
    const url = new URL(inject('databaseServer'));
    url.pathname = `/${name}`;
    return new Ground(url.href, name, await RedisLine.open());
  }

  async house(environment: Record<string, string> = {}): Promise<House> {
    const house = await House.start(this.folder, { DATABASE_URL: this.databaseUrl, REDIS_URL: this.line.url, ...environment });
    this.houses.push(house);
    return house.ready();
  }

  cutRedis(): void {
    this.line.cut();
  }

  /** Holds a table, so that whoever asks for it waits; gives what lets it go. */
  async hold(table: string): Promise<() => Promise<void>> {
    const client = new Client({ connectionString: this.databaseUrl });
    await client.connect();
    await client.query(`begin; lock table ${table} in access exclusive mode`);
    return () => client.end();
  }

  async query<T>(sql: string, values: readonly unknown[] = []): Promise<T[]> {
    const client = new Client({ connectionString: this.databaseUrl });
    await client.connect();
    return (await client.query(sql, [...values]).finally(() => client.end())).rows as T[];
  }

  async close(): Promise<void> {
    await Promise.all(this.houses.map((house) => house.end('SIGKILL')));
    this.line.close();
    await onServer(`drop database if exists ${this.name} with (force)`);
    await this.folder.remove();
  }
}

class RedisLine {
  private readonly ends = new Set<Line>();

  private constructor(private readonly server: Server) {}

  static async open(): Promise<RedisLine> {
    await answers();
    const server = createServer();
    const line = new RedisLine(server);
    server.on('connection', (near) => line.join(near));
    await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
    return line;
  }

  get url(): string {
    const url = new URL(redis);
    url.host = `127.0.0.1:${(this.server.address() as { port: number }).port}`;
    return url.href;
  }

  /** Breaks what stands, and lets nobody in any more. */
  cut(): void {
    this.server.removeAllListeners('connection').on('connection', (near) => near.destroy());
    for (const end of this.ends) end.destroy();
  }

  close(): void {
    this.cut();
    this.server.close();
  }

  private join(near: Line): void {
    const far = connect(Number(redis.port || 6379), redis.hostname);
    for (const [from, to] of [[near, far], [far, near]] as const) {
      this.ends.add(from);
      from.pipe(to);
      from.on('error', () => to.destroy()).on('close', () => to.destroy());
    }
  }
}

const answers = () =>
  new Promise<void>((done, failed) => {
    const line = connect(Number(redis.port || 6379), redis.hostname);
    line.once('connect', () => done(void line.destroy()));
    line.once('error', () => failed(new Error(`No Redis answers at ${redis.host}: start one (Debian: apt-get install redis-server), or set REDIS_URL.`)));
  });

export interface Wall {
  readonly socket: Socket;
  readonly changes: LiveChange[];
  readonly beats: LiveBeat[];
  /** The most times that news were pushed to it between two beats; where the beat alone brings news, once. */
  pushedBetweenBeats: number;
}

/** A wall on this process; what arrives is held to the contract. */
export async function openWall(house: House): Promise<Wall> {
  const socket = io(house.at, { path: LIVE.path, transports: ['websocket'], extraHeaders: { cookie: house.person.cookie }, forceNew: true });
  const wall: Wall = { socket, changes: [], beats: [], pushedBetweenBeats: 0 };
  let pushed = 0;
  socket.on(LIVE.change, (message: unknown) => {
    const change = liveChange.parse(message);
    wall.changes.push(change);
    if (Object.keys(change.changed).length > 0) wall.pushedBetweenBeats = Math.max(wall.pushedBetweenBeats, (pushed += 1));
  });
  socket.on(LIVE.beat, (message: unknown) => {
    wall.beats.push(liveBeat.parse(message));
    pushed = 0;
  });
  await new Promise<void>((done, failed) => void socket.once('connect', done).once('connect_error', failed));
  return wall;
}

const instant = (hours: number) => `${new Date(Date.now() + hours * 3_600_000).toISOString().slice(0, 19)}Z`;

/** A pit that burns since an hour, in a shift of its own; gives its id. */
export async function lightPit(house: House): Promise<string> {
  const pit = {
    id: randomUUID(), name: 'Bess', xM: 3, yM: 4, fireEnd: 'left', fireEndHeadingDeg: 270, chamberLengthM: 2.3, chamberDiameterM: 0.76, fireboxLengthM: 0.61, fireboxDiameterM: 0.61,
    steelThicknessM: 0.0095, stackHeightM: 1.5, stackDiameterM: 0.15, zones: [{ lengthM: 1.1 }, { lengthM: 1.1 }], probes: [], band: { lowC: 118, highC: 124 }, retired: false,
  };
  const { person } = await house.get<{ person: { id: string } }>('/me');
  await must(house.post('/pits', { key: randomUUID(), pit }));
  await must(house.post('/shifts', {
    key: randomUUID(), id: randomUUID(), startsAt: instant(-1), endsAt: instant(9), people: [{ personId: person.id, startsAt: instant(-1), endsAt: instant(9), breaks: [] }],
    pits: [{ pitId: pit.id, band: pit.band, lightAt: instant(-0.9) }],
  }));
  return pit.id;
}

/** A fire check of this pit; gives its key. */
export async function checkFire(house: Pick<House, 'post'>, pitId: string): Promise<string> {
  const key = randomUUID();
  await must(house.post('/checks', { key, pitId, seenAt: instant(0), bed: 'fair', left: 'some', raked: false, splits: 0, fireEndTempC: 121, stackEndTempC: 119 }));
  return key;
}

/** A cook that goes on this pit now; gives its id. */
export async function layOn(house: House, pitId: string): Promise<string> {
  const id = randomUUID();
  await must(house.post('/cooks', { key: randomUUID(), cook: { id, cut: 'Brisket', shape: 'slab', pieces: 6, weightKg: 37.8, serviceId: null, comesOffAt: null } }));
  await must(house.post('/placements', { key: randomUUID(), cookId: id, lies: [{ pitId, zone: 1, pieces: 6 }] }));
  return id;
}

async function must(answer: Promise<Response>): Promise<void> {
  const { status, ...rest } = await answer.then(async (given) => ({ status: given.status, text: await given.text() }));
  if (status !== 201) throw new Error(`${status}: ${rest.text}`);
}

export const seqOf = async (house: House) => (await house.get<YardState>('/state')).seq;

/** Waits for what must come; a machine under load may take its time. */
export async function until(holds: () => boolean | Promise<boolean>, what: string): Promise<void> {
  for (const end = Date.now() + 60_000; Date.now() < end; await pause(10)) if (await holds()) return;
  throw new Error(`It did not come: ${what}`);
}
