/**
 * Cutting a thread in passes: each takes a V-shaped chip off both flanks, or off one when the cutter is fed along the other.
 */
import { DomainError } from '../errors.ts';
import { degrees, type Mm, type Newton, type Radian } from '../units/quantities.ts';
import { type EdgeCondition, edgeForce } from './edge.ts';
import { type CutData, chipCompression, inPlaneRatio, kienzleForce, rakeCorrection } from './turning-force.ts';

/** One pass of a thread. Depths are on the radius, from the crest. */
export interface ThreadPass {
  readonly before: Mm;
  readonly after: Mm;
  /** Between the flanks. */
  readonly includedAngle: Radian;
  /** `straight`: square to the axis, both flanks cut. `flank`: along one flank, the other cuts. */
  readonly infeed: 'straight' | 'flank';
  readonly rake: Radian;
  readonly edge: EdgeCondition;
  readonly cutData: CutData;
}

export interface ThreadForce {
  /** [mm²] */
  readonly chipArea: number;
  /** Length of edge engaged. */
  readonly chipWidth: Mm;
  readonly chipThickness: Mm;
  /** Along the cut. */
  readonly cutting: Newton;
  /** Away from the axis. */
  readonly radial: Newton;
  /** Along the axis; none when both flanks cut alike. */
  readonly axial: Newton;
}

/**
 * Forces of a pass.
 *
 *     A = (a₂² − a₁²) tan(α/2),   b = 2 a₂ / cos(α/2)  straight,  a₂ / cos(α/2)  along a flank,   h = A / b
 *     Fc = b h^(1−mc) kc1.1 · 1.3 K_rake + t b,   Fn = tan(β − γ) · (Fc − t b) + p b
 *     radial Fn sin(α/2); along a flank also axial Fn cos(α/2)
 *
 * @param pass  the pass
 * @returns chip and forces
 * @throws DomainError when a depth or the angle is out of range
 * @source geometry area of a V, length of its flanks
 * @source WKZ Kienzle formula
 * @source KOE chip compression 1.3 where the chip is squeezed, from memory
 * @source merchant-1945 in-plane force
 * @valid sharp V without a flat, 0 ≤ a₁ < a₂ ≤ 6 mm, 29° ≤ α ≤ 60°; chips of both flanks squeeze each other, so straight infeed may need more; ±40 %
 * @example threadForce({ before: 0.3, after: 0.4, includedAngle: 1.047198, infeed: 'straight', rake: 0, edge: 'sharp', cutData: { specificForce: 2000, exponent: 0.25 } }).chipThickness → 0.04375
 */
export function threadForce(pass: ThreadPass): ThreadForce {
  const { before, after, includedAngle, infeed, rake, cutData } = pass;
  if (!(before >= 0)) throw new DomainError('before', before, '0 mm or more');
  if (!(after > before && after <= 6)) throw new DomainError('after', after, `more than ${before} to 6 mm`);
  if (!(degrees(includedAngle) >= 28.999 && degrees(includedAngle) <= 60.001))
    throw new DomainError('includedAngle', degrees(includedAngle), '29 to 60 degrees');
  const half = includedAngle / 2;
  const chipArea = (after ** 2 - before ** 2) * Math.tan(half);
  const chipWidth = ((infeed === 'straight' ? 2 : 1) * after) / Math.cos(half);
  const chipThickness = chipArea / chipWidth;
  const onChip =
    kienzleForce(chipWidth, chipThickness, cutData) *
    rakeCorrection(rake, cutData.rakeReference ?? 0) *
    chipCompression.groove;
  const own = edgeForce(cutData.specificForce, pass.edge);
  const inPlane = onChip * inPlaneRatio(rake) + own.push * chipWidth;
  return {
    chipArea,
    chipWidth,
    chipThickness,
    cutting: onChip + own.drag * chipWidth,
    radial: inPlane * Math.sin(half),
    axial: infeed === 'flank' ? inPlane * Math.cos(half) : 0,
  };
}
