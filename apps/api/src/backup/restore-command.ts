import { parseArgs } from 'node:util';
import { readSettings } from '../platform/config.js';
import { asCommand, putSecretKey, summary, withDatabase } from './command.js';
import { checkedBackup } from './file.js';
import { restore } from './restore.js';

/** `npm run restore -- --from FILE`: a backup into an empty database, embedded or that of DATABASE_URL. */
asCommand('Nothing was restored.', async () => {
  const { from } = parseArgs({ options: { from: { type: 'string' } } }).values;
  if (!from) throw new Error('Say what from: npm run restore -- --from /media/stick/yard.backup');
  const settings = readSettings(process.env);
  putSecretKey(settings.STOKEHOLD_DATA, (await checkedBackup(from)).header.secretKey);
  const { header, sums } = await withDatabase(settings, (query, url) => restore(query, url, from));
  return `${summary(sums)} as of ${header.at} are back; counts and sums are those of the backup. Start Stokehold: boards and phones come back by themselves.`;
});
