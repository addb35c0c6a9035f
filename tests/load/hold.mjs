// Holds processes to a part of a core each, as if they had machines of their own that are so slow; by the kernel's control groups, which root may make.
import { existsSync, mkdirSync, rmdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const PERIOD_US = 10_000;
const NEW = '/sys/fs/cgroup/cgroup.controllers';
const OLD = '/sys/fs/cgroup/cpu';

/** Holds each of these processes, with all its threads; gives what takes the groups away once they have ended, or undefined where that is not allowed. */
export function holdEach(pids, cores) {
  const made = [];
  try {
    for (const pid of pids) {
      const isNew = existsSync(NEW);
      const group = join(isNew ? '/sys/fs/cgroup' : OLD, `stokehold-load-${pid}`);
      mkdirSync(group);
      made.push(group);
      const quota = Math.round(PERIOD_US * cores);
      if (isNew) writeFileSync(join(group, 'cpu.max'), `${quota} ${PERIOD_US}`);
      else for (const [file, value] of [['cpu.cfs_period_us', PERIOD_US], ['cpu.cfs_quota_us', quota]]) writeFileSync(join(group, file), String(value));
      writeFileSync(join(group, 'cgroup.procs'), String(pid));
    }
  } catch {
    made.forEach((group) => rmdirSync(group));
    return undefined;
  }
  return () => made.forEach((group) => rmdirSync(group));
}
