import type { Source } from './source.ts';

/** Sources of the metrology chapter: gauges, uncertainty, decisions. */
export const metrology = {
  GUM: {
    title: 'JCGM 100:2008, Guide to the expression of uncertainty in measurement (GUM)',
    kind: 'from memory',
    note: 'worked examples H.1 and H.3 were read in the documentation of uncertainty libraries',
  },
  JCGM106: {
    title: 'JCGM 106:2012, The role of measurement uncertainty in conformity assessment',
    kind: 'from memory',
  },
  'ISO14253-1': {
    title: 'ISO 14253-1:2017, Decision rules for verifying conformity with specifications',
    kind: 'from memory',
    note: 'the default limit of 95 % was read second-hand only',
  },
  'DIN862-863': {
    title: 'DIN 862 and DIN 863, limits of error of callipers and micrometers, one-page extract',
    kind: 'read',
  },
  DIN878: { title: 'DIN 878 (1983), dial indicators', kind: 'from memory' },
  TB9: { title: 'US Army TB 9-5210-207-24, tables 6 to 10, micrometer calibration', kind: 'read' },
  'DIN863-4': { title: 'DIN 863-4, three-point bore micrometers', kind: 'from memory' },
  'home-workshop': { title: 'What home workshops report of their gauges and hands', kind: 'common practice' },
  'NPL-FAQ': { title: 'National Physical Laboratory, How do I correct lengths to 20 °C', kind: 'read' },
  ISO1: { title: 'ISO 1, standard reference temperature of 20 °C', kind: 'from memory' },
} as const satisfies Record<string, Source>;
