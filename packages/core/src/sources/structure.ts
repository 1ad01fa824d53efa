import type { Source } from './source.ts';

/** Sources of the structure chapter. */
export const structure = {
  'roark-8.1': {
    title:
      "Young, Budynas, Sadegh, Roark's Formulas for Stress and Strain, 8th ed., table 8.1: shear, moment, slope and deflection of straight beams",
    kind: 'from memory',
  },
  'roark-9.2': {
    title:
      "Young, Budynas, Sadegh, Roark's Formulas for Stress and Strain, 8th ed., table 9.2: circular rings under equal radial forces equally spaced",
    kind: 'from memory',
    note: 'agrees with the ring under two opposite forces, and with the energy of bending worked out anew in the tests',
  },
  'NORTON-10-5': {
    title: 'Norton, Machine Design, 4th ed., example 10-5: hub pressed on a solid shaft',
    kind: 'read',
    address: 'https://scribd.com/document/734369795/EX1005',
  },
  'roymech-cylinders': {
    title: 'Cylinders under pressure, shrink and press fits: pressure, slip moment, change of size',
    kind: 'read',
    address: 'http://www.roymech.co.uk/Useful_Tables/Mechanics/Cylinders.html',
  },
  'przemieniecki-ch5': {
    title:
      'Przemieniecki, Theory of Matrix Structural Analysis (1968), section 5.6: stiffness of a beam element with shear',
    kind: 'from memory',
  },
  'przemieniecki-ch11': {
    title:
      'Przemieniecki, Theory of Matrix Structural Analysis (1968), chapters 11 and 12: consistent mass of a beam element, modes',
    kind: 'from memory',
    note: 'proved in the tests by published frequencies and by a finite-element program',
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
  ALT131: {
    title:
      'Altintas, Manufacturing Automation (2012), p. 131: regenerative stability of turning with two modes, as restated in an open repository',
    kind: 'read',
    address: 'https://github.com/leekunhwee/Dynamics',
    note: 'inputs and formulas read at second hand; the book prints a chart and no limits',
  },
  TURNMD: {
    title: 'Derivation of the phase of the lobes in turning, in the same open repository',
    kind: 'read',
    address: 'https://github.com/leekunhwee/Dynamics',
  },
  KUR: {
    title:
      'Kurata et al., J. Adv. Mech. Design Syst. Manuf. 4(6) 2010, 1107-1118 (abstract and introduction): rubbing as velocity over cutting speed',
    kind: 'read',
    address: 'https://fr.scribd.com/document/317045964/152',
  },
  SEMI: {
    title: 'Semi-discretisation of the delay equation of turning with one mode, in the same open repository',
    kind: 'read',
    address: 'https://github.com/leekunhwee/Dynamics',
  },
  TCC2: {
    title: 'Parameters of a turning mode in an open student program',
    kind: 'read',
    address: 'https://github.com/drakegawain/tcc2',
    note: 'disputed: its frequency and damping do not follow from its own mass and stiffness',
  },
  FEM1: {
    title:
      'Verification page of a finite-element program: higher modes of a cantilever (quotes Rao, 6th ed., table 8.1)',
    kind: 'read',
    address: 'https://solver-docs.pages.dev/verification/cantilever_higher_modes.html',
  },
  SDLL15: {
    title: 'VPCS benchmark sheet SDLL15 (1989) in a validation manual: slender beam with a mass at its end',
    kind: 'read',
  },
  'methods-dynamics': {
    title:
      'Static stiffness, taper and chatter in turning: the worked-out methods beside the reference values of the dynamics chapter',
    kind: 'computed',
    note: 'formulas partly read, partly from memory, checked there by independent computation',
  },
  NSKF: {
    title: 'Deflection formula of preloaded angular-contact ball bearings, with the stiffnesses computed from it',
    kind: 'from memory',
    note: 'balls only; the housing and the spindle nose give as well',
  },
  BISU: {
    title:
      'Bisu, Gerard, K’nevez, Laheurte, Cahuc, arXiv 0908.2879 (abstract): chatter at 190 Hz on a medium centre lathe',
    kind: 'read',
    address: 'https://ar5iv.arxiv.org/html/0908.2879',
  },
  SNAF: {
    title: 'Hobby measurement of a small lathe: lift of the cross slide before and after a fitted gib',
    kind: 'read',
    address: 'https://snafu.org/other/projects/2021/1205',
    note: 'the load was not measured',
  },
  GRZ: {
    title: 'Inspection record of one maker of a centre lathe, G1 to G14',
    kind: 'read',
    address: 'https://manualshive.com/ru/manual/grizzly/g0509g/2266608',
  },
  'lathe-judgement': {
    title: 'Judgement: no measurement of this element of a light lathe could be found',
    kind: 'from memory',
    note: 'wide on purpose; the owner’s own tests replace it',
  },
  'lathe-kc-spread': {
    title: 'Spread of the specific cutting force between publishers, reference/cutting/kc-spread.csv',
    kind: 'computed',
  },
  'lathe-depths': {
    title: 'Depths of cut and overhangs usual on light lathes, reference/cutting/machine-typicals.csv',
    kind: 'common practice',
  },
  'wu-1989': {
    title:
      'Wu, A New Approach of Formulating the Transfer Function for Dynamic Cutting Processes, J. Eng. Ind. 111 (1989): metal pressed aside by the flank',
    kind: 'from memory',
    note: 'the constant is from memory as well, somewhere in 4·10⁴ to 4·10⁵ N/mm³ for steel',
  },
  'laplace-approximation': {
    title:
      'Maximum a posteriori estimate with the normal distribution that touches it: standard result of Bayesian statistics',
    kind: 'from memory',
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
  'takahashi-1973': {
    title:
      'Takahashi, Fagan, Chen, Formation of a Sparse Bus Impedance Matrix (1973): entries of an inverse inside the band',
    kind: 'from memory',
    note: 'proved in the tests by a dense inverse',
  },
  'craig-bampton-1968': {
    title: 'Craig, Bampton, Coupling of Substructures for Dynamic Analyses, AIAA J. 6 (1968) 1313-1319',
    kind: 'from memory',
    note: 'proved in the tests by the whole beam',
  },
  'sisson-kegg-1969': {
    title: 'Sisson, Kegg, An Explanation of Low-Speed Chatter Effects, J. Eng. Ind. 91 (1969) 951-958',
    kind: 'from memory',
    note: 'for the observation that a finite edge radius quietens slow cuts; the averaging over the land is our own simplest form of it',
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
