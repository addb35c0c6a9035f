import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { readSettings } from '../../apps/api/dist/platform/config.js';

// The files with which several processes of the house are run say the same as the house and as each other.
const infra = fileURLToPath(new URL('../../infra/', import.meta.url));
const read = (file: string) => readFileSync(join(infra, file), 'utf8');

interface Service {
  readonly image?: string;
  readonly environment?: Record<string, string | number>;
  readonly network_mode?: string;
  readonly depends_on?: Record<string, unknown>;
  readonly volumes?: readonly string[];
}
const compose = parse(read('compose.yaml'), { merge: true }) as { readonly services: Record<string, Service>; readonly volumes: Record<string, null> };
const houses = Object.entries(compose.services).filter(([name]) => name.startsWith('house-'));
const upstream = [...read('nginx/stokehold.conf').matchAll(/^\s*server 127\.0\.0\.1:(\d+) /gm)].map(([, port]) => Number(port));
/** `NAME=value` pairs of a line or a file. */
const pairsOf = (text: string) => Object.fromEntries([...text.matchAll(/\b([A-Z][A-Z_]+)=(\S+)/g)].map(([, name, value]) => [name!, value!]));
/** The house takes these settings, and knows each of their names. */
function expectKnown(settings: Record<string, string>): void {
  const taken: Record<string, unknown> = readSettings(settings);
  for (const name of Object.keys(settings)) expect(taken, name).toHaveProperty(name);
}

describe('compose.yaml', () => {
  it('starts a process for each port that nginx passes to, in nginx’s own network', () => {
    expect(houses.map(([, { environment }]) => environment?.['PORT'])).toEqual(upstream);
    for (const [, { network_mode, environment }] of houses) expect([network_mode, environment?.['HOST']]).toEqual(['service:nginx', '127.0.0.1']);
  });
  it('gives them settings that the house knows, and services that are there', () => {
    for (const [, { environment, depends_on }] of houses) {
      expectKnown(Object.fromEntries(Object.entries(environment!).map(([name, value]) => [name, String(value)])));
      for (const name of [...Object.keys(depends_on!), new URL(String(environment!['REDIS_URL'])).hostname]) expect(Object.keys(compose.services)).toContain(name);
    }
  });
  it('gives them one folder of keys, and has no password of its own', () => {
    const named = Object.values(compose.services).flatMap(({ volumes = [] }) => volumes).map((one) => one.split(':')[0]!).filter((one) => !one.startsWith('.'));
    expect([...new Set(named)].sort()).toEqual(Object.keys(compose.volumes).sort());
    expect(new Set(houses.map(([, { volumes }]) => volumes?.join())).size).toBe(1);
    const chosen = '${STOKEHOLD_DATABASE_PASSWORD:?';
    expect(compose.services['postgres']!.environment!['POSTGRES_PASSWORD']).toContain(chosen);
    for (const [, { environment }] of houses) expect(environment!['DATABASE_URL']).toContain(`:${chosen}`);
  });
});
it('the Containerfile’s settings are the house’s, and its data lies where compose keeps it', () => {
  const settings = pairsOf(/^ENV (.*)$/m.exec(read('Containerfile'))![1]!);
  expectKnown(settings);
  for (const [, { volumes }] of houses) expect(volumes).toEqual([`keys:${settings['STOKEHOLD_DATA']}`]);
});
it.each(readdirSync(join(infra, 'systemd')).filter((file) => file.endsWith('.service')))('systemd/%s gives settings that the house knows and starts a file that is there', (file) => {
  const unit = read(`systemd/${file}`);
  expectKnown(pairsOf([...unit.matchAll(/^Environment=(.*)$/gm)].map(([, line]) => line).join(' ').replaceAll('%i', String(upstream[0]))));
  const [, started] = /^ExecStart=.*?(apps\/api\/dist\/\S+\.js)/m.exec(unit)!;
  expect(() => readFileSync(join(infra, '..', started!))).not.toThrow();
});
it('nginx takes bodies as large as the house does', () => {
  const [, kb] = /const BODY_LIMIT = '(\d+)kb'/.exec(readFileSync(join(infra, '../apps/api/src/house.ts'), 'utf8'))!;
  expect(read('nginx/stokehold.conf')).toContain(`client_max_body_size ${kb}k;`);
});
