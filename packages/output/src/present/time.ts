/** Times as one says them. */
import type { Second } from '@sparewright/core/units/quantities';

/** `45 s`, `12 min`, `2 h 20 min`. */
export function presentTime(seconds: Second): string {
  if (seconds < 59.5) return `${Math.round(seconds)} s`;
  const minutes = Math.round(seconds / 60);
  if (minutes < 60) return `${minutes} min`;
  const rest = minutes % 60;
  return `${Math.floor(minutes / 60)} h${rest === 0 ? '' : ` ${rest} min`}`;
}

/** `12 min (8 to 22 min)` */
export function presentTimes(time: { readonly low: Second; readonly likely: Second; readonly high: Second }): string {
  const [low, high] = [presentTime(time.low), presentTime(time.high)];
  const [, lowUnit] = low.split(' ');
  const sameUnit = low.split(' ').length === 2 && high.split(' ').length === 2 && high.endsWith(` ${lowUnit}`);
  return `${presentTime(time.likely)} (${sameUnit ? low.split(' ')[0] : low} to ${high})`;
}

/** `24 min, planned 20 min (learned from 4 operations)`; the time alone where nothing was learned. */
export function presentLearned(likely: string, planned: Second, learnedFrom: number): string {
  return learnedFrom === 0 ? likely : `${likely}, planned ${presentTime(planned)} (${learnedWords(learnedFrom)})`;
}

/** `learned from 4 operations` */
export function learnedWords(count: number): string {
  return `learned from ${count === 1 ? 'one operation' : `${count} operations`}`;
}
