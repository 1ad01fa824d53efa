import type { Source } from './source.ts';

/** Sources of the cutting chapter. */
export const cutting = {
  ISC17: {
    title: 'Insert maker, turning catalogue 2017, material groups, p. 558',
    kind: 'read',
    address: 'https://docs.steelcam.org/iscar/katalog-tokarnyj-instrument-2017-page558',
  },
  ISC22: {
    title: 'Insert maker, boring catalogue 2022, material groups, p. 111',
    kind: 'read',
    address: 'https://docs.steelcam.org/iscar/katalog-iscar-rastochnye-sistemy-2022-page111',
    note: 'disputes the same maker’s 2017 figures for titanium',
  },
  WKZ: {
    title: 'Encyclopedia article on specific cutting force (Kienzle formula), with constants',
    kind: 'read',
    address: 'https://de.m.wiki.x.io/wiki/Kienzle-Formel',
  },
  KOE: {
    title:
      'König, Essel: figures for cutting force and its corrections as reprinted in German handbooks (Tschätsch, Dietrich)',
    kind: 'from memory',
  },
  SVK: { title: 'Insert maker, list of specific cutting force kc1 by material group', kind: 'from memory' },
  SVF: {
    title: 'Insert maker, specific cutting force and its correction for rake',
    kind: 'read',
    address: 'https://www.sandvik.coromant.com/en-gb/knowledge/materials/specific-cutting-force',
    note: 'principle read, the formula itself from memory',
  },
  SVT: {
    title: 'Insert maker, general turning formulas and definitions',
    kind: 'read',
    address:
      'https://www.sandvik.coromant.com/en-gb/knowledge/machining-formulas-definitions/general-turning-formulas-definitions',
  },
  SVH: {
    title: 'Insert maker, handbook for heat-resistant alloys, p. 19: feeds with round inserts',
    kind: 'read',
    address:
      'http://38.142.81.21:8001/manual/sandvik-coromant/heat-resistant-super-alloys/owner-manual-english/page-21.html',
  },
  ROH: {
    title: 'Chuck maker’s standard RN-1391, pp. 43-51: specific cutting forces and clamping',
    kind: 'read',
    address: 'https://www.manualslib.mx/manual/267260/Rohm-Norm-Rn-1391.html?page=43',
  },
  VKD: {
    title: 'Carbide maker, influence of nose radius on the cut',
    kind: 'read',
    address: 'https://vkdcarbide.com/new/new-30-13.html',
  },
  'colwell-1954': {
    title: 'Colwell, Predicting the Angle of Chip Flow for Single-Point Cutting Tools, Trans. ASME 76 (1954) 199-204',
    kind: 'from memory',
  },
  'merchant-1945': {
    title: 'Merchant, Mechanics of the Metal Cutting Process, J. Appl. Phys. 16 (1945): circle of cutting forces',
    kind: 'from memory',
  },
  'budak-1996': {
    title:
      'Budak, Altintas, Armarego, Prediction of Milling Force Coefficients from Orthogonal Cutting Data (1996): Ti-6Al-4V edge forces 24 and 43 N/mm',
    kind: 'from memory',
    note: 'the only edge forces at hand; carried to other materials and edges by proportion, so within a factor of two',
  },
  LIT: {
    title: 'General literature on edge radius and minimum chip thickness',
    kind: 'from memory',
    note: 'a review exists (Wojciechowski, Materials 2022, 15(1), 59); its tables were not readable',
  },
  IMD: {
    title: 'Trade article on brazed carbide boring tools: hone of 0.0005 to 0.002 in',
    kind: 'read',
    address: 'https://industrialmonitordirect.com',
  },
  MH31: {
    title: "Machinery's Handbook, 31st ed., pp. 1147-1153: power and drilling factors",
    kind: 'read',
    address: 'https://online.flippingbook.com/view/954192180/1303',
    note: 'feed, diameter and chisel-edge factors read; material factors, wear factors and efficiencies from memory',
  },
  TUN: {
    title: 'Tool maker, general catalogue 2020-2021, drilling reference, p. L068',
    kind: 'read',
    address: 'https://docs.steelcam.org/tungaloy/obshij-katalog-tungaloy-2020-2021-page1656',
    note: 'printed power lies about 2 % below torque times speed',
  },
  HAI: {
    title: 'Collet-chuck maker, operating manual: drilling force for clamping, 0.45 D f kc',
    kind: 'read',
    address: 'https://manualshive.com/en/manual/hainbuch/hydrok/3248048?page=32',
  },
  MMC: {
    title: 'Training course, drilling forces: typical torque and thrust of a 10 mm drill',
    kind: 'read',
    address: 'https://mmc-permanent.learnways.com/courses/81/drilling-forces.html',
  },
  LZQ: {
    title: 'Drilling formulas with examples',
    kind: 'read',
    address: 'https://lzqtool.com/lzqtoolcomcn/dzyb/102/102uk.html',
  },
  DEC: {
    title: 'Drill chart: speed and feed reductions for deep holes',
    kind: 'read',
    address: 'https://www.scribd.com/document/329300769',
    note: 'reductions read, the depths they belong to from memory',
  },
  KEN: {
    title: 'Drilling tips of a drill merchant: pecking',
    kind: 'read',
    address: 'https://iowamidland.com/tech%20tips',
  },
  ING: {
    title: 'Insert maker, general catalogue 2011, pp. 1346-1347: parting',
    kind: 'read',
    address: 'https://docs.steelcam.org/ingersoll/obshij-katalog-ingersoll-2011-page1346',
  },
  KYO: {
    title: 'Carbide maker, catalogue 2016-2017, basic formulas R32',
    kind: 'read',
    address: 'https://docs.steelcam.org/kyocera/osnovnoj-katalog-2016-2017-page952',
  },
  DOR: {
    title: 'Tool maker 2024, turning correction factors, p. 76',
    kind: 'read',
    address: 'https://publications.dgisupply.com/view/424735996/76',
  },
  GRO: { title: 'Groover, Fundamentals of Modern Manufacturing, ch. 21-23', kind: 'from memory' },
  KAL: { title: 'Kalpakjian, Schmid, Manufacturing Engineering and Technology', kind: 'from memory' },
  RAO: { title: 'P. N. Rao, Manufacturing Technology: extended tool-life equation', kind: 'from memory' },
  'cutting-CALC': { title: 'Check cases computed from constants of the source named', kind: 'computed' },
} as const satisfies Record<string, Source>;
