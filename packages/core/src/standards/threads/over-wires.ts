/**
 * Measuring the pitch diameter of a bolt over three wires.
 *
 * A wire in a helical groove does not touch the flanks in the axial plane, and it tilts with the helix. Here the wire is a
 * cylinder free to tilt in the groove, as between flat anvils, and the flanks are the helicoids that a tool of straight
 * flanks, set in the axial plane, cuts. The wire lies at its lowest where both contacts sit opposite each other across it.
 */
import { DomainError } from '../../errors.ts';
import type { Mm, Radian } from '../../units/quantities.ts';

/** A bolt thread as the wires feel it. */
export interface WireGroove {
  readonly pitchDiameter: Mm;
  readonly pitch: Mm;
  /** Included angle. */
  readonly flankAngle: Radian;
  readonly starts: number;
}

/** Below this angle of lead, 5°, nobody doubts the method; above it two wires no longer keep the micrometer square. */
export const greatestLeadAngle: Radian = (15 * Math.PI) / 180;

/**
 * The wire that touches the flanks at the pitch line, where an error of the flank angle does the least harm.
 *
 *     w = P / (2 cos α)
 *
 * @param pitch  pitch [mm]
 * @param flankAngle  included angle [rad]
 * @returns diameter of the best wire [mm]
 * @source TC-sheet
 * @source geometry
 * @valid small lead angles
 * @example bestWire(1.5, Math.PI / 3) → 0.866
 */
export function bestWire(pitch: Mm, flankAngle: Radian): Mm {
  return pitch / (2 * Math.cos(flankAngle / 2));
}

/**
 * Least and greatest wire of use: one that stands clear of the crest line, and one that still touches the flanks below the crest.
 *
 *     the contact lies w/2 · sin α below the wire's centre; it must lie on the flank, H/2 − trunc either side of the pitch line
 *
 * @param pitch  pitch [mm]
 * @param flankAngle  included angle [rad]
 * @param crestTruncation  height cut off at the crest [mm]
 * @returns diameters of the least and greatest wire [mm]
 * @source geometry
 * @valid small lead angles
 * @example wireRange(1, Math.PI / 3, 0.10825).max → 1.0104
 */
export function wireRange(pitch: Mm, flankAngle: Radian, crestTruncation: Mm): { min: Mm; max: Mm } {
  const half = flankAngle / 2;
  const height = pitch / (2 * Math.tan(half));
  // Width of the groove at the contact is w cos α: at most the groove's width at the crest.
  const max = (pitch * (height - crestTruncation)) / height / Math.cos(half);
  // The wire's outside must stand above the crest: centre height above the pitch line plus w/2.
  const min = (height - crestTruncation) / (0.5 + 0.5 / Math.sin(half));
  return { min, max };
}

/**
 * Lead angle at the pitch diameter.
 *
 *     tan ψ = n P / (π d2)
 *
 * @param groove  pitch diameter, pitch and number of starts [mm]
 * @returns lead angle [rad]
 * @source geometry
 * @valid any helix
 * @example leadAngle({ pitchDiameter: 9.026, pitch: 1.5, flankAngle: 1, starts: 1 }) → 0.05285
 */
export function leadAngle(groove: WireGroove): Radian {
  return Math.atan((groove.starts * groove.pitch) / (Math.PI * groove.pitchDiameter));
}

/**
 * Reading over three wires without regard to the lead angle: the plain formula of the tables.
 *
 *     M = E + w (1 + 1/sin α) − P/(2 tan α)
 *
 * @param groove  the thread [mm]
 * @param wire  diameter of the wires [mm]
 * @returns reading over the wires [mm]
 * @source TC-sheet
 * @source JONES1915-p88
 * @valid lead angles under about 5°; reads 0.000 to 0.005 mm small beside the exact one
 * @example plainReading({ pitchDiameter: 9.026, pitch: 1.5, flankAngle: Math.PI / 3, starts: 1 }, 0.866) → 10.325
 */
export function plainReading(groove: WireGroove, wire: Mm): Mm {
  const half = groove.flankAngle / 2;
  return groove.pitchDiameter + wire * (1 + 1 / Math.sin(half)) - groove.pitch / (2 * Math.tan(half));
}

/**
 * The handbook's correction for the lead angle, to be added to the plain reading.
 *
 *     c = (w/2) tan²ψ cos α cot α
 *
 * @param groove  the thread [mm]
 * @param wire  diameter of the wires [mm]
 * @returns the correction [mm]
 * @source MH-lead-correction
 * @valid lead angles under about 5°
 * @example leadCorrection({ pitchDiameter: 35.35, pitch: 4.2333, flankAngle: Math.PI / 3, starts: 1 }, 3.556) → 0.00388
 */
export function leadCorrection(groove: WireGroove, wire: Mm): Mm {
  const half = groove.flankAngle / 2;
  return ((wire / 2) * Math.tan(leadAngle(groove)) ** 2 * Math.cos(half)) / Math.tan(half);
}

/** Where a wire rests. */
interface Rest {
  /** Distance of the wire's centre line from the axis of the thread. */
  readonly centre: Mm;
  /** Radius at which it touches the flanks. */
  readonly contactRadius: Mm;
  /** Tilt of the wire. */
  readonly tilt: Radian;
}

/** Finds where the wire rests, by Newton's method on the contact's radius and turn. */
function restOf(groove: WireGroove, wire: Mm): Rest {
  const slope = Math.tan(groove.flankAngle / 2);
  const turn = (groove.starts * groove.pitch) / (2 * Math.PI);
  const pitchRadius = groove.pitchDiameter / 2;
  const at = (r: number, theta: number) => {
    const x = r * Math.cos(theta);
    const y = r * Math.sin(theta);
    const z = (r - pitchRadius) * slope + groove.pitch / 4 + turn * theta;
    const tilt = Math.atan2(-y, z);
    // Distances from the wire's centre line: `across` square to its plane of tilt, `out` along the radius.
    const across = y * Math.sin(tilt) - z * Math.cos(tilt);
    const out = (-across * (Math.sin(theta) * Math.sin(tilt) - slope * Math.cos(tilt))) / Math.cos(theta);
    const around = -out * r * Math.sin(theta) + across * (r * Math.cos(theta) * Math.sin(tilt) - turn * Math.cos(tilt));
    return { x, out, tilt, f: [around, Math.hypot(across, out) - wire / 2] as const };
  };
  let r = pitchRadius + ((wire * Math.cos(groove.flankAngle / 2)) / 2 - groove.pitch / 4) / slope;
  let theta = (-turn * wire * Math.cos(groove.flankAngle / 2)) / (2 * r * r);
  for (let i = 0; i < 40; i++) {
    const { f } = at(r, theta);
    const h = 1e-6;
    const fr = at(r + h, theta).f;
    const ft = at(r, theta + h).f;
    const [a, b, c, d] = [(fr[0] - f[0]) / h, (ft[0] - f[0]) / h, (fr[1] - f[1]) / h, (ft[1] - f[1]) / h];
    const det = a * d - b * c;
    const dr = (f[0] * d - b * f[1]) / det;
    const dt = (a * f[1] - c * f[0]) / det;
    r -= dr;
    theta -= dt;
    if (Math.abs(dr) < 1e-11 && Math.abs(dt) < 1e-11) break;
  }
  const rest = at(r, theta);
  return { centre: rest.x - rest.out, contactRadius: r, tilt: rest.tilt };
}

function check(groove: WireGroove, wire: Mm): void {
  const best = bestWire(groove.pitch, groove.flankAngle);
  if (!(wire >= 0.6 * best && wire <= 2 * best)) {
    throw new DomainError(
      'wire',
      wire,
      `a wire of ${(0.6 * best).toFixed(3)} to ${(2 * best).toFixed(3)} mm; the best is ${best.toFixed(3)} mm`,
    );
  }
  if (!(groove.pitchDiameter > groove.pitch))
    throw new DomainError('pitchDiameter', groove.pitchDiameter, 'more than the pitch');
  if (leadAngle(groove) > greatestLeadAngle) throw new DomainError('starts', groove.starts, 'a lead angle up to 15°');
}

/**
 * Exact reading over three wires.
 *
 *     M = 2 R + w, where a cylinder ⌀w at distance R from the axis touches both helicoid flanks and is free to tilt
 *
 * @param groove  the thread [mm]
 * @param wire  diameter of the wires [mm]
 * @returns reading over the wires [mm]
 * @throws DomainError when the wire cannot rest on the flanks, or the lead angle is above 15°
 * @source geometry
 * @valid straight flanks in the axial section, flat anvils, no pressing-in of the wires
 * @example readingOverWires({ pitchDiameter: 9.026, pitch: 1.5, flankAngle: Math.PI / 3, starts: 1 }, 0.866) → 10.3267
 */
export function readingOverWires(groove: WireGroove, wire: Mm): Mm {
  check(groove, wire);
  const m = 2 * restOf(groove, wire).centre + wire;
  if (!Number.isFinite(m)) throw new DomainError('wire', wire, 'a wire that rests on both flanks');
  return m;
}

/**
 * Pitch diameter from a reading over three wires, exact.
 *
 *     E such that {@link readingOverWires} gives the reading
 *
 * @param reading  reading over the wires [mm]
 * @param thread  pitch, included angle and starts
 * @param wire  diameter of the wires [mm]
 * @returns pitch diameter [mm]
 * @throws DomainError when the reading is too small for a thread of this pitch
 * @source geometry
 * @valid as {@link readingOverWires}
 * @example pitchDiameterFromWires(10.3267, { pitch: 1.5, flankAngle: Math.PI / 3, starts: 1 }, 0.866) → 9.026
 */
export function pitchDiameterFromWires(reading: Mm, thread: Omit<WireGroove, 'pitchDiameter'>, wire: Mm): Mm {
  const plain = reading - plainReading({ ...thread, pitchDiameter: 0 }, wire);
  if (!(plain > thread.pitch))
    throw new DomainError(
      'reading',
      reading,
      `more than ${(reading - plain + thread.pitch).toFixed(3)} mm with this wire`,
    );
  let pitchDiameter = plain;
  for (let i = 0; i < 30; i++) {
    const step = reading - readingOverWires({ ...thread, pitchDiameter }, wire);
    pitchDiameter += step;
    if (Math.abs(step) < 1e-10) break;
  }
  return pitchDiameter;
}

/** What one unit of each uncertainty does to the pitch diameter, and their sum by squares. */
export interface WireSensitivity {
  readonly reading: number;
  readonly wire: number;
  readonly pitch: number;
  /** Millimetres a radian of half angle. */
  readonly halfAngle: number;
}

/**
 * How the pitch diameter found over wires answers to errors of reading, wires, pitch and half angle.
 *
 *     ∂E/∂M = 1,  ∂E/∂w = −(1 + 1/sin α),  ∂E/∂P = 1/(2 tan α),  ∂E/∂α = (w cos α − P/2)/sin²α, nil with the best wire
 *
 * @param thread  pitch, included angle and starts
 * @param wire  diameter of the wires [mm]
 * @returns the partial derivatives
 * @source TC-sheet
 * @source geometry
 * @valid small lead angles
 * @example wireSensitivity({ pitch: 1.5, flankAngle: Math.PI / 3, starts: 1 }, 0.866).wire → -3
 */
export function wireSensitivity(thread: Omit<WireGroove, 'pitchDiameter'>, wire: Mm): WireSensitivity {
  const half = thread.flankAngle / 2;
  return {
    reading: 1,
    wire: -(1 + 1 / Math.sin(half)),
    pitch: 1 / (2 * Math.tan(half)),
    halfAngle: (wire * Math.cos(half) - thread.pitch / 2) / Math.sin(half) ** 2,
  };
}

/**
 * Pitch diameter of a taper pipe thread over three wires, measured square to the axis with the wires straddling a plane.
 *
 *     E = 1.00049 M − (3.00049 w − 0.86603 P)
 *
 * @param reading  reading over the wires [mm]
 * @param wire  diameter of the wires [mm]
 * @param pitch  pitch [mm]
 * @returns pitch diameter [mm]
 * @source TC-sheet
 * @valid 60° threads with a taper of 1 in 16 on diameter (NPT)
 * @example taperPitchDiameter(10, 0.54, 0.94074) → 9.1993
 */
export function taperPitchDiameter(reading: Mm, wire: Mm, pitch: Mm): Mm {
  return 1.00049 * reading - (3.00049 * wire - 0.86603 * pitch);
}
