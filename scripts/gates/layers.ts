/** Gate: imports go downwards, within the core and between packages, and never round in a ring. */
import { type Import, importsOf, isTest, packageOf } from './imports.ts';
import { coreLayers, packageLayers, topicFolders } from './layer-list.ts';
import { rings } from './rings.ts';
import { filesBelow, type Gate, type Violation } from './tree.ts';

export const layers: Gate = {
  name: 'layers',
  proves: 'imports go downwards in the core and between packages, and there is no import ring',
  check(root) {
    const imports = importsOf(root);
    if (imports.length === 0) return [{ at: 'packages', says: 'no imports were found: the gate is reading nothing' }];
    return [
      ...unknownFolders(root),
      ...imports.flatMap((i) => [...acrossPackages(i), ...insideCore(i)]),
      ...fileRings(imports),
      ...topicRings(imports),
    ];
  },
};

/** Row of a core file in the list of layers, counted from the top; undefined when its folder has none. */
export function coreRow(path: string): number | undefined {
  const row = coreLayers.findIndex((names) => names.includes(folderOf(path)));
  return row < 0 ? undefined : row;
}

function folderOf(path: string): string {
  const parts = path.split('/').slice(3);
  return parts.length > 1 ? (parts[0] ?? '.') : '.';
}

function unknownFolders(root: string): Violation[] {
  const folders = new Set(filesBelow(root, 'packages/core/src', /\.ts$/).map(folderOf));
  const packages = new Set(filesBelow(root, 'packages', /\/package\.json$/).map(packageOf));
  return [
    ...[...folders]
      .filter((folder) => !coreLayers.some((row) => row.includes(folder)))
      .map((folder) => ({ at: `packages/core/src/${folder}`, says: 'has no place in the list of layers' })),
    ...[...packages]
      .filter((name) => !(name in packageLayers))
      .map((name) => ({ at: `packages/${name}`, says: 'has no place in the list of packages' })),
  ];
}

function acrossPackages(i: Import): Violation[] {
  if (i.to === undefined) return [];
  const own = packageOf(i.from);
  const other = packageOf(i.to);
  const at = `${i.from}:${i.line}`;
  if (!i.to.startsWith('packages/')) {
    return isTest(i.from) ? [] : [{ at, says: `reaches out of the packages: ${i.specifier}` }];
  }
  if (own === other) {
    return i.specifier.startsWith('@') ? [{ at, says: `inside a package imports are relative: ${i.specifier}` }] : [];
  }
  const allowed = packageLayers[own] ?? [];
  if (!allowed.some((place) => place === other || i.to?.startsWith(`packages/${place}/`))) {
    return [{ at, says: `${own} may not import ${other}: ${i.specifier}` }];
  }
  const sharedTestTools = isTest(i.from) && i.to.startsWith(`packages/${other}/test/`);
  return i.specifier.startsWith('.') && !sharedTestTools
    ? [{ at, says: `another package is reached by its name, not by a path: ${i.specifier}` }]
    : [];
}

function insideCore(i: Import): Violation[] {
  const inSources = (path: string) => path.startsWith('packages/core/src/');
  // A test may look at its subject from above: it is no part of what is shipped.
  if (i.to === undefined || isTest(i.from) || !inSources(i.from)) return [];
  const at = `${i.from}:${i.line}`;
  if (!inSources(i.to)) {
    return packageOf(i.to) === 'core' ? [{ at, says: `a source imports from outside src: ${i.specifier}` }] : [];
  }
  const [from, to] = [folderOf(i.from), folderOf(i.to)];
  const [fromRow, toRow] = [coreRow(i.from), coreRow(i.to)];
  if (from === to || fromRow === undefined || toRow === undefined || fromRow < toRow) return [];
  const name = (folder: string) => (folder === '.' ? 'the root files' : `${folder}/`);
  const why = fromRow === toRow ? 'stands beside' : 'stands above';
  return [{ at, says: `imports ${i.specifier}, but ${name(to)} ${why} ${name(from)}` }];
}

function fileRings(imports: readonly Import[]): Violation[] {
  const graph = new Map<string, Set<string>>();
  for (const { from, to } of imports) if (to !== undefined) edge(graph, from, to);
  return rings(graph).map((ring) => ({ at: ring[0] ?? '', says: `imports go round in a ring: ${ring.join(', ')}` }));
}

function topicRings(imports: readonly Import[]): Violation[] {
  return topicFolders.flatMap((folder) => {
    const base = `packages/core/src/${folder}/`;
    const topic = (path: string) => path.slice(base.length).split('/')[0] ?? '';
    const graph = new Map<string, Set<string>>();
    for (const { from, to } of imports) {
      const inside = to?.startsWith(base) && from.startsWith(base) && !isTest(from);
      if (inside && to !== undefined && topic(from) !== topic(to)) edge(graph, topic(from), topic(to));
    }
    return rings(graph).map((ring) => ({ at: base, says: `topics import each other in a ring: ${ring.join(', ')}` }));
  });
}

function edge(graph: Map<string, Set<string>>, from: string, to: string): void {
  const targets = graph.get(from) ?? new Set();
  graph.set(from, targets.add(to));
}
