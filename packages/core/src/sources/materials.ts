import type { Source } from './source.ts';

/** Sources of the materials chapter: properties, names, galvanic series and galling. */
export const materials = {
  LUCEFIN: {
    title: 'Lucefin, technical card 11SMn30, after EN 10087:2000 and EN 10277-3:2008',
    kind: 'read',
    address: 'https://www.scribd.com/document/914400741/JPT4',
  },
  'LUCEFIN-PB': {
    title: 'Lucefin, technical card 11SMnPb30, after ISO 683-4:2018 and EN 10277:2018',
    kind: 'read',
    address: 'https://scribd.com/document/687971902/152293974611SMnPb30',
  },
  'ETB-MACH': {
    title: 'Machinability of metals, AISI 1112 = 100',
    kind: 'read',
    address: 'https://www.engineeringtoolbox.com/machinability-metals-d_1450.html',
    note: 'Disagrees with STEELFORGE by up to a third for stainless steels.',
  },
  STEELFORGE: {
    title: 'Machinability ratings: relative speeds, B1112 = 100',
    kind: 'read',
    address: 'https://steelforge.com/literature/machinability-ratings/',
  },
  MACHREF: {
    title: 'Material property page',
    kind: 'read',
    address: 'https://www.machref.com/content/materials.html',
    note: 'Prints 65 % for O1 and 25 % for 440C, where others have 42 and 40.',
  },
  PMPA: {
    title: 'Relative machinability of materials: 1212 for steels, C360 for copper, 2011 for aluminium',
    kind: 'read',
    address: 'https://www.pmpa.org/cribsheet-58-relative-machinability-of-materials/',
  },
  SZR: {
    title: 'C45 to EN 10083-2:1991, bar maker’s page',
    kind: 'read',
    address: 'http://szrtjs.com/en_product_detail.asp?id=382',
  },
  AALCO: {
    title: '1.4305 bar to EN 10088-3:2005, stockholder’s data sheet',
    kind: 'read',
    address: 'https://ar.scribd.com/document/351868314/',
  },
  'AALCO-BS-EN': {
    title: 'BS and equivalent EN grades of stainless steel, stockholder’s sheet',
    kind: 'read',
    address: 'https://pdfcoffee.com/download/bs-en-equivalents-stainless-steel-pdf-free.html',
  },
  ROYMECH: {
    title: 'BS 970 steels: numbers with the older EN numbers beside them',
    kind: 'read',
    address: 'https://roymech.org/Useful_Tables/Matter/Strength_st.html',
  },
  BTI: {
    title: '303 bar, maker’s data sheet',
    kind: 'read',
    address: 'https://btimetals.com/aerospace_metal/stainless_steel_303_rods_bars',
  },
  KMAC: {
    title: '416 stainless, data sheet',
    kind: 'read',
    address: 'https://kmac-distribution.com/technical/416-stainless.htm',
  },
  'MIF-416H': {
    title: 'Hardened 416 stainless steel, property page',
    kind: 'read',
    address: 'https://www.makeitfrom.com/material-properties/Hardened-416-Stainless-Steel',
  },
  'MIF-420H': {
    title: 'Hardened 420 stainless steel, property page',
    kind: 'read',
    address: 'https://www.makeitfrom.com/material-properties/Hardened-420-Stainless-Steel',
    note: 'Its Brinell hardness belongs to the annealed state.',
  },
  'MIF-C932': {
    title: 'UNS C93200, property page',
    kind: 'read',
    address: 'https://www.makeitfrom.com/material-properties/',
  },
  MODELL: {
    title: 'Cast irons by wall thickness, after EN 1561 and EN 1563',
    kind: 'read',
    address: 'https://modelleriazuin.it/en/prototypes/materials/pig-iron/',
  },
  SNCI: { title: 'EN-GJS values', kind: 'read', address: 'http://www.sn-castiron.nl/en/materials/cast-iron-en-gjs/' },
  FINK: {
    title: 'ASTM B16 limits of C36000',
    kind: 'read',
    address: 'https://finkelstein-metals.com/fr/product-fr/c36000',
  },
  EZLOK: {
    title: 'C36000, physical properties',
    kind: 'read',
    address: 'https://www.ezlok.com/technical-info/mechanical-properties/brass',
  },
  DURABAR: {
    title: 'C93200, bar maker’s page',
    kind: 'read',
    address: 'https://www.dura-barms.com/bronze/leaded-tin-bronze/c93200.cfm',
  },
  SPECTRUM: {
    title: 'C93200, data sheet',
    kind: 'read',
    address: 'http://www.spectrummachine.com/c93200-material-data-sheet',
  },
  DIVBR: {
    title: 'C93200 high-leaded tin bronze',
    kind: 'read',
    address: 'https://diversifiedbronze.com/resources/bronze-alloys/c93200-high-leaded-tin-bronze.html',
  },
  'MCD-754': {
    title: 'EN 754-2:2008, extract for 2011, 6061, 6082 drawn',
    kind: 'read',
    address: 'https://issuu.com/metalcenterdk/docs/uk_2013/61',
  },
  TOPF: {
    title: '6082 profile, physical properties',
    kind: 'read',
    address: 'https://top-factories.com/products/1205068.html',
  },
  'EE-PL': {
    title: 'Properties of plastic materials',
    kind: 'read',
    address: 'https://host.engineersedge.com/plastic/properties_of_plastic_materials_14630.htm',
  },
  'HCM-PTFE': {
    title: 'Springer Handbook of Condensed Matter and Materials Data, tables 3.3-12 and 3.3-13, p. 497',
    kind: 'read',
  },
  FINEM: {
    title: 'Fluoroplastics and PEEK, property table',
    kind: 'read',
    address: 'https://finemech.com/ft005.html',
    note: 'Its PEEK column is a filled grade.',
  },
  UNIV: {
    title: 'Polyoxymethylene, encyclopedia article',
    kind: 'read',
    address: 'http://universalium.academic.ru/294569/',
  },
  VK6: {
    title: 'Galvanic table: anodic index, with the differences allowed by surroundings',
    kind: 'read',
    address: 'https://vk6ysf.com/galvanic_table.htm',
    note: 'Lists Monel at −0.15 V and at −0.30 V.',
  },
  EICAC: {
    title: 'Anodic index, with the differences allowed by surroundings',
    kind: 'read',
    address: 'https://eicac.co.uk/anodic-index/',
  },
  L36: {
    title: 'Galvanic series in flowing seawater against a calomel electrode',
    kind: 'read',
    address: 'http://www.l-36.com/corrosion.php',
  },
  KIWI: {
    title: 'Galvanic series in seawater against a silver chloride electrode',
    kind: 'read',
    address: 'https://kiwiprops.co.nz/cms/index.php/resources?catid=13&id=49&view=article',
  },
  'AISI-GALL': {
    title:
      'Review of the wear and galling characteristics of stainless steels, AISI Designers’ Handbook, threshold table',
    kind: 'from memory',
    address: 'https://www.scribd.com/document/351203448/Galling',
    note: 'The contents page was read; the figures of the table are from memory.',
  },
  BSSA: {
    title: 'Galling of stainless steels, trade association’s note',
    kind: 'read',
    address: 'http://www.bssa.org.uk/topics.php?article=12',
    note: 'Confirms the pattern in words, gives no figures.',
  },
  'materials-MEM': {
    title:
      'EN 10083-2/-3, EN 10277, EN 10088-1/-3, EN 12163/12164, EN 1982, EN 755-2, EN 1561/1563, ASTM A564, B150, B505 as remembered',
    kind: 'from memory',
  },
  'BS970-1955': { title: 'BS 970:1955, the EN numbers and letters as remembered', kind: 'from memory' },
  TO1: {
    title: 'US Air Force T.O. 1-1A-9, table 2-8, p. 2-72',
    kind: 'read',
    address: 'https://aviationandaccessories.tpub.com/TM-43-0106/css/TM-43-0106_89.htm',
    note: 'Feeds are for bars of 25 mm and over; reduce in proportion.',
  },
  LM1: {
    title: 'Bench lathe maker’s manual, cutting speed table',
    kind: 'read',
    address: 'https://manualshive.com/ru/manual/optimum/3427210/1643041?page=41',
  },
  LM2: {
    title: 'Bench lathe maker’s manual, cutting speed table',
    kind: 'read',
    address: 'https://manualshive.com/en/manual/chester/craftsman/2596678?page=21',
    note: 'The dash is lost in the text: 2028 read as 20–28.',
  },
  PLB: { title: 'Lathe training sheet U8M1-MAT-001', kind: 'read', address: 'https://protolab.certifitrax.com' },
  DLB: {
    title: 'School workshop sheet of speeds and feeds',
    kind: 'read',
    address: 'https://docslib.org/doc/5103932/machine-tool-speeds-and-feeds',
    note: 'The column heading is lost; taken as the lathe column.',
  },
  FMC: {
    title: 'Carbide maker’s overview of grades',
    kind: 'read',
    address: 'https://cdn.shopify.com/s/files/1/0283/9796/1325/files/FM_Carbide_Overview.pdf',
  },
  DGI: {
    title: 'Tool supplier’s catalogue, turning speeds',
    kind: 'read',
    address: 'https://publications.dgisupply.com/view/344098998/5/',
  },
  NAVY: {
    title: 'US Navy training manual 14345, drilling speeds and feeds',
    kind: 'read',
    address: 'https://enginemechanics.tpub.com/14345/Holding-The-Work-93.html',
  },
  PRC: {
    title: 'Reamer maker, speeds by material and hardness',
    kind: 'read',
    address: 'https://protocutter.com/cutting-speeds-in-feet-per-minute',
  },
  ELH: { title: 'El-Hofy, Fundamentals of Machining Processes, table 5.4, p. 143', kind: 'read' },
  MH31F: {
    title: 'Machinery’s Handbook, 31st ed., p. 1250, cutting fluids',
    kind: 'read',
    address: 'https://online.flippingbook.com/view/954192180/1406',
    note: 'The columns came in one run; the pairing was checked but is not certain.',
  },
  TUTE: { title: 'Table of coolants', kind: 'read', address: 'https://forum.tuteehub.com' },
  WSP: {
    title: 'Drilling stainless steel',
    kind: 'read',
    address: 'https://workshoppist.com/drilling-stainless-steel-applications',
  },
  CUR: { title: 'Taylor exponents by tool material', kind: 'read', address: 'https://curioustab.com' },
  'workshop-tables-MEM': { title: 'Workshop speed tables for small lathes, as remembered', kind: 'from memory' },
} as const satisfies Record<string, Source>;
