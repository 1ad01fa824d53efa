/** A hole as a chain: walls, steps and bottom from the mouth inward. */
import type { Mm } from '../units/quantities.ts';
import type { Point, Segment } from './outline-types.ts';
import type { Stretch } from './place-bores.ts';
import { label, line, tidy } from './segment.ts';

/** From the mouth at depth 0 along the stretches; closed at the bottom unless the hole opens on the other side. */
export function insideChain(stretches: readonly Stretch[], isOpen: boolean): Segment[] {
  const segments: Segment[] = [];
  let last: Stretch | undefined;
  for (const s of stretches) {
    const start: Point = { z: s.from, r: s.startRadius };
    if (last) {
      const wider = last.endRadius > s.startRadius ? last : s;
      segments.push(line({ z: last.to, r: last.endRadius }, start, label(wider.section, wider.assumed, true)));
    }
    segments.push(line(start, { z: s.to, r: s.endRadius }, label(s.section, s.assumed)));
    last = s;
  }
  if (last && !isOpen) {
    const bottom: Point = { z: last.to, r: last.endRadius };
    segments.push(line(bottom, { z: last.to, r: 0 }, label(last.section, last.assumed, true)));
  }
  return tidy(segments);
}

/** The same seen from the other end: depths become positions along a part of that length. */
export function mirroredStretches(stretches: readonly Stretch[], length: Mm): Stretch[] {
  return stretches.map((s) => ({
    ...s,
    from: length - s.to,
    to: length - s.from,
    startRadius: s.endRadius,
    endRadius: s.startRadius,
  }));
}

/** The chain with left and right exchanged, still running the way it ran. */
export function mirrored(chain: readonly Segment[], length: Mm): Segment[] {
  return chain.map((s) => {
    const ends = { from: flip(s.from, length), to: flip(s.to, length) };
    return s.kind === 'arc' ? { ...s, ...ends, centre: flip(s.centre, length), sweep: -s.sweep } : { ...s, ...ends };
  });
}

const flip = (p: Point, length: Mm): Point => ({ z: length - p.z, r: p.r });

/** The stretches up to `end`, the last one cut there. */
export function upTo(stretches: readonly Stretch[], end: Mm): Stretch[] {
  return stretches.flatMap((s) => {
    if (s.from >= end - 1e-9) return [];
    if (s.to <= end) return [s];
    const radius = s.startRadius + ((s.endRadius - s.startRadius) * (end - s.from)) / (s.to - s.from);
    return [{ ...s, to: end, endRadius: radius }];
  });
}
