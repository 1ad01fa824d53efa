/** The core's units. Inside, every number has one of these; conversions happen only at the edge. */
export type Mm = number;
export type Mm2 = number;
export type Mm3 = number;
export type Newton = number;
export type MPa = number;
/** Torque. */
export type NewtonMetre = number;
export type Second = number;
export type Hertz = number;
/** Revolutions a minute. */
export type Rpm = number;
/** Cutting speed, metres a minute. */
export type MetrePerMinute = number;
/** Feed, millimetres a revolution. */
export type MmPerRev = number;
export type Watt = number;
export type Celsius = number;
export type Kilogram = number;
export type Radian = number;
export type Degree = number;
/** Surface roughness Ra. */
export type Micrometre = number;

export const mmPerInch = 25.4;

export function radians(degrees: Degree): Radian {
  return (degrees * Math.PI) / 180;
}

export function degrees(radians: Radian): Degree {
  return (radians * 180) / Math.PI;
}
