import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { createServer, get } from 'node:https';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, expect, it } from 'vitest';

const script = fileURLToPath(new URL('../../infra/https/certificate.sh', import.meta.url));
let folder: string;
beforeEach(() => (folder = mkdtempSync(join(tmpdir(), 'stokehold-https-'))));
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const make = (...names: string[]) => execFileSync(script, [folder, ...names], { encoding: 'utf8' });
const read = (file: string) => readFileSync(join(folder, file));

/** What a browser that trusts only the yard's authority gets from a house that answers with the made certificate, called by this name. */
async function answerTo(servername: string): Promise<string> {
  const house = createServer({ cert: read('house.crt'), key: read('house.key') }, (_, response) => response.end('open'));
  await new Promise<void>((resolve) => house.listen(0, '127.0.0.1', resolve));
  const { port } = house.address() as { port: number };
  try {
    return await new Promise((resolve) => {
      get({ host: '127.0.0.1', port, servername, ca: read('yard-ca.crt'), agent: false }, (response) => response.setEncoding('utf8').once('data', resolve)).once('error', (error: NodeJS.ErrnoException) =>
        resolve(error.code ?? error.message),
      );
    });
  } finally {
    house.closeAllConnections();
    house.close();
  }
}

it('a phone that was given the authority trusts the house by each name it was made for, and by no other', async () => {
  make('stokehold.local', 'yard.lan', '192.168.7.20');
  expect(await answerTo('stokehold.local')).toBe('open');
  expect(await answerTo('yard.lan')).toBe('open');
  expect(await answerTo('other.local')).toBe('ERR_TLS_CERT_ALTNAME_INVALID');
  expect(execFileSync('openssl', ['verify', '-CAfile', join(folder, 'yard-ca.crt'), '-verify_ip', '192.168.7.20', join(folder, 'house.crt')], { encoding: 'utf8' })).toMatch(/OK$/m);
});

it('renewing leaves the authority on the phones as it is', async () => {
  make('stokehold.local');
  const before = { authority: read('yard-ca.crt'), house: read('house.crt') };
  make('stokehold.local');
  expect(read('yard-ca.crt').equals(before.authority)).toBe(true);
  expect(read('house.crt').equals(before.house)).toBe(false);
  expect(await answerTo('stokehold.local')).toBe('open');
});

it('a name or an address of the internet is refused, and nothing is made', () => {
  for (const name of ['example.com', 'local.example.com', '203.0.113.9', '172.32.0.1']) {
    const { status, stderr } = spawnSync(script, [folder, name], { encoding: 'utf8' });
    expect(status, name).toBe(1);
    expect(stderr).toContain("yard's own network");
  }
  expect(existsSync(join(folder, 'yard-ca.key'))).toBe(false);
});

it('the authority itself may not speak for the internet, should its key be stolen; the keys are for their owner only', () => {
  make('stokehold.local');
  for (const key of ['yard-ca.key', 'house.key']) expect(statSync(join(folder, key)).mode & 0o077).toBe(0);
  const run = (given: string[], input?: string) => execFileSync('openssl', given, { cwd: folder, encoding: 'utf8', stdio: ['pipe', 'pipe', 'ignore'], ...(input && { input }) });
  run(['req', '-new', '-newkey', 'rsa:2048', '-nodes', '-keyout', 'thief.key', '-subj', '/CN=thief', '-addext', 'subjectAltName=DNS:example.com', '-out', 'thief.csr']);
  run(['x509', '-req', '-in', 'thief.csr', '-CA', 'yard-ca.crt', '-CAkey', 'yard-ca.key', '-set_serial', '7', '-copy_extensions', 'copy', '-days', '9', '-out', 'thief.crt']);
  const verified = spawnSync('openssl', ['verify', '-CAfile', 'yard-ca.crt', 'thief.crt'], { cwd: folder, encoding: 'utf8' });
  expect(verified.status).not.toBe(0);
  expect(verified.stderr).toContain('permitted subtree violation');
});
