/** Time as a benchmark wants it: of this process's own work, warmed up, and the middle of several. */

export const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  const high = sorted[middle] ?? Number.NaN;
  return sorted.length % 2 === 1 ? high : ((sorted[middle - 1] ?? Number.NaN) + high) / 2;
};

/** Seconds of CPU that a piece of work takes: what else the machine does hardly counts. */
export const cpuSeconds = (work: () => void): number => {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
};

/** Median seconds of CPU of several works, done in turn in the same run so that their ratios are fair. */
export const cpuSideBySide = (works: readonly (() => void)[], rounds = 7, warmUps = 2): number[] => {
  const times = works.map((): number[] => []);
  for (let round = -warmUps; round < rounds; round += 1) {
    works.forEach((work, i) => {
      const seconds = cpuSeconds(work);
      if (round >= 0) times[i]?.push(seconds);
    });
  }
  return times.map(median);
};

const collect = (globalThis as { gc?: () => void }).gc;

/** Bytes that a piece of work leaves behind for the collector, median of several; needs `node --expose-gc`. */
export const bytesMade = (work: () => void, rounds = 9): number => {
  if (collect === undefined) throw new Error('bytesMade: node must be started with --expose-gc');
  const made: number[] = [];
  for (let round = 0; round < rounds; round += 1) {
    collect();
    const before = process.memoryUsage().heapUsed;
    work();
    made.push(process.memoryUsage().heapUsed - before);
  }
  return median(made);
};
