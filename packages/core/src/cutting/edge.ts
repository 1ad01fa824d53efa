/**
 * How sharp the edge is, and what it pushes with even when it cuts next to nothing.
 */
import { DomainError } from '../errors.ts';
import type { Mm, MPa } from '../units/quantities.ts';

/** `sharp`: stoned steel or a ground, polished insert. `honed`: ground, lightly honed and coated. `moulded`: pressed and coated as moulded. */
export type EdgeCondition = 'sharp' | 'honed' | 'moulded';

export const edgeConditions = ['sharp', 'honed', 'moulded'] as const satisfies readonly EdgeCondition[];

/** Rounding of the edge, least and greatest to be expected [mm]. Rows `edge radius` of cutting/minimum-cut.csv [LIT, from memory]. */
const rounding: Record<EdgeCondition, { readonly low: Mm; readonly high: Mm }> = {
  sharp: { low: 0.003, high: 0.01 },
  honed: { low: 0.015, high: 0.03 },
  moulded: { low: 0.03, high: 0.06 },
};

/**
 * Rounding of a cutting edge by its condition.
 *
 * @param edge  how the edge was made
 * @returns least, usual and greatest radius of the edge [mm]; the usual one is midway
 * @source LIT edge radius of stoned, ground and moulded edges, from memory
 * @valid unworn edges; a worn edge rounds to 13–51 µm [IMD]
 * @example edgeRadius('sharp').usual → 0.0065
 */
export function edgeRadius(edge: EdgeCondition): { readonly low: Mm; readonly usual: Mm; readonly high: Mm } {
  const { low, high } = rounding[edge];
  return { low, usual: (low + high) / 2, high };
}

/** Edge force square to the edge, over the product of specific force and edge radius; and along the cut, as a share of it. */
const edgePush = 1;
const edgeDrag = 0.5;

/**
 * Force of the rounded edge itself on each millimetre engaged, over and above that of the chip.
 *
 *     p = kc1.1 · ρ   pushing the edge off the work
 *     t = p / 2       along the cut
 *
 * The proportion is set by one pair of published edge forces, 43 and 24 N/mm in Ti-6Al-4V (kc1.1 about 1400 MPa, so
 * ρ about 30 µm), and carried to other materials and edges: right within a factor of two.
 *
 * @param specificForce  kc1.1 of the work [MPa]
 * @param edge  how the edge was made
 * @returns push off the work and drag along the cut for each millimetre of edge [N/mm]
 * @throws DomainError when the specific force is out of range
 * @source budak-1996 from memory
 * @valid 100 ≤ kc1.1 ≤ 6000 MPa; fresh edges
 * @example edgeForce(2000, 'honed').push → 45
 */
export function edgeForce(specificForce: MPa, edge: EdgeCondition): { readonly push: number; readonly drag: number } {
  if (!(specificForce >= 100 && specificForce <= 6000)) {
    throw new DomainError('specificForce', specificForce, '100 to 6000 MPa');
  }
  const push = edgePush * specificForce * edgeRadius(edge).usual;
  return { push, drag: edgeDrag * push };
}
