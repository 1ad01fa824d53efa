/**
 * Fundamental deviations of ISO 286-1, to 500 mm: how far the nearer edge of a tolerance zone lies from the nominal size.
 * One table serves shafts and holes: a hole's deviation is the shaft's with the sign changed, plus the delta rule in
 * `limit-deviations.ts`. Only j, J stand in both, because they do not mirror each other.
 */
import type { SourceKey } from '../../sources/register.ts';
import type { Mm } from '../../units/quantities.ts';

/** Upper ends of the size ranges, the intermediate ones of the standard included [mm]. */
export const fineRanges: readonly Mm[] = [
  3, 6, 10, 14, 18, 24, 30, 40, 50, 65, 80, 100, 120, 140, 160, 180, 200, 225, 250, 280, 315, 355, 400, 450, 500,
];

export interface DeviationRow {
  /** Index in {@link fineRanges} of the first value; below it the letter does not exist. */
  readonly from: number;
  /** es of a to g, ei of k to zc, in micrometres. */
  readonly um: readonly number[];
  /** Where the values up to 180 mm were read, then those beyond. */
  readonly sources: readonly [SourceKey, SourceKey];
}

/** Shaft letters. js is symmetrical and j depends on the grade: see below. k holds for grades 4 to 7, otherwise it is 0. */
export const shaftRows: Readonly<Record<string, DeviationRow>> = {
  a: {
    from: 0,
    um: [
      -270, -270, -280, -290, -290, -300, -300, -310, -320, -340, -360, -380, -410, -460, -520, -580, -660, -740, -820,
      -920, -1050, -1200, -1350, -1500, -1650,
    ],
    sources: ['CB-shaft', 'ND-15.2a'],
  },
  b: {
    from: 0,
    um: [
      -140, -140, -150, -150, -150, -160, -160, -170, -180, -190, -200, -220, -240, -260, -280, -310, -340, -380, -420,
      -480, -540, -600, -680, -760, -840,
    ],
    sources: ['CB-shaft', 'ND-15.2a'],
  },
  c: {
    from: 0,
    um: [
      -60, -70, -80, -95, -95, -110, -110, -120, -130, -140, -150, -170, -180, -200, -210, -230, -240, -260, -280, -300,
      -330, -360, -400, -440, -480,
    ],
    sources: ['CB-shaft', 'ND-15.2a'],
  },
  cd: { from: 0, um: [-34, -46, -56], sources: ['CB-shaft', 'CB-shaft'] },
  d: {
    from: 0,
    um: [
      -20, -30, -40, -50, -50, -65, -65, -80, -80, -100, -100, -120, -120, -145, -145, -145, -170, -170, -170, -190,
      -190, -210, -210, -230, -230,
    ],
    sources: ['CB-shaft', 'ND-15.2a'],
  },
  e: {
    from: 0,
    um: [
      -14, -20, -25, -32, -32, -40, -40, -50, -50, -60, -60, -72, -72, -85, -85, -85, -100, -100, -100, -110, -110,
      -125, -125, -135, -135,
    ],
    sources: ['CB-shaft', 'ND-15.2a'],
  },
  ef: { from: 0, um: [-10, -14, -18], sources: ['CB-shaft', 'CB-shaft'] },
  f: {
    from: 0,
    um: [
      -6, -10, -13, -16, -16, -20, -20, -25, -25, -30, -30, -36, -36, -43, -43, -43, -50, -50, -50, -56, -56, -62, -62,
      -68, -68,
    ],
    sources: ['CB-shaft', 'ND-15.2a'],
  },
  fg: { from: 0, um: [-4, -6, -8], sources: ['CB-shaft', 'CB-shaft'] },
  g: {
    from: 0,
    um: [
      -2, -4, -5, -6, -6, -7, -7, -9, -9, -10, -10, -12, -12, -14, -14, -14, -15, -15, -15, -17, -17, -18, -18, -20,
      -20,
    ],
    sources: ['CB-shaft', 'ND-15.2a'],
  },
  h: { from: 0, um: Array<number>(25).fill(0), sources: ['CB-shaft', 'ND-15.2a'] },
  k: {
    from: 0,
    um: [0, 1, 1, 1, 1, 2, 2, 2, 2, 2, 2, 3, 3, 3, 3, 3, 4, 4, 4, 4, 4, 4, 4, 5, 5],
    sources: ['MG-shaft', 'ND-15.2a'],
  },
  m: {
    from: 0,
    um: [2, 4, 6, 7, 7, 8, 8, 9, 9, 11, 11, 13, 13, 15, 15, 15, 17, 17, 17, 20, 20, 21, 21, 23, 23],
    sources: ['ND-15.2b', 'ND-15.3a'],
  },
  n: {
    from: 0,
    um: [4, 8, 10, 12, 12, 15, 15, 17, 17, 20, 20, 23, 23, 27, 27, 27, 31, 31, 31, 34, 34, 37, 37, 40, 40],
    sources: ['ND-15.2b', 'ND-15.3a'],
  },
  p: {
    from: 0,
    um: [6, 12, 15, 18, 18, 22, 22, 26, 26, 32, 32, 37, 37, 43, 43, 43, 50, 50, 50, 56, 56, 62, 62, 68, 68],
    sources: ['ND-15.2b', 'ND-15.3b'],
  },
  r: {
    from: 0,
    um: [10, 15, 19, 23, 23, 28, 28, 34, 34, 41, 43, 51, 54, 63, 65, 68, 77, 80, 84, 94, 98, 108, 114, 126, 132],
    sources: ['ND-15.2b', 'ND-15.3b'],
  },
  s: {
    from: 0,
    um: [14, 19, 23, 28, 28, 35, 35, 43, 43, 53, 59, 71, 79, 92, 100, 108, 122, 130, 140, 158, 170, 190, 208, 232, 252],
    sources: ['ND-15.2b', 'ND-15.3b'],
  },
  t: {
    from: 6,
    um: [41, 48, 54, 66, 75, 91, 104, 122, 134, 146, 166, 180, 196, 218, 240, 268, 294, 330, 360],
    sources: ['ND-15.2b', 'ND-15.3b'],
  },
  u: {
    from: 0,
    um: [
      18, 23, 28, 33, 33, 41, 48, 60, 70, 87, 102, 124, 144, 170, 190, 210, 236, 258, 284, 315, 350, 390, 435, 490, 540,
    ],
    sources: ['ND-15.2b', 'ND-15.3b'],
  },
  v: {
    from: 4,
    um: [39, 47, 55, 68, 81, 102, 120, 146, 172, 202, 228, 252, 284, 310, 340, 385, 425, 475, 530, 595, 660],
    sources: ['ND-15.2b', 'ND-15.3b'],
  },
  x: {
    from: 0,
    um: [
      20, 28, 34, 40, 45, 54, 64, 80, 97, 122, 146, 178, 210, 248, 280, 310, 350, 385, 425, 475, 525, 590, 660, 740,
      820,
    ],
    sources: ['ND-15.2b', 'ND-15.3b'],
  },
  y: {
    from: 5,
    um: [63, 75, 94, 114, 144, 174, 214, 254, 300, 340, 380, 425, 470, 520, 580, 650, 730, 820, 920, 1000],
    sources: ['ND-15.2b', 'ND-15.3b'],
  },
  z: {
    from: 0,
    um: [
      26, 35, 42, 50, 60, 73, 88, 112, 136, 172, 210, 258, 310, 365, 415, 465, 520, 575, 640, 710, 790, 900, 1000, 1100,
      1250,
    ],
    sources: ['ND-15.2b', 'ND-15.3b'],
  },
  za: {
    from: 0,
    um: [
      32, 42, 52, 64, 77, 98, 118, 148, 180, 226, 274, 335, 400, 470, 535, 600, 670, 740, 820, 920, 1000, 1150, 1300,
      1450, 1600,
    ],
    sources: ['ND-15.2b', 'ND-15.3b'],
  },
  zb: {
    from: 0,
    um: [
      40, 50, 67, 90, 108, 136, 160, 200, 242, 300, 360, 445, 525, 620, 700, 780, 880, 960, 1050, 1200, 1300, 1500,
      1650, 1850, 2100,
    ],
    sources: ['ND-15.2b', 'ND-15.3b'],
  },
  zc: {
    from: 0,
    um: [
      60, 80, 97, 130, 150, 188, 218, 274, 325, 405, 480, 585, 690, 800, 900, 1000, 1150, 1250, 1350, 1550, 1700, 1900,
      2100, 2400, 2600,
    ],
    sources: ['ND-15.2b', 'ND-15.3b'],
  },
};

/** j and J by grade: ei of a shaft, ES of a hole. */
export const jRows: Readonly<Record<string, DeviationRow>> = {
  j5: {
    from: 0,
    um: [
      -2, -2, -2, -3, -3, -4, -4, -5, -5, -7, -7, -9, -9, -11, -11, -11, -13, -13, -13, -16, -16, -18, -18, -20, -20,
    ],
    sources: ['OB-j', 'ND-15.2a'],
  },
  j6: {
    from: 0,
    um: [
      -2, -2, -2, -3, -3, -4, -4, -5, -5, -7, -7, -9, -9, -11, -11, -11, -13, -13, -13, -16, -16, -18, -18, -20, -20,
    ],
    sources: ['OB-j', 'ND-15.2a'],
  },
  j7: {
    from: 0,
    um: [
      -4, -4, -5, -6, -6, -8, -8, -10, -10, -12, -12, -15, -15, -18, -18, -18, -21, -21, -21, -26, -26, -28, -28, -32,
      -32,
    ],
    sources: ['MG-shaft', 'ND-15.2a'],
  },
  j8: { from: 0, um: [-6], sources: ['ISO-286-1', 'ISO-286-1'] },
  J6: {
    from: 0,
    um: [2, 5, 5, 6, 6, 8, 8, 10, 10, 13, 13, 16, 16, 18, 18, 18, 22, 22, 22, 25, 25, 29, 29, 33, 33],
    sources: ['MH-6a', 'ND-15.3a'],
  },
  J7: {
    from: 0,
    um: [4, 6, 8, 10, 10, 12, 12, 14, 14, 18, 18, 22, 22, 26, 26, 26, 30, 30, 30, 36, 36, 39, 39, 43, 43],
    sources: ['MH-6a', 'ND-15.3a'],
  },
  J8: {
    from: 0,
    um: [6, 10, 12, 15, 15, 20, 20, 24, 24, 28, 28, 34, 34, 41, 41, 41, 47, 47, 47, 55, 55, 60, 60, 66, 66],
    sources: ['MH-6a', 'ND-15.3a'],
  },
};

/** Letters in the order of the standard, loosest shaft first; the holes are the same in capitals. */
export const shaftLetters: readonly string[] = [
  ...['a', 'b', 'c', 'cd', 'd', 'e', 'ef', 'f', 'fg', 'g', 'h', 'js', 'j', 'k', 'm', 'n', 'p', 'r', 's', 't', 'u', 'v'],
  ...['x', 'y', 'z', 'za', 'zb', 'zc'],
];

/**
 * The published deviation of a letter at a size range.
 *
 *     es of a to h, ei of k to zc, ES of J
 *
 * @param row  values of the letter, from {@link shaftRows} or {@link jRows}
 * @param range  place of the size in {@link fineRanges} [-]
 * @returns the deviation, undefined where the standard has none [µm]
 * @source ISO-286-1 as reprinted in the sources of the row
 * @valid over 0 to 500 mm
 * @example tableDeviation(shaftRows.f, 7) → -25
 */
export function tableDeviation(row: DeviationRow | undefined, range: number): number | undefined {
  return row?.um[range - row.from];
}
