import type { Source } from './source.ts';

/** Sources of the seals chapter. */
export const seals = {
  globaloring: {
    title: 'AS568 size chart: ID range and cross-section of each series; used as end-point check of the size table',
    kind: 'read',
    address: 'https://www.globaloring.com/as568-size-chart/',
  },
  rtdygert: {
    title: 'Tolerances for metric O-rings (adopts ISO 3601-1 class B, annex A.4)',
    kind: 'read',
    address: 'https://www.rtdygert.com/tolerances-for-metric-o-rings.html',
  },
  'apple-gland': {
    title: 'Seal types and gland design, tables for static and dynamic glands (Apple Rubber, p. 37)',
    kind: 'read',
    address:
      'https://fdocument.pub/document/seal-types-gland-design-apple-groove-depth-seal-types-gland-design-illustration.html',
  },
  'engineersedge-static': {
    title: 'O-ring installation, static cylindrical (reproduces the Parker static chart 4-2, no-backup columns)',
    kind: 'read',
    address: 'http://engineersedge.com/general_engineering/oring_gland_size_static_cylinders.htm',
  },
  'orings-uk': {
    title: 'Housing dimensions, radial and axial (metric, 0.50 to 7.00 mm)',
    kind: 'read',
    address: 'https://orings.co.uk/o-ring-housing',
  },
  sealsupply: {
    title: 'O-rings, installation, static sealing with radial compression (d2, t, b1, z, r1, r2; 0.50 to 5.33 mm)',
    kind: 'read',
    address: 'https://scribd.com/document/690505894/O-ring-na-konusu',
  },
  'seals-marco': {
    title: 'Groove design assistance (squeeze, stretch, fill, finish)',
    kind: 'read',
    address: 'http://www.marcorubber.com/gd-directory.htm',
  },
  allorings: {
    title: 'Dynamic ID/OD seal with rectangular gland',
    kind: 'read',
    address: 'http://www.allorings.com/dynamic_rect.htm',
  },
  cutler: {
    title: 'What is stretch of O-ring',
    kind: 'read',
    address: 'https://www.cutlergrp.com/what-is-stretch-of-o-ring/',
  },
  'parker-stretch': {
    title: 'How to design an O-ring gland: stretch (Parker article, reposted)',
    kind: 'read',
    address: 'https://www.gallagherseals.com/blog/how-to-design-o-ring-gland-stretch',
  },
  'parker-fill': {
    title: 'Failure modes: gland overfill (Parker O-ring e-handbook)',
    kind: 'read',
    address:
      'https://www.parker.com/us/en/divisions/o-ring-and-engineered-seals-division/resources/oring-ehandbook/failure-modes/gland-overfill.html',
  },
  'kutz-v3-290': {
    title: "Mechanical Engineers' Handbook, vol. 3, p. 290, seal technology",
    kind: 'read',
    address: 'https://fliphtml5.com/osspz/lzbm/ (page 306)',
  },
  'scribd-ring09': {
    title: 'O-ring design, chapter 9 (gland height, fill by area)',
    kind: 'read',
    address: 'https://www.scribd.com/document/515814701/Ring-Design-Chapter09',
  },
  usseal: {
    title: 'General design and gland dimensions, pages 2 to 4',
    kind: 'read',
    address: 'http://www.usseal.com/orings/Glanddimensions/general_oring_2.html (also _3, _4)',
  },
  'usseal-2': {
    title: 'General design and gland dimensions, pages 2 to 4',
    kind: 'read',
    address: 'http://www.usseal.com/orings/Glanddimensions/general_oring_2.html (also _3, _4)',
  },
  'usseal-4': {
    title: 'General design and gland dimensions, pages 2 to 4',
    kind: 'read',
    address: 'http://www.usseal.com/orings/Glanddimensions/general_oring_2.html (also _3, _4)',
  },
  sealanddesign: {
    title: 'Extrusion limits of O-rings: diametral clearance against pressure and hardness',
    kind: 'read',
    address: 'http://www.sealanddesign.com/category/Extrusion-Limits/611.html',
  },
  gioang: {
    title: 'O-ring groove / gland design glossary entry (doubtful)',
    kind: 'read',
    address: 'https://www.gioanggasket.com/thuat-ngu/oring-groove-gland-design/',
    note: 'weak or doubtful source',
  },
  'nh-oring': {
    title: 'Sealing effect (worked figure: 3 mm cord in 2.3 mm groove)',
    kind: 'read',
    address: 'https://nh-oring.de/en/sealing-effect-o-ring-lexicon/',
  },
  bodeseal: {
    title: 'Properties of elastomers, table',
    kind: 'read',
    address: 'https://www.bodeseal.com/technical-support/',
  },
  'oringsupply-nbr-epdm': {
    title: 'NBR against EPDM O-rings',
    kind: 'read',
    address: 'https://oringsupplyco.com/blog/nbr-vs-epdm-o-rings/',
  },
  'pixieset-materials': {
    title: 'O-ring materials NBR, FKM, EPDM compared (weak source)',
    kind: 'read',
    address: 'https://hugolarson43.mypixieset.com/o-ring-materials-nbr-fkm-and/',
    note: 'weak or doubtful source',
  },
  US8794396B2: {
    title: 'Patent, seal groove with a projection, claim 1',
    kind: 'read',
    address: 'https://patentindex.ai/patent/US8794396B2',
  },
  US4387901A: {
    title: 'Patent, retraction seal with anti-nibbling feature, claim 1',
    kind: 'read',
    address: 'https://patentindex.ai/patent/US4387901A',
  },
  WO2026132772A1: {
    title: 'Patent application, brake caliper groove',
    kind: 'read',
    address: 'https://eureka.patsnap.com/patent/WO2026132772A1',
  },
  WO9819075A1: {
    title: 'Patent application, disc brake caliper groove recess (abstract)',
    kind: 'read',
    address: 'http://zl.czvv.com/75864130.html',
  },
  'SAE2002-01-0927': {
    title: 'Analysis of brake caliper seal-groove design (abstract only)',
    kind: 'read',
    address: 'https://doi.org/10.4271/2002-01-0927',
  },
  'hd-maverick': {
    title: 'Caliper overhaul note (groove is tapered)',
    kind: 'read',
    address: 'http://hd-maverick.com/kiyaripa-.htm',
  },
  bestscantool: {
    title: 'O-rings, square-cut caliper ring, low-drag groove (textbook extract)',
    kind: 'read',
    address: 'https://bestscantool.net/o-rings',
  },
  psealing: { title: 'Function and maintenance of brake seals', kind: 'read', address: 'https://psealing.com/?p=1491' },
  verybestblogs: {
    title: 'Purpose of the caliper seal (secondary, weak)',
    kind: 'read',
    address: 'http://www.verybestblogs.com/automobiles-what-is-the-purpose-of-the-caliper-seal.html',
    note: 'weak or doubtful source',
  },
  'montesa-cota4': {
    title: "Owner's manual, specifications, clutch slave cylinder",
    kind: 'read',
    address: 'https://manualmachine.com/montesa/cota4rtracereplica/20818051-owners-manual',
  },
  'mercury-1992': {
    title: 'Car manual 1992, caliper inspection and honing limit',
    kind: 'read',
    address:
      'https://charm.li/Mercury/1992/Cougar%2FXR7%20V6-232%203.8L/Repair%20and%20Diagnosis/Brakes%20and%20Traction%20Control/Disc%20Brake%20System/Testing%20and%20Inspection/Inspection',
  },
  'nissan-2000': {
    title: 'Car manual 2000, caliper inspection',
    kind: 'read',
    address: 'https://manuals.autorepairshq.com/ (Nissan-Datsun 2000 Altima, brake caliper)',
  },
  'hyundai-shop': {
    title: 'Shop manual 2009, caliper inspection',
    kind: 'read',
    address: 'https://gds-manuals.ru/data/hme/tb12/2009/shop/10486560.html',
  },
  'seals-physics': { title: 'Follows from geometry, conservation of volume or the gland formulas', kind: 'computed' },
  'mem-as568': {
    title: 'SAE AS568 size table',
    kind: 'from memory',
    note: '11 ends of inside-diameter ranges and 29 single inside diameters agree with read values; inch tolerances unread',
  },
  'mem-iso3601-1': { title: 'ISO 3601-1, class A and B cross-section tolerances', kind: 'from memory' },
  'mem-din3771': { title: 'DIN 3771 tolerance band above 8.4 mm', kind: 'from memory', note: 'low confidence' },
  'mem-gbt3452.1': {
    title: 'GB/T 3452.1-2005 sizes (equivalent to ISO 3601-1:1988)',
    kind: 'from memory',
    note: 'medium confidence',
  },
  'mem-gbt3452.3': {
    title: 'GB/T 3452.3-2005 grooves (equivalent to the older ISO 3601-2)',
    kind: 'from memory',
    note: 'medium confidence',
  },
  'mem-jisb2401': { title: 'JIS B 2401-1 sizes', kind: 'from memory', note: 'medium confidence' },
  'mem-parker-4-2': {
    title: 'Parker O-Ring Handbook ORD 5700, design chart 4-2 (static, radial)',
    kind: 'from memory',
  },
  'mem-parker-4-3': { title: 'Parker O-Ring Handbook ORD 5700, design chart 4-3 (static, face)', kind: 'from memory' },
  'mem-parker-5-2': { title: 'Parker O-Ring Handbook ORD 5700, design chart 5-2 (reciprocating)', kind: 'from memory' },
  'mem-parker-squeeze': {
    title: 'Parker O-Ring Handbook ORD 5700, text on squeeze and on stretch at assembly',
    kind: 'from memory',
  },
  'mem-parker-stretch': {
    title: 'Parker O-Ring Handbook ORD 5700, loss of cross-section by stretch',
    kind: 'from memory',
  },
  'mem-trelleborg-gap': {
    title: 'Trelleborg O-ring catalogue, radial clearance table',
    kind: 'from memory',
    note: 'medium confidence',
  },
  'mem-trelleborg-leadin': {
    title: 'Trelleborg O-ring catalogue, lead-in chamfers',
    kind: 'from memory',
    note: 'low confidence',
  },
  'mem-limpert': {
    title: 'Limpert, Brake Design and Safety: rollback of caliper seals',
    kind: 'from memory',
    note: 'order of magnitude',
  },
  'mem-elastomers': {
    title: 'General handbook knowledge of elastomers: media, temperatures, linear expansion',
    kind: 'from memory',
  },
  'seals-mem-common': { title: 'General handbook knowledge of seals', kind: 'from memory' },
} as const satisfies Record<string, Source>;
