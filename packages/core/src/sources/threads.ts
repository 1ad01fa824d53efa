import type { Source } from './source.ts';

/** Sources of the threads chapter. */
export const threads = {
  'ISO68-1': {
    title: 'ISO 68-1, ISO general purpose screw threads: basic profile',
    kind: 'from memory',
    note: 'geometry',
  },
  ISO261: { title: 'ISO 261 and ISO 262, ISO metric threads: general plan and selected sizes', kind: 'from memory' },
  ISO2306: { title: 'ISO 2306, drills for use prior to tapping', kind: 'from memory' },
  'ISO965-1-T1': {
    title: 'ISO 965-1, tables 1 to 5, fundamental deviations and tolerances',
    kind: 'from memory',
    note: 'the tables were rebuilt from their formulas and agree with every printed limit read',
  },
  'MH31-p2025': {
    title: "Machinery's Handbook, 31st ed., tables 10 and 11, p. 2025",
    kind: 'read',
    address: 'https://online.flippingbook.com/view/954046886',
  },
  'MH27-p1794': {
    title: "Machinery's Handbook, 27th ed., p. 1794, metric thread limits",
    kind: 'read',
    address: 'https://www.yumpu.com/en/document/view/11356742',
  },
  'MH27-p1755': {
    title: "Machinery's Handbook, 27th ed., p. 1755, Unified limits",
    kind: 'read',
    address: 'https://text.123docz.net/document/2062979',
  },
  'MH31-p2129': { title: "Machinery's Handbook, 31st ed., p. 2129, wire constants", kind: 'read' },
  'MH31-p2130': { title: "Machinery's Handbook, 31st ed., p. 2130, dimensions over wires", kind: 'read' },
  'ASME-B1.13M-chart': {
    title: 'Chart of external 6g limits to ASME B1.13M',
    kind: 'read',
    address: 'https://apporo-cnc.com/extend.php?menu_s=406&sn=58',
  },
  'MEDH-p299': { title: "Mechanical Engineer's Data Handbook, 8.2.4, ISO metric threads and drills", kind: 'read' },
  'MEDH-p301': { title: "Mechanical Engineer's Data Handbook, 8.2.7, Unified and pipe threads", kind: 'read' },
  'MEPB-4138': { title: "Mechanical Engineer's Pocket Book, 4.1.38, pipe threads", kind: 'read' },
  'FABORY-T002': {
    title: 'Fabory, table of limits to ISO 965-2 and DIN 13-20',
    kind: 'read',
    address: 'https://www.scribd.com/document/458030939',
  },
  'ASME-B1.1': { title: 'ASME B1.1, Unified inch threads: series, tolerances and allowance', kind: 'from memory' },
  'OLDENGINE-W': {
    title: 'Threading tables, chart 1, Whitworth',
    kind: 'read',
    address: 'https://studylib.net/doc/18133655',
  },
  'TCB-threads': {
    title: 'British thread sizes, Trade Classic Bikes',
    kind: 'read',
    address: 'https://www.tradeclassicbikes.co.uk/page17.htm',
  },
  'WP-BSF': {
    title: 'British Standard Fine',
    kind: 'read',
    address: 'https://en.wikipedia.org/wiki/British_Standard_Fine',
  },
  UNIK: {
    title: 'Unik Gauges, BSW, BSF and brass threads, threads an inch',
    kind: 'read',
    address: 'https://unikgaugesindia.com/bsw-bsf-whits-thread-gauges.html',
  },
  'ETB-2041': {
    title: 'British Standard Cycle thread',
    kind: 'read',
    address: 'https://www.engineeringtoolbox.com/d_2041.html',
  },
  'MTECH-BSW': { title: 'Whitworth form, standard detail', kind: 'read', address: 'https://m-techmetal.com' },
  BS84: {
    title: 'BS 84:1956, parallel screw threads of Whitworth form, sizes and tolerances',
    kind: 'from memory',
    note: 'the tolerance formulas were not seen in a source',
  },
  'MH31-p2115': {
    title:
      "Machinery's Handbook, 31st ed., p. 2115, British Association threads: sizes, allowance and tolerance formulas",
    kind: 'read',
    address: 'https://online.flippingbook.com/view/954046886/758',
  },
  'BS93-B': {
    title: 'BS 93:2008, annex B, bases of allowances and tolerances for BA threads',
    kind: 'read',
    address:
      'https://jiaotongmap.com/bs-93-2008-pdf-free-download-british-association-b-a-screw-threads-requirements.html',
  },
  'MH27-p1857': {
    title:
      "Machinery's Handbook, 27th ed., p. 1857, Whitworth threads: the tabled diameters are the greatest of bolts and least of nuts",
    kind: 'read',
    address: 'https://www.yumpu.com/en/document/view/11356742/threads-and-threading-sportpilotinfo/137',
  },
  'THEGAUGE-BS84': {
    title: 'BSW and BSF thread gauges, classes and plating allowance of BS 84',
    kind: 'read',
    address: 'http://www.thegauge.co.uk/technical-specifications/bsw-and-bsf-thread-gauges/',
  },
  'EE-BS1157': {
    title: 'Whitworth thread chart: tapping drills of BS 1157:1975 give 77 to 87 % of full thread',
    kind: 'read',
    address: 'https://engineersedge.com/hardware/whitworth-screw-threads-chart.htm',
  },
  'MH31-T6': {
    title:
      "Machinery's Handbook, 31st ed., table 6, internal inch thread 19/64 UNS-2B worked out (headed 28, reckoned with 36 to the inch)",
    kind: 'read',
    address: 'https://online.flippingbook.com/view/954046886/636-637',
  },
  BS811: { title: 'BS 811, cycle threads, root radius', kind: 'from memory' },
  EMGS: { title: 'Table of BA threads', kind: 'read', address: 'https://studylib.net/doc/18906762' },
  'EN-ACAD-BA': {
    title: 'British Association screw threads',
    kind: 'read',
    address: 'https://en.academic.ru/dic.nsf/enwiki/1145710',
  },
  'EH-G': {
    title: 'ISO 228 pipe thread sizes, Engineering Hardware',
    kind: 'read',
    address: 'https://engineeringhardware.com/guide/standard/iso-228-g-bsp-pipe-thread-fittings',
  },
  'ISO228-1': { title: 'ISO 228-1, parallel pipe threads, tolerances', kind: 'from memory' },
  'ISO7-1': { title: 'ISO 7-1, taper pipe threads, gauge lengths', kind: 'from memory' },
  'UA-NPT': {
    title: 'ASME B1.20.1 dimensions, Unified Alloys',
    kind: 'read',
    address: 'https://www.unifiedalloys.com/p/pipe-threads',
  },
  'BOOK1-NPT': { title: 'NPT basic dimensions', kind: 'read', address: 'https://www.scribd.com/document/468524381' },
  'TC-sheet': {
    title: 'Thread measuring wire formulas by form',
    kind: 'read',
    address: 'https://www.scribd.com/document/582762296',
  },
  'JONES1915-p88': { title: 'F. D. Jones, Turning and Boring, c. 1915, p. 88, three wires', kind: 'read' },
  'NEMES-3W': { title: 'New England Model Engineering Society, three wire sheet', kind: 'read' },
  'MH-lead-correction': {
    title: "Machinery's Handbook, correction of the three-wire reading for the lead angle; EA-10/10",
    kind: 'from memory',
  },
  'SUMI-p404': { title: 'Sumitomo 2019-2020, threading passes, pp. 404 and 415', kind: 'read' },
  'TUNGALOY-p1636': { title: 'Tungaloy technical pages, threading, p. 1636', kind: 'read' },
  'INGERSOLL-p1262': {
    title: 'Ingersoll technical pages, threading, p. 1262',
    kind: 'read',
    note: 'figures headed mm are inches',
  },
  'SANDVIK-OM114': { title: 'Sandvik Coromant threading manual, p. 114, infeed formula', kind: 'read' },
  'JONES1915-p93': { title: 'F. D. Jones, Turning and Boring, c. 1915, p. 93, change gears', kind: 'read' },
  'ROSE-p632': { title: 'J. Rose, Modern Machine Shop Practice, p. 632, change gears', kind: 'read' },
  'LMS-p28': { title: 'Owner manual of a small lathe, p. 28, thread dial table', kind: 'read' },
  'NEETS-14345': { title: 'US Navy training manual 14345, lathe threading, p. 179', kind: 'read' },
  'FLIPHTML-242': { title: 'Metalworking: doing it better, p. 242, chamfer and relief of a thread', kind: 'read' },
  'SHOP-blank': { title: 'Blank diameters before cutting with a die, maker not named', kind: 'read' },
  'DIN76-1': {
    title: 'DIN 76-1, thread run-outs and undercuts',
    kind: 'from memory',
    note: 'an unsigned copy differs at P 0.6, 2.5, 3.5 and 4.5; check before relying on these',
  },
  'GBT3-CADHOME': {
    title: 'GB/T 3-1997, internal run-out and undercut',
    kind: 'read',
    address: 'http://m.cadhome.net/news/jxbz/8358.html',
  },
  ISO3508: { title: 'ISO 3508:1976, thread run-outs', kind: 'from memory' },
  'threads-ISO273': { title: 'ISO 273, clearance holes for bolts and screws', kind: 'from memory' },
  'number-drills': { title: 'Number and letter drill sizes', kind: 'from memory' },
  'DROO-S90': { title: "Maker's bulletin 27, 1967, change from old JIS threads", kind: 'read' },
  'SUZ-2010': { title: 'JIS and ISO thread table of a vehicle manual, 2010', kind: 'read' },
  'YAMAWA-p656': { title: 'Yamawa 2021, tap tables, pp. 645 and 656', kind: 'read' },
  'FEDHILL-M1-3': { title: 'Brake nut table, Fedhill', kind: 'read', address: 'https://store.fedhillusa.com' },
  ALWENA: { title: 'Meccano thread note', kind: 'read' },
  LATHENOVICE: { title: 'Microphone stand thread', kind: 'read', address: 'https://lathenovice.wordpress.com' },
  'SAE-J512': { title: 'SAE J512, tube fittings', kind: 'from memory' },
  'remembered-trade-use': { title: 'Where a thread is commonly met', kind: 'from memory' },
} as const satisfies Record<string, Source>;
