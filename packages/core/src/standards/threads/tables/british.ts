/**
 * British inch series: sizes with threads an inch, and the tapping drills that were published for them.
 * [OLDENGINE-W] [TCB-threads] [WP-BSF] [UNIK] [ETB-2041] [BS84]
 */
import type { InchSize } from './unified.ts';

/** British Standard Whitworth. */
export const whitworth: readonly InchSize[] = [
  ['1/16', 60],
  ['3/32', 48],
  ['1/8', 40],
  ['5/32', 32],
  ['3/16', 24],
  ['7/32', 24],
  ['1/4', 20],
  ['5/16', 18],
  ['3/8', 16],
  ['7/16', 14],
  ['1/2', 12],
  ['9/16', 12],
  ['5/8', 11],
  ['11/16', 11],
  ['3/4', 10],
  ['7/8', 9],
  ['1', 8],
  ['1 1/8', 7],
  ['1 1/4', 7],
  ['1 1/2', 6],
  ['1 3/4', 5],
  ['2', 4.5],
];

/** British Standard Fine. */
export const whitworthFine: readonly InchSize[] = [
  ['3/16', 32],
  ['7/32', 28],
  ['1/4', 26],
  ['9/32', 26],
  ['5/16', 22],
  ['3/8', 20],
  ['7/16', 18],
  ['1/2', 16],
  ['9/16', 16],
  ['5/8', 14],
  ['11/16', 14],
  ['3/4', 12],
  ['13/16', 12],
  ['7/8', 11],
  ['1', 10],
  ['1 1/8', 9],
  ['1 1/4', 9],
  ['1 3/8', 8],
  ['1 1/2', 8],
  ['1 5/8', 8],
  ['1 3/4', 7],
  ['2', 7],
];

/** British Standard Cycle, the old Cycle Engineers' Institute thread. */
export const cycle: readonly InchSize[] = [
  ['1/8', 40],
  ['5/32', 32],
  ['3/16', 32],
  ['7/32', 26],
  ['1/4', 26],
  ['9/32', 26],
  ['5/16', 26],
  ['3/8', 26],
  ['7/16', 26],
  ['1/2', 26],
  ['9/16', 26],
  ['5/8', 26],
  ['11/16', 26],
  ['3/4', 26],
  ['1', 26],
  ['7/16', 20],
  ['1/2', 20],
  ['9/16', 20],
  ['5/8', 20],
  ['11/16', 20],
  ['3/4', 20],
  ['1.370', 24],
];

/** British brass thread, 26 to the inch on every size. */
export const brass: readonly InchSize[] = [
  ['1/8', 26],
  ['1/4', 26],
  ['5/16', 26],
  ['3/8', 26],
  ['7/16', 26],
  ['1/2', 26],
  ['9/16', 26],
  ['5/8', 26],
  ['3/4', 26],
  ['7/8', 26],
  ['1', 26],
];

/** Published tapping drills [mm]. The 26.5 printed for 1 1/8 BSF leaves 57 % of the thread, a misprint; it is left out. */
export const whitworthDrills: Readonly<Record<string, number>> = {
  '1/8 BSW': 2.55,
  '3/16 BSW': 3.7,
  '1/4 BSW': 5.1,
  '5/16 BSW': 6.5,
  '7/16 BSW': 9.25,
  '1/2 BSW': 10.5,
  '9/16 BSW': 12.1,
  '5/8 BSW': 13.5,
  '7/8 BSW': 19.25,
  '1 BSW': 22,
  '1 1/8 BSW': 24.75,
  '1 1/2 BSW': 33.5,
  '1 3/4 BSW': 39,
  '2 BSW': 44.5,
  '7/32 BSF': 4.6,
  '1/4 BSF': 5.3,
  '3/8 BSF': 8.2,
  '7/16 BSF': 9.7,
  '5/8 BSF': 14,
  '11/16 BSF': 15.5,
  '3/4 BSF': 16.75,
  '1 BSF': 22.75,
  '1 1/4 BSF': 28.75,
  '1 1/2 BSF': 34.5,
};

/** Sizes whose threads an inch are from memory; the rest were read. */
export const rememberedSizes: ReadonlySet<string> = new Set([
  '1/16 BSW',
  '3/32 BSW',
  '5/32 BSW',
  '7/32 BSW',
  '11/16 BSW',
  '9/32 BSF',
  '13/16 BSF',
  '1 5/8 BSF',
]);
