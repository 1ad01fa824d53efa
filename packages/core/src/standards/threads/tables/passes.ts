/**
 * Makers' ranges of the number of passes, by pitch or threads an inch, and their limit for the first infeed by material.
 * They are for indexable tools on rigid lathes; a light lathe takes the upper end or more.
 */
export type PassRange = readonly [pitch: number, least: number, most: number];

/** [TUNGALOY-p1636], general. */
export const passesGeneral: readonly PassRange[] = [
  [0.5, 4, 6],
  [0.75, 4, 7],
  [1, 4, 8],
  [1.25, 5, 9],
  [1.5, 6, 10],
  [1.75, 7, 12],
  [2, 7, 12],
  [2.5, 8, 14],
  [3, 10, 16],
  [3.5, 11, 18],
  [4, 11, 18],
  [4.5, 11, 19],
];

/** [INGERSOLL-p1262], regular inserts; more for hard materials. */
export const passesRegular: readonly PassRange[] = [
  [0.5, 4, 6],
  [1, 5, 9],
  [1.5, 5, 12],
  [2, 6, 14],
  [2.5, 7, 15],
  [3, 8, 17],
  [4, 10, 20],
  [6, 11, 22],
];

export type PassMaterial =
  | 'low carbon steel'
  | 'high carbon steel'
  | 'alloy steel'
  | 'stainless steel'
  | 'non-ferrous / aluminium';

/** Greatest first infeed in thousandths of an inch, by pitch [mm]. [INGERSOLL-p1262], whose heading says mm by mistake. */
export const firstInfeedThou: Readonly<Record<PassMaterial, readonly (readonly [pitch: number, thou: number])[]>> = {
  'low carbon steel': [
    [1, 13],
    [1.25, 17],
    [1.5, 18],
    [1.75, 19],
    [2, 20],
    [2.5, 21],
    [3, 22],
  ],
  'high carbon steel': [
    [1, 12],
    [1.25, 15],
    [1.5, 16],
    [1.75, 17],
    [2, 18],
    [2.5, 19],
    [3, 20],
  ],
  'alloy steel': [
    [1, 11],
    [1.25, 13],
    [1.5, 15],
    [1.75, 15],
    [2, 16],
    [2.5, 17],
    [3, 18],
  ],
  'stainless steel': [
    [1, 9],
    [1.25, 11],
    [1.5, 12],
    [1.75, 12],
    [2, 13],
    [2.5, 13],
    [3, 14],
  ],
  'non-ferrous / aluminium': [
    [1, 19],
    [1.25, 23],
    [1.5, 25],
    [1.75, 26],
    [2, 28],
    [2.5, 29],
    [3, 31],
  ],
};
