import { parseArgs } from 'node:util';
import { readSettings } from '../platform/config.js';
import { backUp, noteTaken } from './backup.js';
import { asCommand, secretKeyOf, summary, withDatabase } from './command.js';

/** `npm run backup -- --to FILE`: everything of the house, in one file. */
asCommand('No backup was taken.', async () => {
  const { to } = parseArgs({ options: { to: { type: 'string' } } }).values;
  if (!to) throw new Error('Say where to: npm run backup -- --to /media/stick/yard.backup');
  const settings = readSettings(process.env);
  const at = new Date().toISOString();
  const { sums } = await withDatabase(settings, async (query) => {
    const done = await backUp(query, to, { at, secretKey: secretKeyOf(settings.STOKEHOLD_DATA) });
    await noteTaken(query, at, done);
    return done;
  });
  return `${to}: ${summary(sums)}, as of ${at}. It holds the keys of this house: keep it where only its owner can read it.`;
});
