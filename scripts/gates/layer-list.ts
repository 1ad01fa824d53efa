/** The layers, as data: the only place where they are written down for the machine. `docs/builders/map.md` explains them. */

/**
 * Folders of packages/core/src from top to bottom. A folder imports only from rows below its own;
 * folders of one row do not import each other. `.` stands for the files that lie in src itself.
 */
export const coreLayers: readonly (readonly string[])[] = [
  ['questions'],
  ['job'],
  ['inspect', 'bench'],
  ['route'],
  ['lathe'],
  ['duty', 'recover'],
  ['cutting', 'structure'],
  ['evidence', 'drawing'],
  ['part'],
  ['materials', 'standards'],
  ['numerics'],
  ['units'],
  ['.'],
  ['sources'],
];

/** Folders whose subfolders are topics: topics may import each other, but never in a ring. */
export const topicFolders: readonly string[] = ['standards'];

/** Which packages a package may import: a whole one by its name, or a folder of it by its path. */
export const packageLayers: Readonly<Record<string, readonly string[]>> = {
  core: [],
  output: ['core'],
  store: ['core'],
  server: ['core', 'output', 'store'],
  web: ['core', 'output/src/svg', 'output/src/present', 'output/src/sheets', 'output/src/page', 'output/src/chart'],
  cli: ['core', 'output', 'store', 'server'],
};
