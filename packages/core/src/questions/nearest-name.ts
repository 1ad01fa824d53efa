/** The name that was probably meant. */

/**
 * Of the names, the one that takes the fewest letters to put in, take out or change; undefined when there are no names.
 *
 * @param typed  what was typed
 * @param names  what there is
 */
export function nearestName(typed: string, names: readonly string[]): string | undefined {
  // Nobody types a longer one; the work grows with the length.
  const asked = typed.slice(0, 60).toLowerCase();
  let nearest: string | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const name of names) {
    const far = edits(asked, name) / Math.max(asked.length, name.length, 1);
    if (far < least) [nearest, least] = [name, far];
  }
  return nearest;
}

function edits(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 0; i < a.length; i++) {
    const next = [i + 1];
    for (let j = 0; j < b.length; j++) {
      const changed = (row[j] ?? 0) + (a[i] === b[j] ? 0 : 1);
      next.push(Math.min(changed, (row[j + 1] ?? 0) + 1, (next[j] ?? 0) + 1));
    }
    row = next;
  }
  return row[b.length] ?? 0;
}
