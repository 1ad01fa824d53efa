/** Threads put on their sections. */
import type { PlacedThread } from './part-result.ts';
import type { PlacedSection } from './place-sections.ts';
import type { ReadThread } from './read-threads.ts';
import type { ThreadFeature } from './schema.ts';

/** The threads whose designation and section are known, with the stretch they cover. */
export function placeThreads(
  threads: readonly ReadThread[],
  outside: readonly PlacedSection[],
  inside: readonly PlacedSection[],
): PlacedThread[] {
  return threads.flatMap(({ feature, thread }): PlacedThread[] => {
    if (!thread) return [];
    const external = outside.find((s) => s.feature.id === feature.on);
    const section = external ?? inside.find((s) => s.feature.id === feature.on);
    if (!section) return [];
    const side = external ? 'external' : 'internal';
    const entersAt = freeEnd(feature, section, external ? outside : undefined);
    const whole = section.to - section.from;
    const length = Math.min(feature.length?.nominal ?? whole, whole);
    const from = entersAt === 'left' ? section.from : section.to - length;
    return [{ id: feature.id, on: feature.on, thread, side, from, to: from + length, entersAt }];
  });
}

/** Where a thread begins: as entered, else the smaller neighbour's side outside, the mouth inside. */
function freeEnd(
  feature: ThreadFeature,
  section: PlacedSection,
  outside: readonly PlacedSection[] | undefined,
): 'left' | 'right' {
  const mirrored = section.side === 'inside right';
  if (feature.from !== undefined) return (feature.from === 'start') !== mirrored ? 'left' : 'right';
  if (!outside) return mirrored ? 'right' : 'left';
  const i = outside.indexOf(section);
  const left = outside[i - 1]?.endRadius ?? 0;
  const right = outside[i + 1]?.startRadius ?? 0;
  return right < left ? 'right' : 'left';
}
