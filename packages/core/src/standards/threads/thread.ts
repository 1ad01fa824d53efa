/**
 * Threads as people write them, and as this project writes them.
 *
 * `M10x1.25-6g`, `M10 × 1,25`, `1/4-28 UNF-2A`, `3/8 BSF`, `2 BA`, `G1/4 A`, `R1/8`, `M14 × 1.5 left`, `3/8-26 cycle` …
 */
import { readSuffixes, tidy } from './designation-suffixes.ts';
import { readInch } from './read-inch.ts';
import { readBa, readMetric, readPipe } from './read-sizes.ts';
import type { Thread } from './record.ts';
import { refuse } from './special.ts';

export type { Thread } from './record.ts';

/** The longest designation that means anything is half as long. */
const longest = 60;

const noData =
  /^(tr|acme|buttress|s\d|rd|mj|nptf|npsm|npsf|anpt|unj|pg|thury|ww?[- ]?gas)\b|\b(acme|nptf|npsm|npsf|unj[cfs]?|tpn|trapez\w*|buttress|thury)\b/i;

/**
 * The thread that a designation names, with its basic sizes.
 *
 * @param text  the designation as typed
 * @returns the thread; `status` tells a listed one from a pair that was worked out
 * @throws InputError when it names no thread, saying what is wrong with it and what lies nearest
 * @source ISO261
 * @source ASME-B1.1
 * @source BS84
 * @valid metric, Unified, Whitworth, Fine, Cycle, Brass, BA, G, R and NPT threads
 * @example parseThread('M10 × 1,25-6g').pitchDiameter → 9.188
 */
export function parseThread(text: string): Thread {
  if (text.length > longest) refuse(text, `a designation of at most ${longest} characters`, 'M10x1.25-6g');
  const plain = tidy(text);
  if (noData.test(plain)) {
    refuse(text, 'a thread this project holds data for (metric, Unified, Whitworth family, BA, G, R, NPT)', 'M10x1.25');
  }
  const suffixes = readSuffixes(plain);
  const thread =
    readMetric(text, suffixes.rest) ??
    readBa(text, suffixes.rest) ??
    readPipe(text, suffixes.rest) ??
    readInch(text, suffixes.rest);
  if (!thread) {
    refuse(text, 'the designation of a thread', 'M10x1.25-6g, 1/4-28 UNF-2A, 3/8 BSF, 2 BA, G 1/4 A or R 1/8');
  }
  return suffixes.apply(text, thread);
}

/**
 * The canonical designation: `M10x1.25-6g-LH`, `1/4-28 UNF-2A`, `3/8 BSF`, `G 1/4 A`.
 *
 * @param thread  the thread
 * @returns the designation, which {@link parseThread} reads back as the same thread
 * @source ISO261
 * @valid any thread made by {@link parseThread}
 * @example printThread(parseThread('g1/4a')) → 'G 1/4 A'
 */
export function printThread(thread: Thread): string {
  return thread.designation;
}
