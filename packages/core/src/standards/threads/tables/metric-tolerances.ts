/**
 * Deviations and grade-6 tolerances of ISO 965-1 in µm. Pitch diameter tolerances read in [MH31-p2025], nut minor ones
 * below P 0.75 in [MH27-p1794], the rest by the formulas behind the table, from memory [ISO965-1-T1]. The other grades are
 * steps along R40: see `metric-tolerance.ts`.
 */

/** Pitch; deviations e, f, g (0: not defined); bolt major tolerance; nut minor tolerance. */
export type PitchRow = readonly [pitch: number, e: number, f: number, g: number, major: number, minor: number];

export const pitchRows: readonly PitchRow[] = [
  [0.2, 0, 0, 17, 56, 60],
  [0.25, 0, 0, 18, 67, 71],
  [0.3, 0, 0, 18, 75, 85],
  [0.35, 0, 34, 19, 85, 100],
  [0.4, 0, 34, 19, 95, 112],
  [0.45, 0, 35, 20, 100, 125],
  [0.5, 50, 36, 20, 106, 140],
  [0.6, 53, 36, 21, 125, 160],
  [0.7, 56, 38, 22, 140, 180],
  [0.75, 56, 38, 22, 140, 190],
  [0.8, 60, 38, 24, 150, 200],
  [1, 60, 40, 26, 180, 236],
  [1.25, 63, 42, 28, 212, 265],
  [1.5, 67, 45, 32, 236, 300],
  [1.75, 71, 48, 34, 265, 335],
  [2, 71, 52, 38, 280, 375],
  [2.5, 80, 58, 42, 335, 450],
  [3, 85, 63, 48, 375, 500],
  [3.5, 90, 70, 53, 425, 560],
  [4, 95, 75, 60, 475, 600],
  [4.5, 100, 80, 63, 500, 670],
  [5, 106, 85, 71, 530, 710],
  [5.5, 112, 90, 75, 560, 750],
  [6, 118, 95, 80, 600, 800],
  [8, 140, 118, 100, 710, 1000],
];

/** Diameter over, diameter up to [mm], and the bolt's grade-6 pitch diameter tolerance by pitch. */
export type DiameterRange = readonly [over: number, upTo: number, byPitch: readonly (readonly [number, number])[]];

export const diameterRanges: readonly DiameterRange[] = [
  [
    0.99,
    1.4,
    [
      [0.2, 48],
      [0.25, 53],
      [0.3, 56],
    ],
  ],
  [
    1.4,
    2.8,
    [
      [0.2, 50],
      [0.25, 56],
      [0.35, 63],
      [0.4, 67],
      [0.45, 71],
    ],
  ],
  [
    2.8,
    5.6,
    [
      [0.35, 67],
      [0.5, 75],
      [0.6, 85],
      [0.7, 90],
      [0.75, 90],
      [0.8, 95],
    ],
  ],
  [
    5.6,
    11.2,
    [
      [0.75, 100],
      [1, 112],
      [1.25, 118],
      [1.5, 132],
    ],
  ],
  [
    11.2,
    22.4,
    [
      [1, 118],
      [1.25, 132],
      [1.5, 140],
      [1.75, 150],
      [2, 160],
      [2.5, 170],
    ],
  ],
  [
    22.4,
    45,
    [
      [1, 125],
      [1.5, 150],
      [2, 170],
      [3, 200],
      [3.5, 212],
      [4, 224],
      [4.5, 236],
    ],
  ],
  [
    45,
    90,
    [
      [1.5, 160],
      [2, 180],
      [3, 212],
      [4, 236],
      [5, 250],
      [5.5, 265],
      [6, 280],
    ],
  ],
  [
    90,
    180,
    [
      [2, 190],
      [3, 224],
      [4, 250],
      [6, 300],
      [8, 335],
    ],
  ],
];
