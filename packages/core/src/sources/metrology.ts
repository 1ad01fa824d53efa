import type { Source } from './source.ts';

/** Sources of the metrology chapter: gauges, uncertainty, decisions. */
export const metrology = {
  GUM: {
    title: 'JCGM 100:2008, Guide to the expression of uncertainty in measurement (GUM)',
    kind: 'from memory',
    note: 'worked examples H.1 and H.3 were read in the documentation of uncertainty libraries',
  },
  JCGM101: {
    title: 'JCGM 101:2008, Propagation of distributions using a Monte Carlo method',
    kind: 'from memory',
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
  EA402: {
    title: 'EA-4/02 M:2013, Evaluation of the uncertainty of measurement in calibration, supplements S2, S4, S10',
    kind: 'from memory',
    note: 'budgets rebuilt, and they add up',
  },
  'composed-error': {
    title:
      'Aigner, Lovell, Schmidt 1977 and Meeusen, van den Broeck 1977: normal and one-sided exponential error together',
    kind: 'from memory',
    note: 'the density was checked against scipy.stats.exponnorm and against 60-digit arithmetic',
  },
  'recover-priors': {
    title: 'How likely a nominal size, tolerance class, unit system or condition is before anything is measured',
    kind: 'common practice',
    note: 'weights set by workshop judgement; no statistics of old drawings were found',
  },
  'RE-TOL': {
    title:
      'A systematic approach for geometrical and dimensional tolerancing in reverse engineering, in Reverse Engineering: Recent Advances and Applications (2012), p. 139',
    kind: 'read',
    note: 'equations 14 and 15 only, through a summary',
  },
  GGS94: {
    title: 'Gander, Golub, Strebel, Least-squares fitting of circles and ellipses, BIT 34 (1994) 558',
    kind: 'read',
  },
  'metrology-methods': {
    title:
      'Formulas of gauging cones, caps and bores, derived from the geometry and checked against published examples',
    kind: 'computed',
  },
  'huber-1964': {
    title: 'Huber, Robust estimation of a location parameter, Ann. Math. Statist. 35 (1964) 73',
    kind: 'from memory',
  },
  'lindley-1956': {
    title: 'Lindley, On a measure of the information provided by an experiment, Ann. Math. Statist. 27 (1956) 986',
    kind: 'from memory',
  },
  ISO296: { title: 'ISO 296, machine tools: self-holding tapers (Morse and metric)', kind: 'from memory' },
  'mem-tapers': {
    title: 'Brown & Sharpe, Jarno, Jacobs, 7/24 and pipe tapers as remembered from handbooks',
    kind: 'from memory',
  },
} as const satisfies Record<string, Source>;
