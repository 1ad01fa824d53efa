import type { Source } from './source.ts';

/** Sources of the parts chapter. */
export const parts = {
  'DIN471-A': {
    title: "DIN 471 table, 3 to 19 mm with groove loads (two sellers' copies)",
    kind: 'read',
    address: 'http://nutbolt.org/Standards/Clip-CircExt.html and https://www.capitalbolts.in/din-471',
  },
  'DIN471-B': {
    title: 'IS 3075/DIN 471 table, 3 to 42 mm',
    kind: 'read',
    address: 'https://www.scribd.com/document/587854020/Circlips',
    note: 'misprints at 25 mm (24.9 for 23.9) and 34 mm (31.3 for 32.3)',
  },
  'DIN471-MEM': { title: 'DIN 471, sizes not in the copies', kind: 'from memory' },
  'DIN472-MEM': {
    title: 'DIN 472',
    kind: 'from memory',
    note: "only the groove diameters of 10 to 13 mm agree with a read table: check a ring maker's table",
  },
  KS1336: {
    title: 'KS B 1336 / JIS B 2804 groove diameters, bores 10 to 13 mm',
    kind: 'read',
    address: 'https://gubong33.tistory.com/archive/20250405?page=2',
  },
  'GANTER-6885-1': {
    title: 'DIN 6885-1 keys and keyways',
    kind: 'read',
    address: 'https://berger-tools.co.uk/pdfs/flipping_book/Standard_Parts_Catalogue/2079',
    note: 'shaft ranges formed from single diameters',
  },
  'GANTER-6885-2': {
    title: 'DIN 6885-2 keys and keyways (withdrawn 2008-10)',
    kind: 'read',
    address: 'https://berger-tools.co.uk/pdfs/flipping_book/Standard_Parts_Catalogue/2080',
  },
  ISO1234: { title: 'ISO 1234:1997, split pins', kind: 'from memory', note: 'only the foreword was read' },
  'AMES-CLEVIS': {
    title: 'Clevis pins, metric dimensions and tolerances',
    kind: 'read',
    address: 'http://www.amesweb.info/Fasteners/Pins/Clevis_Pins_Dimensions_Metric.aspx',
    note: 'tolerances read; sizes from memory',
  },
  'NUTBOLT-DIN7': {
    title: 'Dowel pins, m6 limits (DIN 7)',
    kind: 'read',
    address: 'http://nutbolt.org/Standards/Pin-Dowel.html',
  },
  'ISO2338-MEM': { title: 'ISO 2338 parallel pins, chamfers', kind: 'from memory' },
  'DIN6325-TAB': {
    title: 'DIN 6325 hardened dowels, a table read whose address was not recorded',
    kind: 'read',
    note: 'its own line for 18 to 30 mm h6 is misprinted',
  },
  'ASME-B18.8.5M': {
    title: 'ASME B18.8.5M metric dowel pins',
    kind: 'read',
    address: 'https://abcdocz.com/doc/1381538/page-52-metric-dowel-pins',
  },
  DIN82: {
    title: 'DIN 82:1973, knurls',
    kind: 'read',
    address: 'https://ro.scribd.com/document/249031604/DIN-82-1973-Eng-Knurls-pdf',
    note: 'the factor 0.33 of RKV was read, the other factors are from memory',
  },
  'parts-MEM': { title: 'Small standard parts: values from memory', kind: 'from memory' },
  ISO866: { title: 'ISO 866 / DIN 333 A centre drills, DIN 332 centre holes form A', kind: 'from memory' },
  ISO2540: { title: 'ISO 2540, centre drills with protecting chamfer, form B', kind: 'from memory' },
  ISO2541: { title: 'ISO 2541, centre drills with curved flank, form R', kind: 'from memory' },
  'ANSI-centre': { title: 'Inch centre drills, plain type, number sizes', kind: 'from memory' },
  ISO2936: {
    title: 'ISO 2936 hexagon keys: limits and test torques',
    kind: 'from memory',
    note: 'only the scope was read',
  },
  PRACMAINT: {
    title: 'Hexagon keys, ANSI B18.3.2M: size limits, torsional shear and yield strength',
    kind: 'read',
    address: 'https://practicalmaintenance.net/?p=416',
    note: 'the first four sizes were read, the others are from memory',
  },
  BONDHUS: {
    title: 'Strength of hexagon keys: T = 0.2 Rm s³, with a table',
    kind: 'read',
    address: 'http://www.mercurius.hu/bondhus/features/protanium/body-4.htm',
  },
  CREATIVE: {
    title: 'Fastener tables: socket corners, set screws, external hexagons',
    kind: 'read',
    address: 'https://creativefasteners.co.in/standards/',
  },
  CQW: {
    title: 'Fastener parameter tables of an open CAD library (commit daa4650, Apache 2.0)',
    kind: 'read',
    address: 'https://github.com/gumyr/cq_warehouse',
    note: 'values only',
  },
  BOLTS: {
    title: 'Hexagon table of an open parts library (commit f8c8ad8, LGPL 2.1)',
    kind: 'read',
    address: 'https://github.com/boltsparts/BOLTS',
    note: 'values only',
  },
  'ISO4762-MEM': { title: 'ISO 4762 / ISO 4026 socket limits', kind: 'from memory' },
  ISO23429: { title: 'ISO 23429, gauging of hexagon sockets', kind: 'from memory' },
  'ISO4759-MEM': { title: 'ISO 4759-1, tolerances of fasteners', kind: 'from memory' },
  'ISO272-MEM': { title: 'ISO 272, widths across flats', kind: 'from memory' },
  'ISO1174-MEM': { title: 'ISO 1174-1, driving squares', kind: 'from memory' },
  'slots-MEM': { title: 'ISO 1207 slots, nominal and least width', kind: 'from memory' },
  DUBBEL: { title: 'Dubbel, torsion of a hexagonal bar (0.115 s⁴, 0.188 s³)', kind: 'from memory' },
  PAPPUS: {
    title: 'Theorems of Pappus and Guldin and of Green: solids of revolution from their half-section',
    kind: 'from memory',
  },
  'thin-wall-practice': {
    title: 'Walls under half a millimetre give way in the chuck and under the cutter',
    kind: 'common practice',
  },
  'hex-CALC': {
    title: 'Torsion of a hexagonal bar by finite elements (43 000 nodes); bearing of flanks by statics',
    kind: 'computed',
  },
} as const satisfies Record<string, Source>;
