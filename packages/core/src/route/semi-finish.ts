/** Whether a surface wants a semi-finish pass of its own between roughing and the last cut, and why. */
import type { Mm } from '../units/quantities.ts';
import { closeBand } from './practice.ts';

export interface SemiFinish {
  /** Passes from the roughed size, the last included. */
  readonly fewestPasses: 2 | 3;
  readonly why: string;
}

/**
 * With close limits, and on what seals or slides, one pass first clears what roughing left, then a semi-finish and a finish pass of the
 * same depth; elsewhere a semi-finish pass that is measured will do. `common practice`
 */
export function semiFinish(tolerance: Mm | undefined, working: boolean): SemiFinish {
  if (tolerance !== undefined && tolerance < closeBand)
    return {
      fewestPasses: 3,
      why: `The limits lie ${Number(tolerance.toFixed(4))} mm apart, so it is semi-finished first, then finished at the same depth: only cuts that are alike spring alike, and the one tells what the other will do.`,
    };
  if (working)
    return {
      fewestPasses: 3,
      why: 'It seals or slides, so it is semi-finished first: the last cut then meets even, cool metal, clear of what roughing tore and warmed.',
    };
  return {
    fewestPasses: 2,
    why: 'The limits are wide: one semi-finish pass, measured, tells what the last of the same depth will take.',
  };
}
