import { inject, expect, it } from 'vitest';
import { PreparedClient } from './prepared-client.js';

it('a question asked twice is prepared once; what cannot be prepared is asked as it is', async () => {
  const client = new PreparedClient({ connectionString: inject('databaseServer') });
  await client.connect();
  const sum = (a: number, b: number) => client.query('select $1::int + $2::int as sum', [a, b]) as unknown as Promise<{ rows: { sum: number }[] }>;
  expect((await sum(2, 3)).rows).toEqual([{ sum: 5 }]);
  expect((await sum(20, 3)).rows).toEqual([{ sum: 23 }]);
  await client.query('begin');
  await client.query('create temporary table lying (pieces integer)');
  await client.query('insert into lying values ($1), ($2)', [4, 6]);
  await client.query('rollback');
  const { rows } = (await client.query("select statement from pg_prepared_statements where statement like '%as sum' or statement like 'insert into lying%' order by 1")) as unknown as { rows: object[] };
  expect(rows).toEqual([{ statement: 'insert into lying values ($1), ($2)' }, { statement: 'select $1::int + $2::int as sum' }]);
  await client.end();
});
