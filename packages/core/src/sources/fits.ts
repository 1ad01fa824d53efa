import type { Source } from './source.ts';

/** Sources of the fits chapter: limits and fits, general tolerances, preferred numbers and bar stock. */
export const fits = {
  'ISO-286-1': {
    title: 'ISO 286-1:2010, Geometrical product specifications: ISO code system for tolerances on linear sizes',
    kind: 'from memory',
    note: 'The standard itself was not read; its tables were read in the reprints named beside them. IT18 and j8 are remembered.',
  },
  'ISO-2768-1': {
    title: 'ISO 2768-1:1989, General tolerances for linear and angular dimensions',
    kind: 'from memory',
    note: 'Read in reprints only',
  },
  'ISO-3': { title: 'ISO 3:1973, Preferred numbers; ISO 497, choice of series of rounded values', kind: 'from memory' },
  'ANSI-B4.2': {
    title: 'ANSI B4.2-1978, Preferred metric limits and fits: preferred sizes',
    kind: 'from memory',
    note: 'Sizes up to 6 mm were read in a reprint, MH-12',
  },
  'bar-lists': {
    title: 'Bar sizes commonly listed by stockholders',
    kind: 'common practice',
    note: 'From memory; stockists differ, and EN 10278 itself lists no nominal sizes',
  },
  'fit-habits': {
    title: 'Fits the trade uses for everyday work, not traced to one publication',
    kind: 'common practice',
  },
  'ND-15.1': {
    title: 'Narayana, Kannaiah, Venkata Reddy, Machine Drawing, Table 15.1, p. 213',
    kind: 'read',
    address: 'https://issuhub.com/view/index/5590?pageIndex=236',
  },
  'ND-15.2a': {
    title: 'Narayana, Kannaiah, Venkata Reddy, Machine Drawing, Table 15.2 (a to k, over 180 mm), p. 215',
    kind: 'read',
    address: 'https://issuhub.com/view/index/5590?pageIndex=238',
  },
  'ND-15.2b': {
    title: 'Narayana, Kannaiah, Venkata Reddy, Machine Drawing, Table 15.2 (m to zc, to 180 mm), p. 216',
    kind: 'read',
    address: 'https://issuhub.com/view/index/5590?pageIndex=239',
  },
  'ND-15.3a': {
    title: 'Narayana, Kannaiah, Venkata Reddy, Machine Drawing, Table 15.3 (A to N, over 120 mm), p. 219',
    kind: 'read',
    address: 'https://issuhub.com/view/index/5590?pageIndex=242',
  },
  'ND-15.3b': {
    title: 'Narayana, Kannaiah, Venkata Reddy, Machine Drawing, Table 15.3 (P to ZC, over 180 mm, and Delta), p. 221',
    kind: 'read',
    address: 'https://issuhub.com/view/index/5590?pageIndex=244',
  },
  'ND-222': {
    title: 'Narayana, Kannaiah, Venkata Reddy, Machine Drawing, Table 15.4 formulas, p. 222',
    kind: 'read',
    address: 'https://fliphtml5.com/lnym/mzww/MACHINE_DRAWING/256/',
  },
  'ND-225': {
    title: 'Narayana, Kannaiah, Venkata Reddy, Machine Drawing, solved problem and notation examples, p. 225',
    kind: 'read',
    address: 'https://fliphtml5.com/lnym/mzww/MACHINE_DRAWING/259/',
  },
  'ND-uses': {
    title: 'Narayana, Kannaiah, Venkata Reddy, Machine Drawing, guidelines on fits (tolerance tables extract)',
    kind: 'read',
    address: 'https://scribd.com/document/507936070/tolerances-tables',
  },
  'AZ-IT': {
    title: 'ISO tolerance table for bar sizes, IT01 to IT16',
    kind: 'read',
    address: 'https://azom.com/article.aspx?ArticleID=1153',
  },
  'EV-blog': {
    title: 'ISO 286 IT grades 1 to 14',
    kind: 'read',
    address: 'https://engineersvault.blogspot.com/2007/02/index-of-iso-hole-and-shaft.html',
  },
  'SF-js17': {
    title: 'ISO tolerances for fasteners (js17 = plus and minus IT17/2)',
    kind: 'read',
    address: 'https://www.scribd.com/doc/241299588/ISO-Tolerances-for-Fasteners',
  },
  'SC-IT': {
    title: 'Tolerance values for metric fasteners, IT11 to IT17',
    kind: 'read',
    address: 'https://www.scribd.com/document/342589654/FASTENER-TOLS-pdf',
    note: 'Read in a copy',
  },
  'CB-shaft': {
    title: 'Upper deviations of shafts a to js, to 200 mm',
    kind: 'read',
    address: 'https://www.cobanengineering.com/Tolerances/UpperAndLowerDeviationsShafts.asp',
  },
  'MG-shaft': {
    title: 'Fundamental deviations of shafts d to p',
    kind: 'read',
    address: 'http://mechguru.com/machine-design/din-iso-286-tolerance-fundamental-deviation-tables-shaft/',
  },
  'UF-holes': {
    title: 'Fundamental deviations of holes N to ZC, EN ISO 286-1, to 225 mm',
    kind: 'read',
    address:
      'https://usefastener.com/knowledge/399-values-of-the-fundamental-deviations-for-holes-n-to-zc-en-iso-286-1.html',
  },
  'MH-6a': {
    title: "Machinery's Handbook, 31st ed., Table 6a (BS 4500:1969 holes), p. 768",
    kind: 'read',
    address: 'https://online.flippingbook.com/view/954192180/768-769',
  },
  'MH-11': {
    title: "Machinery's Handbook, Table 11, description of preferred fits, ANSI B4.2-1978",
    kind: 'read',
    address: 'https://zh.scribd.com/document/247229124/Fits-Si-Tables-Ansi-b4-2-1978-r1994',
  },
  'MH-12': {
    title: "Machinery's Handbook, Table 12, preferred hole basis clearance fits, ANSI B4.2-1978 (R1994), p. 648",
    kind: 'read',
    address: 'https://fr.scribd.com/document/534626340/Toleransi-poros-lubang',
  },
  'DM-276': {
    title: "Preferred fits and the note on H7/p6 up to 3 mm (tooling maker's technical reference)",
    kind: 'read',
    address: 'https://online.flipbuilder.com/zmgi/xitc/files/basic-html/page276.html',
  },
  BS4500A: {
    title: 'Selected ISO fits, hole basis (list of classes only)',
    kind: 'read',
    address: 'https://slideplayer.com./amp/12850412',
    note: 'also https://www.taylorfrancis.com/books/9781315367514/chapters/10.1201/9781315367514-40',
  },
  'GM-8': {
    title: 'Ten preferred fits and how the American list differs from the British',
    kind: 'read',
    address: 'http://gometricusa.org/table8.html',
  },
  JP: {
    title: 'Preferred fits for precision parts (assembly notes)',
    kind: 'read',
    address: 'https://www.jpe-innovations.com/precision-point/preferred-fits/',
  },
  'ST-holes': {
    title: 'DIN ISO 286 extract, holes D9 to P9',
    kind: 'read',
    address: 'https://studylib.net/doc/27157987/286-2',
  },
  'MP-holes': {
    title: 'Hole tolerances, excerpt from JIS B 0401 (coupling maker)',
    kind: 'read',
    address: 'https://mikipulley.co.jp/EN/Services/Tech_data/tech08.html',
  },
  'MS-holes': {
    title: 'Tolerances of regularly used hole fits, excerpt from JIS B 0401:1999 (catalogue p. 1263)',
    kind: 'read',
    address: 'https://info.5y1.org/gd-t-calculator-excel_1_480983.html',
  },
  'SU-shafts': {
    title: 'Tolerances for regularly used shaft fits, JIS B 0401:1999 (tool maker)',
    kind: 'read',
    address: 'https://docs.steelcam.org/sumitomo/tehnicheskaya-informaciya-page28',
  },
  'PM-h': { title: 'Round bar h tolerances', kind: 'read', address: 'http://precisemetal.in/tolerence-table.php' },
  'BD-h': {
    title: 'Shaft tolerances h1 to h9, to 500 mm (tool holder maker), p. 139',
    kind: 'read',
    address: 'https://catalog.bigdaishowa.com/view/510119233/139',
  },
  'OB-j': {
    title: 'Shaft tolerances and resultant bearing fits, h6, h8, h9, j5, j6',
    kind: 'read',
    address: 'https://original-bearing.com/article/s71/shaft-tolerances-and-resultant-fits.html',
  },
  'GB-fit': {
    title: 'Bearing and shaft fits (bearing maker)',
    kind: 'read',
    address: 'http://gbbco.cn/en/page-33135.html',
  },
  'ISO-COR': {
    title: 'ISO 286-2:1988 Technical Corrigendum 1 (2006)',
    kind: 'read',
    address: 'https://1library.net/document/y82v060y-iso-tolerance-part.html',
  },
  'SH-7-7': {
    title: "Shigley's Mechanical Engineering Design (9th ed. by its page marks), Example 7-7, p. 398",
    kind: 'read',
    address:
      "https://digilib.universitaspertamina.ac.id/ebook/Shigley's%20Mechanical%20Engineering%20Design/files/basic-html/page423.html",
  },
  'SH-7-8': {
    title: "Shigley's Mechanical Engineering Design (9th ed. by its page marks), Example 7-8, p. 398",
    kind: 'read',
    address:
      "https://digilib.universitaspertamina.ac.id/ebook/Shigley's%20Mechanical%20Engineering%20Design/files/basic-html/page423.html",
  },
  'BH-3.1': {
    title: 'Bhandari, Design of Machine Elements, Example 3.1, as worked results',
    kind: 'read',
    address: 'https://github.com/FOSSEE/Scilab-TBC-Uploads',
    note: 'Book identified from memory',
  },
  'BH-3.2': {
    title: 'Bhandari, Design of Machine Elements, Example 3.2, as worked results',
    kind: 'read',
    address: 'https://github.com/FOSSEE/Scilab-TBC-Uploads',
    note: 'Book identified from memory',
  },
  'BH-3.3': {
    title: 'Bhandari, Design of Machine Elements, Example 3.3, as worked results',
    kind: 'read',
    address: 'https://github.com/FOSSEE/Scilab-TBC-Uploads',
    note: 'Book identified from memory',
  },
  'MT-13-1': {
    title: 'Mott, Machine Elements in Mechanical Design, 4th ed., Example 13-1, p. 584',
    kind: 'read',
    address:
      'https://fliphtml5.com/eraqv/nlwf/Machine_Elements_in_Mechanical_Design_%284th_Edition%29_%28_PDFDrive_%29/600',
  },
  'NV-340': {
    title: 'Drafting manual 14276, figure 340, basic shaft system',
    kind: 'read',
    address: 'http://draftingmanuals.tpub.com/14276/css/14276_169.htm',
  },
  'WK-fit': {
    title: 'Encyclopedia article on engineering fit, clearance example',
    kind: 'read',
    address: 'http://wap.danielthefox.com/en/wikiwap/page.php?p=8&w=engineering_fit',
  },
  'HE-2768': {
    title: 'General tolerances ISO 2768-1',
    kind: 'read',
    address: 'https://handfest.engineer/Toleranz/Allgemeintol.html',
  },
  'SB-2768': {
    title: "General tolerances DIN ISO 2768-1 (maker's sheet)",
    kind: 'read',
    address: 'http://www.schmidbauer.net/de/toleranzen-din-iso-2768-1/',
  },
  'DI-2768': {
    title: 'According to DIN ISO 2768-1',
    kind: 'read',
    address: 'https://www.scribd.com/document/585640440/According-to-DIN-ISO-2768-1',
    note: 'Read in a copy',
  },
  'CC-2768': {
    title: 'Broken edges, ISO 2768-1:1989',
    kind: 'read',
    address:
      'https://www.camcut-group.com/en-us/support/instructions/measuring/general-tolerances/general-tolerances-for-broken-edges-external-radii-and-chamfer',
  },
  'RN-wiki': {
    title: 'Renard series (article)',
    kind: 'read',
    address: 'https://everything.explained.today/Renard_series/',
  },
  'RN-code': {
    title: 'R5 to R40 value lists in several public source files (figures only)',
    kind: 'read',
    note: 'found by the value string 1.06, 1.12, 1.18, 1.25, 1.32, 1.4',
  },
  'EV-10278': {
    title: 'EN 10278 bright bar, tolerance classes and table',
    kind: 'read',
    address: 'https://evgroupchina.com/en/encyclopedia-of-metal/en-10278/',
  },
  'TC-10278': {
    title: 'Tolerances to EN 10278 for bright stainless bars',
    kind: 'read',
    address: 'https://tubingchina.com/Tolerances-to-EN-10278-for-Bright-Stainless-Steel-Bars.htm',
  },
  'EN-fwd': {
    title: 'DIN EN 10278:1999, national foreword (no nominal sizes given; replaces DIN 668, 670, 671 and others)',
    kind: 'read',
    address:
      'https://9dok.net/document/q5mdr5mr-deutsche-norm-ma%C3%9Fe-grenzabma%C3%9Fe-blankstahlerzeugnissen-deutsche-fassung-en.html',
  },
  'SS-norm': {
    title: 'ISO tolerance classes and the older DIN bar standards',
    kind: 'read',
    address: 'http://stahlbauteile.com/iso-din/normtoleranzen.html',
  },
  'RB-ss': {
    title: 'EN standards for stainless bar (stockholder sheet)',
    kind: 'read',
    address:
      'https://www.rightonblackburns.co.uk/datasheets/view/Stainless-Steel-EN-Standards-for-Stainless-Steel-Bar_63',
  },
  'SJ-bar': {
    title: 'Stainless bar masses and sizes (stockholder)',
    kind: 'read',
    address: 'https://www.steeljrv.com/stainless-steel-bar-conditions-surface-finishes-tolerances.html',
  },
  'AB-970': {
    title: 'BS 970-3:1991 tolerances for cold drawn and turned bar',
    kind: 'read',
    address:
      'http://www.actonbrightsteel.co.uk/index.php?mact=Printing,m5,printpage,1&m5pdf=false&m5showbutton=true&m5popup=true&m5goback=0&m5returnid=81&page=81',
  },
  A108: {
    title: 'ASTM A108-03 Table A1.1, cold finished bars',
    kind: 'read',
    address: 'https://ar.scribd.com/document/363270147/TOLERANCES-FOR-COLD-FINISHED-BARS',
  },
  'SX-inch': {
    title: 'h7 to h11 in inches; BS 970-3:1991',
    kind: 'read',
    address: 'https://www.springfixusa.com/?p=204',
  },
  'DS-rod': { title: 'Drill rod tolerances', kind: 'read', address: 'https://diesupplies.com/?p=293' },
} as const satisfies Record<string, Source>;
