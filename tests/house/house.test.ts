import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';

const root = fileURLToPath(new URL('../../', import.meta.url));
const tracked = execFileSync('git', ['ls-files', '--cached', '--others', '--exclude-standard'], { cwd: root, encoding: 'utf8' }).split('\n').filter(Boolean);
const read = (file: string) => readFileSync(root + file, 'utf8');
const sources = tracked.filter((file) => /\.(ts|tsx|mjs|js)$/.test(file));

it('the top level is the one of the design, and nothing else', () => {
  const top = [...new Set(tracked.map((file) => file.split('/')[0] ?? ''))].filter((name) => !name.startsWith('.')).sort();
  expect(top).toEqual(['DEVELOPERS.md', 'README.md', 'apps', 'infra', 'libs', 'package-lock.json', 'package.json', 'tests', 'tsconfig.json']);
  const inside = (folder: string) => [...new Set(tracked.filter((file) => file.startsWith(`${folder}/`)).map((file) => file.split('/')[1] ?? ''))].sort();
  expect(inside('apps')).toEqual(['api', 'board']);
  expect(inside('libs').filter((name) => name !== 'tsconfig.json')).toEqual(['domain', 'scheduling']);
});

it('every source that a docstring names in brackets is in SOURCES.md', () => {
  const known = new Set([...read('libs/domain/SOURCES.md').matchAll(/^\| ([A-Z][A-Z0-9-]+) \|/gm)].map((match) => match[1]));
  const named = tracked
    .filter((file) => /^libs\/.*\.ts$/.test(file) && !file.endsWith('.test.ts'))
    .flatMap((file) => [...read(file).matchAll(/\[([A-Z][A-Z0-9-]{2,})\]/g)].map((match) => ({ file, key: match[1] ?? '' })));
  expect(named.filter(({ key }) => !known.has(key))).toEqual([]);
});

it('every formula of the libs that is exported says what it is', () => {
  const silent = tracked
    .filter((file) => /^libs\/domain\/(wood|fire|chamber|food|cost|reading)\/[a-z-]+\.ts$/.test(file) && !/(\.test|index)\.ts$/.test(file))
    .flatMap((file) => {
      const lines = read(file).split('\n');
      return lines.flatMap((line, i) => (/^export (function|const) \w+ ?[=(<]/.test(line) && !/\*\/\s*$/.test(lines[i - 1] ?? '') ? [`${file}:${i + 1}`] : []));
    });
  expect(silent).toEqual([]);
});

it('no folder is a drawer for everything', () => {
  expect(tracked.filter((file) => /(^|\/)(utils?|helpers?|common|types|misc)(\/|\.tsx?$)/.test(file))).toEqual([]);
});

it('the lock file carries no addresses, and nothing names a path of one machine', () => {
  expect(read('package-lock.json')).not.toContain('"resolved": "http');
  const personal = sources.filter((file) => /(\/home\/[a-z]+\/|\/Users\/[A-Za-z]+\/|\/work\/(main|shared))/.test(read(file)) && !file.endsWith('house.test.ts'));
  expect(personal).toEqual([]);
});

it('no test is skipped and nothing is left for later', () => {
  const marks = new RegExp([`\\b(it|test|describe)\\.(${['skip', 'todo', 'only'].join('|')})\\(`, `\\b(${['TO', 'FIX'].map((start, nth) => start + ['DO', 'ME'][nth]).join('|')})\\b`].join('|'));
  const later = sources.filter((file) => marks.test(read(file)));
  expect(later).toEqual([]);
});

it('nothing that people read claims that food or a fire is safe, or that a record is compliant', () => {
  const words = tracked.filter((file) => /^apps\/board\/src\/words\//.test(file));
  const claims = words.flatMap((file) => read(file).split('\n').filter((line) => /\b(safe|compliant|seguro|segura|conforme)\b/i.test(line) && !/latest.?safe/i.test(line)).map((line) => `${file}: ${line.trim()}`));
  expect(claims).toEqual([]);
});
