/**
 * Pipe threads of Whitworth form: parallel G (ISO 228-1) and taper R (ISO 7-1). Diameters partly read in [EH-G] [MEDH-p301]
 * [MEPB-4138]; tolerances and gauge lengths from memory of [ISO228-1] and [ISO7-1].
 */

/** One size, lengths in mm. Tolerances: nut effective and minor plus; bolt effective class A minus; class B and the major are twice that. */
export type PipeSize = readonly [
  size: string,
  threadsPerInch: number,
  major: number,
  pitchDiameter: number,
  minor: number,
  pitchTolerance: number,
  minorTolerance: number,
  /** Gauge length, its tolerance either way, useful thread; absent where no taper thread of that size exists. */
  taper?: readonly [gaugeLength: number, tolerance: number, usefulThread: number],
];

export const pipeSizes: readonly PipeSize[] = [
  ['1/16', 28, 7.723, 7.142, 6.561, 0.107, 0.282, [4, 0.9, 6.5]],
  ['1/8', 28, 9.728, 9.147, 8.566, 0.107, 0.282, [4, 0.9, 6.5]],
  ['1/4', 19, 13.157, 12.301, 11.445, 0.125, 0.445, [6, 1.3, 9.7]],
  ['3/8', 19, 16.662, 15.806, 14.95, 0.125, 0.445, [6.4, 1.3, 10.1]],
  ['1/2', 14, 20.955, 19.793, 18.631, 0.142, 0.541, [8.2, 1.8, 13.2]],
  ['5/8', 14, 22.911, 21.749, 20.587, 0.142, 0.541],
  ['3/4', 14, 26.441, 25.279, 24.117, 0.142, 0.541, [9.5, 1.8, 14.5]],
  ['7/8', 14, 30.201, 29.039, 27.877, 0.142, 0.541],
  ['1', 11, 33.249, 31.77, 30.291, 0.18, 0.64, [10.4, 2.3, 16.8]],
  ['1 1/8', 11, 37.897, 36.418, 34.939, 0.18, 0.64],
  ['1 1/4', 11, 41.91, 40.431, 38.952, 0.18, 0.64, [12.7, 2.3, 19.1]],
  ['1 1/2', 11, 47.803, 46.324, 44.845, 0.18, 0.64, [12.7, 2.3, 19.1]],
  ['1 3/4', 11, 53.746, 52.267, 50.788, 0.18, 0.64],
  ['2', 11, 59.614, 58.135, 56.656, 0.18, 0.64, [15.9, 2.3, 23.4]],
  ['2 1/4', 11, 65.71, 64.231, 62.752, 0.217, 0.64],
  ['2 1/2', 11, 75.184, 73.705, 72.226, 0.217, 0.64, [17.5, 3.5, 26.7]],
  ['2 3/4', 11, 81.534, 80.055, 78.576, 0.217, 0.64],
  ['3', 11, 87.884, 86.405, 84.926, 0.217, 0.64, [20.6, 3.5, 29.8]],
];

/** American taper pipe thread NPT. [UA-NPT] [BOOK1-NPT]. Size, threads an inch, outside of the pipe, E0, E1, L1, L2, all in inches. */
export type NptSize = readonly [
  size: string,
  threadsPerInch: number,
  outside: number,
  e0: number,
  e1: number,
  l1: number,
  l2: number,
];

export const nptSizes: readonly NptSize[] = [
  ['1/16', 27, 0.3125, 0.27118, 0.28118, 0.16, 0.2611],
  ['1/8', 27, 0.405, 0.36351, 0.3736, 0.1615, 0.2639],
  ['1/4', 18, 0.54, 0.47739, 0.49163, 0.2278, 0.4018],
  ['3/8', 18, 0.675, 0.61201, 0.62701, 0.24, 0.4078],
  ['1/2', 14, 0.84, 0.75843, 0.77843, 0.32, 0.5337],
  ['3/4', 14, 1.05, 0.96768, 0.98887, 0.339, 0.5457],
  ['1', 11.5, 1.315, 1.21363, 1.23863, 0.4, 0.6828],
  ['1 1/4', 11.5, 1.66, 1.55713, 1.58338, 0.42, 0.7068],
  ['1 1/2', 11.5, 1.9, 1.79609, 1.82234, 0.42, 0.7235],
  ['2', 11.5, 2.375, 2.26902, 2.29627, 0.436, 0.7565],
];
