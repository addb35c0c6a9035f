import { FINDINGS, type Finding, type PartView } from '@stokehold/domain/contract';
import { expect, it } from 'vitest';
import { noticeOf } from './notice-of.js';

const parts = (...findings: Finding[]): PartView[] => findings.map((finding) => ({ ...FINDINGS[finding], finding, since: null, figures: { usedFrac: 0.93, leftBytes: 4e9 } }));

it.each([
  { what: 'all works', of: parts('database-answers', 'disk-room', 'tick-told'), is: undefined },
  { what: 'a disk of 80 % can wait until somebody looks', of: parts('disk-filling', 'backup-never'), is: undefined },
  { what: 'a disk of 90 % cannot', of: parts('disk-nearly-full', 'backup-never'), is: { kind: 'disk', usedFrac: 0.93, leftBytes: 4e9 } },
  { what: 'what does not work comes before it', of: parts('disk-nearly-full', 'tick-late', 'probes-silent'), is: { kind: 'down', count: 2 } },
])('$what', ({ of, is }) => {
  expect(noticeOf(of)).toEqual(is);
});
