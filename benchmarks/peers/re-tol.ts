/**
 * A published rule for finding nominal size and class from measured parts, written anew from its description: equations 14
 * and 15 of "A systematic approach for geometrical and dimensional tolerancing in reverse engineering" (2012), p. 139.
 *
 * A candidate must hold every reading: min measured ≥ N + FD and N + FD + IT ≥ max measured. Among those: whole numbers
 * before few decimals, hole basis before shaft basis, the finest grade that holds them. It knows nothing of wear.
 */
import { limitDeviations } from '@sparewright/core/standards/fits/limit-deviations';

export interface Candidate {
  readonly nominal: number;
  readonly toleranceClass: string;
}

const grades = [5, 6, 7, 8, 9, 10, 11, 12];
const shaftLetters = ['h', 'g', 'f', 'e', 'd', 'c', 'js', 'k', 'm', 'n', 'p', 'r', 's'];

/** How round a number is: 0 for a whole millimetre or eighth of an inch, more for each further division. */
function roundness(nominal: number, isInch: boolean): number {
  const steps = isInch ? [25.4 / 8, 25.4 / 16, 25.4 / 32, 25.4 / 64] : [1, 0.5, 0.1];
  return steps.findIndex((s) => Math.abs(nominal / s - Math.round(nominal / s)) < 1e-6);
}

function nominalsNear(size: number, isInch: boolean): number[] {
  const steps = isInch ? [25.4 / 64] : [0.1, 0.5];
  const found = new Set<number>();
  for (const step of steps)
    for (let i = Math.ceil((size - 0.6) / step); i * step <= size + 0.6; i++) found.add(Number((i * step).toFixed(6)));
  return [...found];
}

/** The rule's first choice; undefined when nothing holds the readings. */
export function ruleBased(readings: readonly number[], isShaft: boolean, isInch: boolean): Candidate | undefined {
  const [low, high] = [Math.min(...readings), Math.max(...readings)];
  const candidates: (Candidate & { rank: readonly [number, number, number, number] })[] = [];
  for (const nominal of nominalsNear((low + high) / 2, isInch)) {
    const letters = isShaft ? shaftLetters : ['H'];
    for (const [place, letter] of letters.entries())
      for (const grade of grades) {
        const toleranceClass = `${letter}${grade}`;
        const limits = deviations(nominal, toleranceClass);
        if (!limits || low < nominal + limits.lower || high > nominal + limits.upper) continue;
        const off = Math.abs((low + high) / 2 - nominal);
        candidates.push({ nominal, toleranceClass, rank: [roundness(nominal, isInch), grade, place, off] });
      }
  }
  return candidates.toSorted((a, b) => {
    const at = a.rank.findIndex((v, i) => v !== b.rank[i]);
    return at < 0 ? 0 : (a.rank[at] ?? 0) - (b.rank[at] ?? 0);
  })[0];
}

function deviations(nominal: number, toleranceClass: string) {
  try {
    return limitDeviations(nominal, toleranceClass);
  } catch {
    return undefined;
  }
}
