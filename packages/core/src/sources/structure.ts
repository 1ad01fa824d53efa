import type { Source } from './source.ts';

/** Sources of the structure chapter. */
export const structure = {
  'roark-8.1': {
    title:
      "Young, Budynas, Sadegh, Roark's Formulas for Stress and Strain, 8th ed., table 8.1: shear, moment, slope and deflection of straight beams",
    kind: 'from memory',
  },
  'przemieniecki-ch5': {
    title:
      'Przemieniecki, Theory of Matrix Structural Analysis (1968), section 5.6: stiffness of a beam element with shear',
    kind: 'from memory',
  },
  'cowper-1966': {
    title: "Cowper, The Shear Coefficient in Timoshenko's Beam Theory, J. Appl. Mech. 33 (1966) 335-340",
    kind: 'from memory',
  },
  'maxwell-reciprocity': {
    title: 'Maxwell-Betti reciprocity of linear elastic structures',
    kind: 'from memory',
  },
  ROSS: {
    title:
      'Static and modal test values of the open rotordynamics library ROSS, ross/tests/test_rotor_assembly.py, commit 0103185',
    kind: 'read',
    address: 'https://github.com/petrobras/ross',
  },
  KJ: {
    title: 'University exercise on the stiffness of a centre lathe (manufacturing-technology textbooks)',
    kind: 'from memory',
    note: 'inputs from memory, answers recomputed',
  },
  'structure-CALC': {
    title: 'Check cases made by closed formula or by an independent finite-element run',
    kind: 'computed',
    note: 'checks code only; says nothing of any machine',
  },
  'error-copying': {
    title: 'Copying of depth errors by a yielding machine: standard result of machine-tool statics',
    kind: 'from memory',
  },
  'golub-van-loan': {
    title: 'Golub, Van Loan, Matrix Computations, 4th ed., section 4.3: banded linear systems',
    kind: 'from memory',
  },
  'brent-1973': {
    title: 'Brent, Algorithms for Minimization without Derivatives (1973), chapters 4 and 5',
    kind: 'from memory',
  },
  'kronrod-15': {
    title: 'Piessens et al., QUADPACK (1983): the 7-point Gauss and 15-point Kronrod pair',
    kind: 'from memory',
    note: 'nodes and weights are proved in the tests by exactness on polynomials',
  },
  'abramowitz-stegun': {
    title: 'Abramowitz, Stegun (ed.), Handbook of Mathematical Functions (1964), chapters 7 and 26',
    kind: 'from memory',
  },
  'lanczos-gamma': {
    title:
      'Lanczos, A Precision Approximation of the Gamma Function, SIAM J. Numer. Anal. 1 (1964); coefficients for g = 7, n = 9',
    kind: 'from memory',
    note: 'proved in the tests by factorials and the reflection formula',
  },
} as const satisfies Record<string, Source>;
