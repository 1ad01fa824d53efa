/** Times of operations by the log of the bench, and put into the job so that the route is planned by them. */
import { type LoggedTimes, loggedTimes, type TimedOperation } from '@sparewright/core/bench/logged-times';
import type { Json } from '@sparewright/core/job/merge';
import type { JobPage } from '@sparewright/output/present/job-view';
import { listAt, type Path, textAt, withValue } from '../document.ts';
import type { Logged } from './use-bench-log.ts';

const taken: Path = ['route', 'taken'];

/** What the log tells of operations of the route; struck entries tell nothing. */
export function timesOf(logged: readonly Logged[], { routing }: JobPage, now: number): LoggedTimes {
  const operations = (routing?.operations ?? []).filter(({ wish }) => !wish?.skipped);
  const entries = logged.flatMap(({ entry: { at, of }, struck }) =>
    struck || of === undefined || Number.isNaN(Date.parse(at)) ? [] : [{ at: Date.parse(at) / 1000, of }],
  );
  return loggedTimes(
    entries,
    operations.map(({ id, setup, kind, planned }) => ({ id, setup: String(setup), kind, planned })),
    now,
  );
}

/** The job with the times of its own log; those written before for the same operations give way, those of other jobs stay. */
export function withTimes(document: Json, timed: readonly TimedOperation[]): Json {
  const names = new Set(timed.map(({ of }) => of));
  const others = listAt(document, taken).filter((entry) => !names.has(textAt(entry, ['of'])));
  const own = timed.map(({ of, kind, planned, taken: took }) => ({
    kind,
    planned: inMinutes(planned),
    taken: inMinutes(took),
    of,
  }));
  return withValue(document, taken, [...others, ...own]);
}

/** Whether the job says all this already. */
export function isLearned(document: Json | undefined, timed: readonly TimedOperation[]): boolean {
  const said = listAt(document, taken);
  return timed.every(({ of, planned, taken: took }) =>
    said.some(
      (entry) =>
        textAt(entry, ['of']) === of &&
        textAt(entry, ['planned']) === String(inMinutes(planned)) &&
        textAt(entry, ['taken']) === String(inMinutes(took)),
    ),
  );
}

/** To a tenth of a minute. */
function inMinutes(seconds: number): number {
  return Math.round(seconds / 6) / 10;
}
