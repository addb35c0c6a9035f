import { createHash } from 'node:crypto';
import pg from 'pg';

/** Names of statements by their text: the same text is parsed and planned once per connection. */
const names = new Map<string, string>();
/** A statement made for one call only, such as an insert of just so many rows, must not fill a server's memory for good. */
const MOST_NAMES = 400;

function nameOf(text: string): string | undefined {
  const known = names.get(text);
  if (known || names.size >= MOST_NAMES) return known;
  const name = createHash('sha256').update(text).digest('base64url').slice(0, 24);
  names.set(text, name);
  return name;
}

const canBePrepared = (text: unknown): text is string => typeof text === 'string' && /^\s*(select|insert|update|delete|with)\b/i.test(text);

/** How TypeORM begins a transaction. */
const BEGIN = 'START TRANSACTION';

/**
 * A connection that prepares what it is asked with parameters: the house asks the same few hundred questions all night, and
 * most of a small question's time is its parsing and planning. With `pipeline`, what is asked side by side goes out in one
 * message, and the beginning of a transaction with its first question: it fails only where that fails too.
 */
export class PreparedClient extends pg.Client {
  override query(...asked: unknown[]): never {
    const [text, values, ...rest] = asked;
    if (text === BEGIN && values === undefined) return this.begun() as never;
    const name = canBePrepared(text) && Array.isArray(values) ? nameOf(text) : undefined;
    const given = name ? [{ name, text, values }, ...rest] : asked;
    return (super.query as (...all: unknown[]) => never)(...given);
  }

  private begun(): Promise<{ readonly rows: readonly never[] }> {
    (super.query(BEGIN) as unknown as Promise<unknown>).catch(() => undefined);
    return Promise.resolve({ rows: [] });
  }
}
