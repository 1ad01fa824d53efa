import type { Source } from './source.ts';

/** Sources of the duty chapter. */
export const duty = {
  ISO10123: {
    title: 'ISO 10123:1990, shear strength of anaerobic adhesives, clauses 1 to 5',
    kind: 'read',
    address: 'https://www.scribd.com/document/840169236/ISO-10123-1990',
    note: 'ranks products, does not predict service',
  },
  'ISO10964-MEM': { title: 'ISO 10964, torque strength of anaerobic adhesives on threads', kind: 'from memory' },
  TESTRES: {
    title: 'ISO 10123 explained, with a 20 x 18 mm collar',
    kind: 'read',
    address: 'https://www.testresources.net/applications/standards/iso/iso-10123-shear-strength-of-anaerobic-adhesives',
    note: 'not the collar of the standard (12.70 x 11.10 mm)',
  },
  'TB-AN': {
    title: "Maker's data sheet of a heat-resistant anaerobic adhesive",
    kind: 'read',
    address: 'https://businessdocbox.com/Metals/102670455-',
    note: 'the copy drops zeros, which were restored',
  },
  'HENK-HG': {
    title: "Maker's data sheet, high strength gap-filling retaining compound",
    kind: 'read',
    address: 'https://scribd.com/document/666709576/638-NEW-EN',
  },
  'HENK-FAQ': {
    title: "Maker's questions and answers on retaining compounds",
    kind: 'read',
    address: 'http://na.henkel-adhesives.com/industrial/retaining-faq-22296.htm',
  },
  'TM5-3820': {
    title: 'US Army TM 5-3820-256-24-5, page on curing',
    kind: 'read',
    address: 'https://waterstorage.tpub.com/TM-5-3820-256-24-5/css/TM-5-3820-256-24-5_129.htm',
  },
  METLOK: {
    title: 'Maker on temperature ranges of anaerobic adhesives',
    kind: 'read',
    address: 'http://metlok-blog.blogspot.com/2016/02/',
  },
  GOBEAR: {
    title: "Bearing maker's advice on bond gaps",
    kind: 'read',
    address: 'http://gobearings.com/adhesive_grooves.htm',
    note: 'disputes the usual advice of 0.02 to 0.05 mm',
  },
  'IJAA-2014': {
    title: 'Int. J. Adhesion and Adhesives 2014, bonded press fits, abstract',
    kind: 'read',
    address: 'https://daneshyari.com/en/article/779910',
  },
  DRAGONI: { title: 'Dragoni and Mauri, Proc. IMechE L 216 (2002) 9, bonded press fits, first page', kind: 'read' },
  UNIBO: {
    title: 'Croccolo et al., J. Adhesion 96 (2020) 90-112, abstract',
    kind: 'read',
    address: 'https://cris.unibo.it/handle/11585/703651',
  },
  VOLK: { title: 'Volkersen, shear lag of lap joints', kind: 'from memory' },
  'bond-MEM': {
    title: "Bonded joints: makers' design guides as remembered",
    kind: 'from memory',
    note: 'low confidence: wide bands, ask for the data sheet',
  },
} as const satisfies Record<string, Source>;
