/** Published glands for O-rings of inch sections [mm], one table a source; depth is groove bottom to mating face, clearance included. */

/** Static, radial [apple-gland]; widths +0.254; 0 = not given. */
export const appleStatic: readonly (readonly [
  section: number,
  depthMin: number,
  depthMax: number,
  clearanceMax: number,
  width: number,
  oneBackUp: number,
  twoBackUps: number,
  radiusMin: number,
  radiusMax: number,
  eccentricity: number,
])[] = [
  [0.508, 0.33, 0.356, 0.051, 0.762, 0, 0, 0, 0, 0.038],
  [0.762, 0.508, 0.559, 0.076, 1.016, 0, 0, 0, 0, 0.038],
  [1.016, 0.686, 0.762, 0.076, 1.397, 0, 0, 0.127, 0.203, 0.051],
  [1.27, 0.889, 0.991, 0.102, 1.778, 0, 0, 0.127, 0.203, 0.051],
  [1.524, 1.067, 1.194, 0.102, 2.159, 0, 0, 0.127, 0.203, 0.051],
  [1.778, 1.27, 1.397, 0.102, 2.54, 3.683, 5.156, 0.127, 0.381, 0.051],
  [2.616, 2.032, 2.184, 0.127, 3.581, 4.496, 6.071, 0.127, 0.508, 0.076],
  [3.531, 2.794, 2.946, 0.152, 4.826, 5.385, 7.391, 0.127, 0.762, 0.102],
  [5.334, 4.318, 4.47, 0.152, 6.985, 8.331, 10.617, 0.127, 1.27, 0.152],
  [6.985, 5.715, 5.969, 0.178, 8.763, 10.922, 14.453, 0.127, 1.524, 0.203],
];

/** Static, on a face [apple-gland]; widths +0.254; 0 = not given. */
export const appleFace: readonly (readonly [
  section: number,
  depthMin: number,
  depthMax: number,
  clearanceMax: number,
  width: number,
  oneBackUp: number,
  twoBackUps: number,
  radiusMin: number,
  radiusMax: number,
  eccentricity: number,
])[] = [
  [0.508, 0.33, 0.356, 0, 0.762, 0, 0, 0, 0, 0],
  [0.762, 0.508, 0.559, 0, 1.016, 0, 0, 0, 0, 0],
  [1.016, 0.686, 0.762, 0, 1.397, 0, 0, 0.127, 0.203, 0],
  [1.27, 0.864, 0.965, 0, 1.778, 0, 0, 0.127, 0.203, 0],
  [1.524, 1.067, 1.168, 0, 2.159, 0, 0, 0.127, 0.203, 0],
  [1.778, 1.245, 1.372, 0, 2.54, 3.683, 5.156, 0.127, 0.381, 0],
  [2.616, 1.905, 2.057, 0, 3.581, 4.496, 6.071, 0.127, 0.508, 0],
  [3.531, 2.54, 2.743, 0, 4.826, 5.385, 7.391, 0.127, 0.762, 0],
  [5.334, 3.937, 4.191, 0, 6.985, 8.331, 10.617, 0.127, 1.27, 0],
  [6.985, 5.207, 5.461, 0, 8.763, 10.922, 14.453, 0.127, 1.524, 0],
];

/** Reciprocating [apple-gland]; widths +0.254; 0 = not given. */
export const appleMoving: readonly (readonly [
  section: number,
  depthMin: number,
  depthMax: number,
  clearanceMax: number,
  width: number,
  oneBackUp: number,
  twoBackUps: number,
  radiusMin: number,
  radiusMax: number,
  eccentricity: number,
])[] = [
  [1.016, 0.787, 0.838, 0.102, 1.473, 0, 0, 0.127, 0.203, 0.051],
  [1.27, 0.991, 1.041, 0.102, 1.727, 0, 0, 0.127, 0.203, 0.051],
  [1.524, 1.194, 1.245, 0.102, 2.007, 0, 0, 0.127, 0.203, 0.051],
  [1.778, 1.397, 1.448, 0.102, 2.286, 3.683, 5.156, 0.127, 0.381, 0.051],
  [2.616, 2.21, 2.286, 0.127, 3.556, 4.623, 6.198, 0.127, 0.508, 0.076],
  [3.531, 3.023, 3.124, 0.152, 4.572, 5.512, 7.518, 0.127, 0.762, 0.102],
  [5.334, 4.648, 4.775, 0.152, 7.112, 8.458, 10.744, 0.127, 1.27, 0.152],
  [6.985, 5.944, 6.096, 0.178, 9.398, 11.049, 14.58, 0.127, 1.524, 0.203],
];

/** Static, radial [engineersedge-static]; widths for back-up rings from memory [mem-parker-4-2]; widths +0.127. */
export const parkerStatic: readonly (readonly [
  section: number,
  depthMin: number,
  depthMax: number,
  clearanceMin: number,
  clearanceMax: number,
  width: number,
  oneBackUp: number,
  twoBackUps: number,
  radiusMin: number,
  radiusMax: number,
  eccentricity: number,
])[] = [
  [1.778, 1.27, 1.321, 0.051, 0.127, 2.362, 3.505, 5.207, 0.127, 0.381, 0.051],
  [2.616, 2.057, 2.108, 0.051, 0.127, 3.556, 4.343, 6.045, 0.127, 0.381, 0.051],
  [3.531, 2.819, 2.87, 0.076, 0.152, 4.75, 5.283, 6.985, 0.254, 0.635, 0.076],
  [5.334, 4.318, 4.394, 0.076, 0, 7.137, 7.899, 10.414, 0.508, 0.889, 0.102],
  [6.985, 5.74, 5.817, 0.102, 0.178, 9.525, 10.363, 13.665, 0.508, 0.889, 0.127],
];

/** Reciprocating [mem-parker-5-2]; widths +0.127. */
export const parkerMoving: readonly (readonly [
  section: number,
  depthMin: number,
  depthMax: number,
  clearanceMin: number,
  clearanceMax: number,
  width: number,
  oneBackUp: number,
  twoBackUps: number,
  radiusMin: number,
  radiusMax: number,
  eccentricity: number,
])[] = [
  [1.778, 1.397, 1.448, 0.051, 0.127, 2.362, 3.505, 5.207, 0.127, 0.381, 0.051],
  [2.616, 2.235, 2.286, 0.051, 0.127, 3.556, 4.343, 6.045, 0.127, 0.381, 0.051],
  [3.531, 3.073, 3.124, 0.076, 0.152, 4.75, 5.283, 6.985, 0.254, 0.635, 0.076],
  [5.334, 4.699, 4.775, 0.076, 0.152, 7.137, 7.899, 10.414, 0.508, 0.889, 0.102],
  [6.985, 6.02, 6.096, 0.102, 0.178, 9.525, 10.363, 13.665, 0.508, 0.889, 0.127],
];

/** Static, on a face, in 0.001 in as the maker prints it [mem-parker-4-3]: width for liquids, for gases and vacuum. */
export const parkerFace: readonly (readonly [
  section: number,
  depthMin: number,
  depthMax: number,
  liquidMin: number,
  liquidMax: number,
  gasMin: number,
  gasMax: number,
  radiusMin: number,
  radiusMax: number,
])[] = [
  [70, 50, 54, 101, 107, 84, 89, 5, 15],
  [103, 74, 80, 136, 142, 120, 125, 5, 15],
  [139, 101, 107, 177, 187, 158, 164, 10, 25],
  [210, 152, 162, 270, 290, 239, 244, 20, 35],
  [275, 201, 211, 342, 362, 309, 314, 20, 35],
];
