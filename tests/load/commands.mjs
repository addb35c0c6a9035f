// Fire checks from phones and readings from gateways at a steady rate, and a ledger of them outside the house.
import { randomUUID } from 'node:crypto';
import { Agent, request } from 'node:http';
import { performance } from 'node:perf_hooks';
import { setTimeout as pause } from 'node:timers/promises';
import { now } from './town.mjs';

const TRIES = 20;
const AGAIN_MS = 500;

/** One request; rejects when the line breaks or nothing answers in ten seconds. */
const post = (agent, base, who, path, body) =>
  new Promise((resolve, reject) => {
    const sent = request(`${base}/api${path}`, { method: 'POST', agent, timeout: 10_000, headers: { 'content-type': 'application/json', ...who } }, (answer) => {
      let text = '';
      answer.setEncoding('utf8').on('data', (chunk) => (text += chunk)).on('end', () => resolve({ status: answer.statusCode, text })).on('error', reject);
    });
    sent.on('timeout', () => sent.destroy(new Error('no answer in 10 s'))).on('error', reject).end(JSON.stringify(body));
  });

/** What is sent for a pit: a look at its fire, or what its two probes read. */
const checkOf = ({ id }, key) => ({ path: '/checks', body: { key, pitId: id, seenAt: now(), bed: 'fair', left: 'some', raked: false, splits: 0, fireEndTempC: 124, stackEndTempC: 122 } });
const readingsOf = ({ probes }, key) => ({ path: '/readings', body: { key, readings: probes.map((probeId) => ({ probeId, takenAt: now(), tempC: Math.round(10 * (121 + 4 * Math.random())) / 10 })) } });

/** Commands of a town, its pits in turn; of so many, `checkEvery`, one is a fire check, the others are readings. */
export class Commands {
  /** By its key, whether it was acknowledged. */
  ledger = new Map();
  answerMs = [];
  wallMs = [];
  again = 0;
  refused = [];
  checks = 0;
  #waiting = new Map();
  #agent = new Agent({ keepAlive: true, maxSockets: 200 });

  constructor(base, town, checkEvery) {
    this.base = base;
    this.checkEvery = checkEvery;
    this.pits = [];
    const most = Math.max(...town.map(({ pits }) => pits.length));
    for (let nth = 0; nth < most; nth++) for (const { phones, gateway, pits } of town) if (pits[nth]) this.pits.push({ pit: pits[nth], phone: phones[nth % phones.length], gateway });
  }

  /** A board shows what came of the last check of this pit. */
  seen(pitId) {
    const began = this.#waiting.get(pitId);
    if (began === undefined) return;
    this.#waiting.delete(pitId);
    this.wallMs.push(performance.now() - began);
  }

  /** So many a second for so long; resolves when each was answered for good. Figures are of these alone. */
  async run(perSecond, seconds) {
    this.answerMs = [];
    this.wallMs = [];
    const open = [];
    const began = performance.now();
    for (let nth = 0; nth < perSecond * seconds; nth++) {
      const due = began + (nth * 1000) / perSecond;
      if (performance.now() < due) await pause(due - performance.now());
      open.push(this.#send(nth % this.checkEvery === 0));
    }
    await Promise.all(open);
    return (performance.now() - began) / 1000;
  }

  /** As many as are answered, so many under way at any time, for so long; gives how many. */
  async pour(underWay, seconds) {
    const before = this.ledger.size;
    const end = performance.now() + 1000 * seconds;
    let nth = 0;
    const line = async () => {
      while (performance.now() < end) await this.#send(nth++ % this.checkEvery === 0);
    };
    await Promise.all(Array.from({ length: underWay }, line));
    return this.ledger.size - before;
  }

  async #send(isCheck) {
    const key = randomUUID();
    const { pit, phone, gateway } = this.pits[(isCheck ? (this.checks += 1) : this.ledger.size) % this.pits.length];
    const { path, body } = isCheck ? checkOf(pit, key) : readingsOf(pit, key);
    const began = performance.now();
    this.ledger.set(key, { isCheck, acknowledged: false });
    if (isCheck) this.#waiting.set(pit.id, began);
    for (let tries = 0; tries < TRIES; tries++) {
      const answer = await post(this.#agent, this.base, isCheck ? phone : gateway, path, body).catch(() => undefined);
      if (answer?.status === 201) {
        this.answerMs.push(performance.now() - began);
        this.ledger.get(key).acknowledged = true;
        return;
      }
      if (answer && answer.status < 500 && answer.status !== 429) return void this.refused.push(answer.text);
      this.again += 1;
      await pause(AGAIN_MS);
    }
  }

  /** The ledger beside the database: what was acknowledged and is not there, what is there twice, what nobody sent. */
  async compare(database) {
    const { rows } = await database.query(`select key from command_key where command in ('record-check', 'record-readings')`);
    const { rows: [{ n: checks }] } = await database.query('select count(*)::int as n from fire_check');
    const kept = new Set(rows.map(({ key }) => key));
    const acknowledged = [...this.ledger].filter(([, one]) => one.acknowledged).map(([key]) => key);
    const checksKept = [...this.ledger].filter(([key, { isCheck }]) => isCheck && kept.has(key)).length;
    return { acknowledged: acknowledged.length, lost: acknowledged.filter((key) => !kept.has(key)).length, twice: checks - checksKept, unknown: [...kept].filter((key) => !this.ledger.has(key)).length };
  }

  close() {
    this.#agent.destroy();
  }
}
