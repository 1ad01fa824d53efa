/** A cutter as the chain of springs takes it. */
import type { Cutter } from '../cutting/cutter.ts';
import type { Mm, MPa } from '../units/quantities.ts';

export type CuttingTool = Pick<
  Cutter,
  | 'kind'
  | 'noseRadius'
  | 'approachAngle'
  | 'rake'
  | 'edge'
  | 'overhang'
  | 'maxDepth'
  | 'width'
  | 'bladeHeight'
  | 'barDiameter'
> & {
  /** Side of a square shank, or of the round one of a boring bar when `barDiameter` is given. */
  readonly shank?: Mm | undefined;
  /** Of a boring bar; steel when left out. */
  readonly barModulus?: MPa | undefined;
  /** Of a boring bar [kg/mm³]; steel when left out. */
  readonly barDensity?: number | undefined;
};
