/**
 * The work as it is at a moment: diameters over stretches along the part's axis, stock included.
 */
import type { BeamSection } from '../structure/stepped-beam.ts';
import type { Mm } from '../units/quantities.ts';

export interface Stretch {
  /** Along the part from its finished left face; stock stands out on both sides. */
  readonly from: Mm;
  readonly to: Mm;
  readonly diameter: Mm;
}

export type Workpiece = readonly Stretch[];

/** A plain bar. */
export function bar(from: Mm, to: Mm, diameter: Mm): Workpiece {
  return [{ from, to, diameter }];
}

/** The work after a stretch was turned down; what is thinner already stays. */
export function turnedDown(work: Workpiece, from: Mm, to: Mm, diameter: Mm): Workpiece {
  return merged(
    work.flatMap((s) => {
      if (s.to <= from || s.from >= to || s.diameter <= diameter) return [s];
      return [
        { ...s, to: Math.max(s.from, from) },
        { from: Math.max(s.from, from), to: Math.min(s.to, to), diameter },
        { ...s, from: Math.min(s.to, to) },
      ].filter((piece) => piece.to - piece.from > 1e-9);
    }),
  );
}

/** The work after its ends were faced or cut off. */
export function cutToLength(work: Workpiece, from: Mm, to: Mm): Workpiece {
  return work
    .map((s) => ({ ...s, from: Math.max(s.from, from), to: Math.min(s.to, to) }))
    .filter((s) => s.to - s.from > 1e-9);
}

function merged(work: readonly Stretch[]): Workpiece {
  const out: Stretch[] = [];
  for (const s of work) {
    const last = out.at(-1);
    if (last && last.diameter === s.diameter && Math.abs(last.to - s.from) < 1e-9)
      out[out.length - 1] = { ...last, to: s.to };
    else out.push(s);
  }
  return out;
}

/** Largest diameter between two places. */
export function largestBetween(work: Workpiece, from: Mm, to: Mm): Mm {
  return Math.max(0, ...work.filter((s) => s.to > from + 1e-9 && s.from < to - 1e-9).map((s) => s.diameter));
}

/** The work standing out of the jaws as a beam measured from the jaw faces. */
export function beamOut(work: Workpiece, jaw: Mm, endOut: 'left' | 'right'): BeamSection[] {
  const out =
    endOut === 'right'
      ? cutToLength(work, jaw, Number.POSITIVE_INFINITY)
      : cutToLength(work, Number.NEGATIVE_INFINITY, jaw);
  const sections = out.map((s) => ({
    from: endOut === 'right' ? s.from - jaw : jaw - s.to,
    to: endOut === 'right' ? s.to - jaw : jaw - s.from,
    outerDiameter: s.diameter,
  }));
  return endOut === 'right' ? sections : sections.toReversed();
}
