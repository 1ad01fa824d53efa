/** British Association sizes. Read in [MH31-p2115]; pitch and major of 0 to 4 and 12 BA also in [EMGS]. */

/** Number, pitch, major, effective and minor diameter [mm]. */
export type BaSize = readonly [number: number, pitch: number, major: number, effective: number, minor: number];

export const baSizes: readonly BaSize[] = [
  [0, 1, 6, 5.4, 4.8],
  [1, 0.9, 5.3, 4.76, 4.22],
  [2, 0.81, 4.7, 4.215, 3.73],
  [3, 0.73, 4.1, 3.66, 3.22],
  [4, 0.66, 3.6, 3.205, 2.81],
  [5, 0.59, 3.2, 2.845, 2.49],
  [6, 0.53, 2.8, 2.48, 2.16],
  [7, 0.48, 2.5, 2.21, 1.92],
  [8, 0.43, 2.2, 1.94, 1.68],
  [9, 0.39, 1.9, 1.665, 1.43],
  [10, 0.35, 1.7, 1.49, 1.28],
  [11, 0.31, 1.5, 1.315, 1.13],
  [12, 0.28, 1.3, 1.13, 0.96],
  [13, 0.25, 1.2, 1.05, 0.9],
  [14, 0.23, 1, 0.86, 0.72],
  [15, 0.21, 0.9, 0.775, 0.65],
  [16, 0.19, 0.79, 0.675, 0.56],
];
