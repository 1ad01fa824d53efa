/** Readings made ready for the inference: what each one's own uncertainty is and what it shares with its gauge. */
import type { Weighed } from '../evidence/evidence-result.ts';
import type { Mm } from '../units/quantities.ts';
import type { Turn } from './posterior.ts';
import type { Ready } from './reading-density.ts';

/** Shares of a reading's budget that all readings with that gauge have in common. */
const common = new Set(['error of the gauge', 'temperature']);

/** Readings repeated at one place say no more about wear than one of them: they are joined, unless they quarrel. */
export function ready(weighed: readonly Weighed[], turn: Turn): { readings: Ready[]; joined: string[][] } {
  const places = new Map<string, Weighed[]>();
  weighed.forEach((w, i) => {
    const { specimen = '', along, angle, gauge = '', condition = '' } = w.reading;
    const placed = along !== undefined || angle !== undefined;
    const key = placed ? [specimen, along, angle, gauge, condition].join('|') : `#${i}`;
    places.set(key, [...(places.get(key) ?? []), w]);
  });
  const groups = [...places.values()];
  return {
    readings: groups.map((group) => joinedReading(group, turn)),
    joined: groups.filter((g) => g.length > 1).map((g) => g.map((w) => w.reading.id)),
  };
}

function joinedReading(group: readonly Weighed[], turn: Turn): Ready {
  const [first] = group;
  const n = group.length;
  const value = group.reduce((sum, w) => sum + w.value, 0) / n;
  const share = (names: (name: string) => boolean): Mm =>
    Math.hypot(...(first?.budget ?? []).filter((b) => names(b.from)).map((b) => b.share));
  const hand = share((name) => name === 'repeatability of the hand');
  const rest = share((name) => name !== 'repeatability of the hand' && !common.has(name));
  return {
    id: group.map((w) => w.reading.id).join(', '),
    specimen: first?.reading.specimen ?? '',
    condition: first?.reading.condition ?? 'unsure',
    gauge: first?.reading.gauge ?? '',
    value: turn * value,
    own: Math.max(1e-4, Math.hypot(hand / Math.sqrt(n), rest)),
    shared: share((name) => common.has(name)),
  };
}
