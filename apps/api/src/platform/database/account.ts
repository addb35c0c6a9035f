import { execFileSync, spawnSync } from 'node:child_process';

/** As whom the server runs: nothing where this process is an ordinary user, else an account of its own. */
export type Account = { readonly uid?: number; readonly gid?: number };

const NAME = 'postgres';
const idOf = (flag: '-u' | '-g') => Number(execFileSync('id', [flag, NAME], { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] }));

/** PostgreSQL refuses to run as root, so root lends it an account, made on first use. */
export function serverAccount(): Account {
  if (process.getuid?.() !== 0) return {};
  try {
    return { uid: idOf('-u'), gid: idOf('-g') };
  } catch {
    try {
      execFileSync('groupadd', ['--system', '--force', NAME], { stdio: 'ignore' });
      execFileSync('useradd', ['--system', '--gid', NAME, '--no-create-home', NAME], { stdio: 'ignore' });
      return { uid: idOf('-u'), gid: idOf('-g') };
    } catch (error) {
      throw new Error(
        `The database does not run as root, and no account '${NAME}' could be made for it. Start Stokehold as an ordinary user, make that account, or set DATABASE_URL.`,
        { cause: error },
      );
    }
  }
}

/** Throws when that account cannot get at `folder` or at the server's program: the server's own words for it help nobody. */
export function requireReach(account: Account, folder: string, program: string): void {
  if (account.uid === undefined) return;
  const tries = (command: string, given: string[]) => spawnSync(command, given, { ...account, cwd: '/', stdio: 'ignore' }).status === 0;
  const out = !tries('/bin/sh', ['-c', 'cd "$0"', folder]) ? folder : !tries(program, ['--version']) ? program : undefined;
  if (!out) return;
  throw new Error(
    `The database runs as the user '${NAME}', who cannot reach ${out}. ` +
      (out === folder
        ? "Start Stokehold as an ordinary user, or set STOKEHOLD_DATA to a folder that user can reach, such as /var/lib/stokehold."
        : "Start Stokehold as an ordinary user, or install it in a folder that user can reach, such as /opt/stokehold."),
  );
}
