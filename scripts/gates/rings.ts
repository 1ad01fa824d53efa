/** Finds rings in a graph: sets of nodes that each lead to all the others (Tarjan's strongly connected components). */
export function rings(graph: ReadonlyMap<string, ReadonlySet<string>>): string[][] {
  const index = new Map<string, number>();
  const low = new Map<string, number>();
  const stack: string[] = [];
  const onStack = new Set<string>();
  const found: string[][] = [];

  const visit = (node: string): void => {
    index.set(node, index.size);
    low.set(node, index.size - 1);
    stack.push(node);
    onStack.add(node);
    for (const next of graph.get(node) ?? []) {
      if (!index.has(next)) visit(next);
      if (onStack.has(next)) low.set(node, Math.min(low.get(node) ?? 0, low.get(next) ?? 0));
    }
    if (low.get(node) !== index.get(node)) return;
    const ring = stack.splice(stack.indexOf(node));
    for (const member of ring) onStack.delete(member);
    if (ring.length > 1 || graph.get(node)?.has(node)) found.push(ring.toSorted());
  };

  for (const node of graph.keys()) if (!index.has(node)) visit(node);
  return found;
}
