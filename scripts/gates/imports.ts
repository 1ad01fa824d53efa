/** Who imports whom: every import, export-from and import() of the packages' sources, resolved to files. */
import { dirname, join, normalize } from 'node:path/posix';
import { filesBelow, lineOf, parse, read } from './tree.ts';

export interface Import {
  readonly from: string;
  readonly line: number;
  /** As written between the quotes. */
  readonly specifier: string;
  /** The file meant, as a path from the root; undefined for packages from outside. */
  readonly to: string | undefined;
}

export const isTest = (path: string): boolean =>
  /\.test\.tsx?$/.test(path) || /^packages\/[^/]+\/(test|benchmarks)\//.test(path);

export const packageOf = (path: string): string => path.split('/')[1] ?? '';

/** All imports of the sources and tests of all packages. */
export function importsOf(root: string): Import[] {
  return filesBelow(root, 'packages', /^packages\/[^/]+\/(src|test)\/.*\.tsx?$/).flatMap((from) => {
    const text = read(root, from);
    const { module } = parse(from, text);
    const requests = [
      ...module.staticImports.map((i) => ({ at: i.start, specifier: i.moduleRequest.value })),
      ...module.staticExports.flatMap((e) =>
        e.entries.flatMap((entry) =>
          entry.moduleRequest ? [{ at: e.start, specifier: entry.moduleRequest.value }] : [],
        ),
      ),
      ...module.dynamicImports.map((i) => ({
        at: i.start,
        specifier: text.slice(i.moduleRequest.start, i.moduleRequest.end).replace(/^['"`]|['"`]$/g, ''),
      })),
      ...[...text.matchAll(/\bimport\(\s*'([^']+)'\s*\)[.\s]/g)].map((m) => ({ at: m.index, specifier: m[1] ?? '' })),
    ];
    const seen = new Set<string>();
    return requests.flatMap(({ at, specifier }) => {
      if (seen.has(specifier)) return [];
      seen.add(specifier);
      return [{ from, line: lineOf(text, at), specifier, to: resolve(from, specifier) }];
    });
  });
}

function resolve(from: string, specifier: string): string | undefined {
  if (specifier.startsWith('.')) return normalize(join(dirname(from), specifier.replace(/\?.*$/, '')));
  const own = /^@sparewright\/([^/]+)\/(.+)$/.exec(specifier);
  return own ? `packages/${own[1]}/src/${own[2]}.ts` : undefined;
}
