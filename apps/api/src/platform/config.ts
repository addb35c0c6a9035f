import { z } from 'zod';

const settings = z.object({
  PORT: z.coerce.number().int().min(0).max(65_535).default(4310),
  HOST: z.string().default('0.0.0.0'),
  /** Where the embedded database and its secrets lie. */
  STOKEHOLD_DATA: z.string().min(1).default('./data'),
  /** With it, this PostgreSQL server is used and nothing is embedded. */
  DATABASE_URL: z.string().regex(/^postgres(ql)?:\/\//, 'postgres://user@host:port/name').optional(),
  /** Threads for forecasts and plans; 0 computes in the main thread. */
  STOKEHOLD_WORKERS: z.coerce.number().int().min(0).max(16).default(1),
});
export type Settings = z.infer<typeof settings>;

/** Reads the environment once; says which names are wrong, never their values. */
export function readSettings(environment: Record<string, string | undefined>): Settings {
  const result = settings.safeParse(environment);
  if (result.success) return result.data;
  throw new Error(`Correct these settings: ${result.error.issues.map(({ path, message }) => `${path.join('.')} (${message})`).join(', ')}.`);
}
