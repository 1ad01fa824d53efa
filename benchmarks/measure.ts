/** Timing for the benchmarks: several runs, the median quoted, and a peer in the same run to hold it against. */

export interface Figure {
  readonly what: string;
  /** Median [ms]. */
  readonly median: number;
  readonly least: number;
  readonly most: number;
  readonly runs: number;
}

/** Times a function over several runs after a warm-up. */
export function time(what: string, runs: number, work: (run: number) => unknown, warmUps = 2): Figure {
  for (let i = 0; i < warmUps; i++) work(-1 - i);
  const times = Array.from({ length: runs }, (_, i) => {
    const start = performance.now();
    work(i);
    return performance.now() - start;
  });
  return figure(what, times);
}

/** A figure from times measured elsewhere [ms]. */
export function figure(what: string, times: readonly number[]): Figure {
  const sorted = times.toSorted((a, b) => a - b);
  return {
    what,
    median: sorted[Math.floor(sorted.length / 2)] ?? Number.NaN,
    least: sorted[0] ?? Number.NaN,
    most: sorted.at(-1) ?? Number.NaN,
    runs: sorted.length,
  };
}

/** Prints figures under a heading, each with its ratio to the peer, the last one given. */
export function report(heading: string, figures: readonly Figure[], peer: Figure): void {
  console.log(`\n${heading}`);
  for (const f of [...figures, peer]) {
    const ratio = f === peer ? 'peer' : `${(f.median / peer.median).toPrecision(3)} × peer`;
    const spread = `${f.least.toPrecision(3)} to ${f.most.toPrecision(3)}, ${f.runs} runs`;
    console.log(`  ${f.what.padEnd(52)} ${f.median.toPrecision(3).padStart(8)} ms  (${spread})  ${ratio}`);
  }
}
