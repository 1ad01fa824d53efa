import type { Source } from './source.ts';

/** Sources of the surface chapter: abrasives, roughness, its measurement, seal faces. */
export const surface = {
  'stusshed-grit': {
    title: 'Comparing abrasive systems: FEPA and CAMI mean diameters',
    kind: 'read',
    address: 'https://stusshed.wordpress.com/2008/03/24/',
  },
  'sizes-sandpaper': {
    title: 'Sandpaper grades, P12 to P120',
    kind: 'read',
    address: 'http://sizes.com/tools/sandpaper.htm',
  },
  xinyida: {
    title: 'Grit to Ra on 304 stainless',
    kind: 'read',
    address: 'https://xinyidapolish.com/en/news/2025-09/439',
  },
  moosefos: {
    title: 'Belt grit to Ra guide, and the warning on two grit systems',
    kind: 'read',
    address: 'https://moosefos.tjlupai.com/en/sdzs/grit-ra-guide.html',
  },
  'engnews-nz': {
    title: 'How polishing grades are measured',
    kind: 'read',
    address: 'https://engineeringnews.co.nz/2022/01/18/school-is-in-how-polishing-grades-are-measured/',
  },
  firstratemold: {
    title: 'Roughness average by production methods',
    kind: 'read',
    address: 'https://firstratemold.com/define-surface-roughness',
    note: 'Its honing and polishing bands are far coarser than the handbook chart.',
  },
  epm: {
    title: 'Surface finish for seals, relation of Rt and Ra',
    kind: 'read',
    address: 'https://www.epm.com/sealing-technical-information/working-conditions/surface-finish/',
  },
  'curioustab-lapping': {
    title: 'Lapping: metal removed',
    kind: 'read',
    address: 'https://curioustab.com/lapping-operaion-amount-metal-removed-64578',
  },
  'studylib-surf': {
    title: 'Explanation of surface characteristics and standards, after ISO 4287, 4288, 3274',
    kind: 'read',
    address: 'https://studylib.net/doc/18091676/',
  },
  'parker-finish': {
    title: 'Surface finish of gland walls, O-ring maker’s table (ORD 5700) and handbook',
    kind: 'read',
    address: 'https://hannifin38.rssing.com/chan-63957505/article195.html',
  },
  'apple-finish': {
    title: 'Seal design guide: surface finishes',
    kind: 'read',
    address: 'https://www.applerubber.com/seal-design-guide/seal-types-and-gland-design/surface-finishes/',
  },
  'apg-67': {
    title: 'O-rings catalogue, p. 67',
    kind: 'read',
    address: 'https://www.goodyearrubberproducts.com/2012pdfs/O_rings_Catalog/files/assets/seo/page67.html',
  },
  marco: { title: 'Groove design assistance', kind: 'read', address: 'http://www.marcorubber.com/gd-directory.htm' },
  'oringsupply-finish': {
    title: 'O-ring groove surface finish',
    kind: 'read',
    address: 'https://oringsupplyco.com/blog/o-ring-groove-surface-finish/',
  },
  'surface-derived': { title: 'Derived from the geometry of the turned profile', kind: 'computed' },
  physics: { title: 'Follows from definitions', kind: 'computed' },
  'mem-iso6344': { title: 'ISO 6344, tolerances of coated abrasive grades', kind: 'from memory' },
  'mem-b46': { title: 'Roughness by process, chart of ASME B46.1 and handbooks', kind: 'from memory' },
  'mem-machinery': { title: 'Textbook formula for the roughness of a turned surface', kind: 'from memory' },
  'mem-din4768': { title: 'DIN 4768 supplement, Ra and Rz', kind: 'from memory' },
  'mem-iso4288': { title: 'ISO 4288:1996, cut-off and evaluation length', kind: 'from memory' },
  'mem-iso21920': { title: 'ISO 21920-3, default acceptance rule', kind: 'from memory' },
  'mem-iso3601-2': { title: 'ISO 3601-2, surface roughness of O-ring housings', kind: 'from memory' },
  'mem-toolengineers': {
    title: 'Tool and Manufacturing Engineers Handbook, finishing allowances',
    kind: 'from memory',
  },
  iso1302: { title: 'ISO 1302:1978, roughness grade numbers N1 to N12', kind: 'from memory' },
  'brammertz-1961': {
    title: 'Brammertz, Die Entstehung der Oberflächenrauheit beim Feindrehen, Industrie-Anzeiger 83, 1961',
    kind: 'from memory',
  },
} as const satisfies Record<string, Source>;
