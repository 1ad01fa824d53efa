/** Hexagon keys, sockets, external hexagons, slots and driving squares, as tabled [mm, N·m]. 0 = not given. */

/** Keys [ISO2936], from memory: limits across flats and across corners, torque they withstand. */
export const keys: readonly (readonly [
  size: number,
  flatsMin: number,
  flatsMax: number,
  cornersMin: number,
  cornersMax: number,
  testTorque: number,
])[] = [
  [0.7, 0.7, 0.71, 0.76, 0.79, 0.08],
  [0.9, 0.88, 0.89, 0.96, 0.99, 0.18],
  [1.3, 1.24, 1.27, 1.37, 1.42, 0.53],
  [1.5, 1.48, 1.5, 1.63, 1.68, 0.82],
  [2, 1.96, 2, 2.18, 2.25, 1.9],
  [2.5, 2.46, 2.5, 2.75, 2.82, 3.8],
  [3, 2.96, 3, 3.31, 3.39, 6.6],
  [4, 3.95, 4, 4.44, 4.53, 16],
  [5, 4.95, 5, 5.58, 5.67, 30],
  [6, 5.95, 6, 6.71, 6.81, 52],
  [7, 6.94, 7, 7.85, 7.94, 80],
  [8, 7.94, 8, 8.97, 9.09, 120],
  [9, 8.94, 9, 10.1, 10.23, 165],
  [10, 9.94, 10, 11.23, 11.37, 220],
  [12, 11.89, 12, 13.44, 13.65, 370],
  [14, 13.89, 14, 15.7, 15.93, 590],
  [17, 16.89, 17, 19.09, 19.35, 980],
  [19, 18.87, 19, 21.32, 21.63, 1360],
  [22, 21.87, 22, 24.71, 25.05, 2110],
  [24, 23.87, 24, 26.97, 27.33, 2750],
  [27, 26.87, 27, 30.36, 30.75, 3910],
];

/** Keys after ANSI B18.3.2M [PRACMAINT]: least torque to shear and to yield; the first four sizes read, the rest from memory. */
export const makerKeys: readonly (readonly [
  size: number,
  flatsMin: number,
  flatsMax: number,
  shearTorque: number,
  yieldTorque: number,
])[] = [
  [0.711, 0.698, 0.711, 0.12, 0.1],
  [0.889, 0.876, 0.889, 0.26, 0.23],
  [1.27, 1.244, 1.27, 0.73, 0.63],
  [1.5, 1.47, 1.5, 1.19, 1.02],
  [2, 0, 0, 2.9, 2.4],
  [2.5, 0, 0, 5.4, 4.4],
  [3, 0, 0, 9.3, 8],
  [4, 0, 0, 22.2, 18.8],
  [5, 0, 0, 42.7, 36.8],
  [6, 0, 0, 74, 64],
  [8, 0, 0, 183, 158],
  [10, 0, 0, 345, 296],
  [12, 0, 0, 634, 546],
  [14, 0, 0, 945, 813],
  [17, 0, 0, 1690, 1450],
  [19, 0, 0, 2360, 2030],
];

/** Sockets: limits across flats from memory [ISO4762-MEM], least across corners read [CREATIVE] from 0.9 to 12. */
export const sockets: readonly (readonly [size: number, flatsMin: number, flatsMax: number, cornersMin: number])[] = [
  [0.7, 0.711, 0.724, 0],
  [0.9, 0.889, 0.902, 1.003],
  [1.3, 1.27, 1.295, 1.427],
  [1.5, 1.52, 1.58, 1.73],
  [2, 2.02, 2.08, 2.3],
  [2.5, 2.52, 2.58, 2.87],
  [3, 3.02, 3.08, 3.44],
  [4, 4.02, 4.095, 4.58],
  [5, 5.02, 5.14, 5.72],
  [6, 6.02, 6.14, 6.86],
  [8, 8.025, 8.175, 9.15],
  [10, 10.025, 10.175, 11.43],
  [12, 12.032, 12.212, 13.72],
  [14, 14.032, 14.212, 15.99],
  [17, 17.05, 17.23, 19.44],
  [19, 19.065, 19.275, 21.73],
  [22, 22.065, 22.275, 25.15],
  [27, 27.065, 27.275, 30.85],
];

/** Cap screws ISO 4762 [CQW, CREATIVE], read: thread, key, least depth of socket. */
export const capScrews: readonly (readonly [thread: string, key: number, depthMin: number])[] = [
  ['M1.6', 1.5, 0.7],
  ['M2', 1.5, 1],
  ['M2.5', 2, 1.1],
  ['M3', 2.5, 1.3],
  ['M4', 3, 2],
  ['M5', 4, 2.5],
  ['M6', 5, 3],
  ['M8', 6, 4],
  ['M10', 8, 5],
  ['M12', 10, 6],
  ['M14', 12, 7],
  ['M16', 14, 8],
  ['M20', 17, 10],
  ['M24', 19, 12],
  ['M30', 22, 15.5],
  ['M36', 27, 19],
];

/** Set screws ISO 4026 [CREATIVE, CQW], read: thread, key, least depth of socket; long screws have deeper ones. */
export const setScrews: readonly (readonly [thread: string, key: number, depthMin: number])[] = [
  ['M1.6', 0.7, 0.7],
  ['M2', 0.9, 0.8],
  ['M2.5', 1.3, 1.2],
  ['M3', 1.5, 1.2],
  ['M4', 2, 1.5],
  ['M5', 2.5, 2],
  ['M6', 3, 2],
  ['M8', 4, 3],
  ['M10', 5, 4],
  ['M12', 6, 4.8],
  ['M16', 8, 6.4],
  ['M20', 10, 8],
  ['M24', 12, 10],
];

/** External hexagons: least across flats from memory [ISO4759-MEM]; least across corners read [CREATIVE, BOLTS] where given. */
export const externals: readonly (readonly [size: number, flatsMin: number, cornersMin: number])[] = [
  [3.2, 3.02, 3.48],
  [4, 3.82, 4.32],
  [5, 4.82, 5.45],
  [5.5, 5.32, 6.01],
  [6, 5.82, 0],
  [7, 6.78, 7.66],
  [8, 7.78, 8.79],
  [9, 8.78, 0],
  [10, 9.78, 11.05],
  [11, 10.73, 0],
  [12, 11.73, 0],
  [13, 12.73, 14.38],
  [14, 13.73, 0],
  [15, 14.73, 0],
  [16, 15.73, 17.77],
  [17, 16.73, 18.9],
  [18, 17.73, 20.03],
  [19, 18.67, 21.1],
  [21, 20.67, 23.35],
  [22, 21.67, 24.49],
  [24, 23.67, 26.75],
  [27, 26.67, 30.14],
  [30, 29.67, 33.53],
  [32, 31.61, 35.72],
  [34, 33.38, 37.72],
  [36, 35.38, 39.98],
  [41, 40, 45.2],
  [46, 45, 50.85],
  [50, 49, 55.37],
  [55, 53.8, 60.79],
  [60, 58.8, 0],
  [65, 63.1, 71.3],
  [70, 68.1, 0],
  [75, 73.1, 82.6],
];

/** Hexagon of bolts ISO 4014/4017 [CQW], read. */
export const boltHeads: readonly (readonly [thread: string, acrossFlats: number])[] = [
  ['M3', 5.5],
  ['M4', 7],
  ['M5', 8],
  ['M6', 10],
  ['M8', 13],
  ['M10', 16],
  ['M12', 18],
  ['M14', 21],
  ['M16', 24],
  ['M20', 30],
  ['M24', 36],
];

/** Slots ISO 1207: greatest width and least depth read [CQW], nominal and least width from memory [slots-MEM]. */
export const slots: readonly (readonly [
  thread: string,
  nominal: number,
  widthMin: number,
  widthMax: number,
  depthMin: number,
])[] = [
  ['M1.6', 0.4, 0.46, 0.6, 0.45],
  ['M2', 0.5, 0.56, 0.7, 0.6],
  ['M2.5', 0.6, 0.66, 0.8, 0.7],
  ['M3', 0.8, 0.86, 1, 0.85],
  ['M4', 1.2, 1.26, 1.51, 1.1],
  ['M5', 1.2, 1.26, 1.51, 1.3],
  ['M6', 1.6, 1.66, 1.91, 1.6],
  ['M8', 2, 2.06, 2.31, 2],
  ['M10', 2.5, 2.56, 2.81, 2.4],
];

/** Driving squares [ISO1174-MEM], from memory: male and female limits across flats. */
export const squares: readonly (readonly [
  nominal: number,
  maleMin: number,
  maleMax: number,
  femaleMin: number,
  femaleMax: number,
])[] = [
  [6.3, 6.26, 6.35, 6.41, 6.63],
  [10, 9.44, 9.53, 9.58, 9.8],
  [12.5, 12.59, 12.7, 12.76, 13.03],
  [20, 18.92, 19.05, 19.11, 19.44],
  [25, 25.27, 25.4, 25.46, 25.79],
];

/** Ways to an internal hexagon without a broaching press, common practice. */
export const withoutBroach: readonly string[] = [
  'drill to the flats size plus 5 to 10 % of s, then drive a hardened hexagon (sharp faced piece of key) as a punch in steps, clearing chips (rotary or push broaching)',
  'drill, then file or slot six corners by a shaper-type tool held in the lathe and indexed by 60 degrees',
  'turn a plain bore, make or buy a hexagon-socket piece (cut-off socket screw head, socket set screw) with turned outside, and bond or press it in',
  'thread the bore, screw in a socket set screw and bond or pin it against turning',
  'silver-solder a turned collar over a hexagon bar mandrel, or solder an insert in (not on hardened parts)',
  'change the drive: two flats, slot, cross hole for a bar, pin-spanner holes, external hexagon',
  'have the socket made by spark erosion',
];
