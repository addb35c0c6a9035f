import { execFile, spawn } from 'node:child_process';
import { existsSync, mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { give, type Place } from './place.js';

/** The one account of the database; its password lies beside the files. */
export const USER = 'stokehold';
export const START_S = 60;

/** Makes the server's files where there are none: beside their place first, so that half-made ones are never taken for whole. */
export async function layFiles(place: Place): Promise<void> {
  if (existsSync(join(place.files, 'PG_VERSION'))) return;
  const unfinished = `${place.files}.unfinished`;
  rmSync(unfinished, { recursive: true, force: true });
  mkdirSync(unfinished, { mode: 0o700 });
  const passwordFile = join(unfinished, 'password');
  writeFileSync(passwordFile, place.password, { mode: 0o600 });
  for (const path of [unfinished, passwordFile]) give(place.account, path);
  const files = join(unfinished, 'files');
  const given = ['-D', files, '-U', USER, '--auth=scram-sha-256', `--pwfile=${passwordFile}`, '--data-checksums', '--encoding=UTF8', '--locale=C', '--no-instructions'];
  await promisify(execFile)(place.binaries.initdb, given, { ...place.account, cwd: '/' }).catch((error: { stderr?: string; message: string }) => {
    throw new Error(`The database's files could not be made in ${place.folder}: ${(error.stderr || error.message).trim().split('\n').at(-1)}.`, { cause: error });
  });
  renameSync(files, place.files);
  rmSync(unfinished, { recursive: true, force: true });
}

export async function startServer(place: Place, port: number): Promise<void> {
  const settings = Object.entries({ port: String(port), ...place.settings }).map(([name, value]) => `-c ${name}=${value}`);
  await control(place, ['start', '-w', '-t', String(START_S), '-l', place.log, '-o', settings.join(' ')]).catch((error: unknown) => {
    throw new Error(`The database did not start; its own words are in ${place.log}.`, { cause: error });
  });
}

export const stopServer = (place: Place): Promise<void> => control(place, ['stop', '-m', 'fast', '-w', '-t', String(START_S)]);

/** pg_ctl gives the server a session of its own: Ctrl-C in the window reaches this program only, which stops in order. */
const control = (place: Place, given: readonly string[]) =>
  new Promise<void>((done, failed) => {
    const child = spawn(place.binaries.pgCtl, ['-D', place.files, ...given], { ...place.account, cwd: '/', stdio: 'ignore' });
    child.once('error', failed);
    child.once('exit', (code) => (code === 0 ? done() : failed(new Error(`pg_ctl ${given[0]} ended with ${code}`))));
  });

export const freePort = (): Promise<number> =>
  new Promise((done, failed) => {
    const probe = createServer().once('error', failed);
    probe.listen(0, '127.0.0.1', () => {
      const { port } = probe.address() as { port: number };
      probe.close(() => done(port));
    });
  });
