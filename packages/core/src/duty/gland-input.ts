/** What is asked about a gland. */
import type { ORing } from '../standards/seals/o-ring.ts';
import type { Celsius, Mm, MPa } from '../units/quantities.ts';
import type { Limits } from './gland-figures.ts';

export interface GlandInput {
  readonly ring: ORing;
  /** Shore A. */
  readonly hardness: number;
  /** `piston`: groove in the inner part, seals on a bore. `rod`: groove in the housing, seals on a rod. */
  readonly kind: 'piston' | 'rod';
  readonly motion: 'static' | 'moving';
  /** Diameter of the groove bottom. */
  readonly grooveDiameter: Limits;
  /** Bore or rod that the ring seals on. */
  readonly matingDiameter: Limits;
  /** Land beside the groove: piston, or housing bore round the rod. */
  readonly carrierDiameter: Limits;
  readonly grooveWidth: Limits;
  /** Radius in the groove bottom. */
  readonly grooveRadius?: Mm | undefined;
  readonly pressure: MPa;
  readonly temperature?: { readonly min: Celsius; readonly max: Celsius } | undefined;
  /** `NBR`, `EPDM`, `FKM`… */
  readonly elastomer?: string | undefined;
  /** `mineral oil`, `DOT 4`, `compressed air`… */
  readonly medium?: string | undefined;
  /** Offset of the groove from the land, half the run-out [mm]. */
  readonly eccentricity?: Mm | undefined;
  /** Linear expansion of the part with the groove and of the mating part [1/K]; steel where not given. */
  readonly expansion?: { readonly carrier: number; readonly mating: number } | undefined;
  /** Whether a back-up ring stands behind the ring: the published gaps are for rings without. */
  readonly backUp?: boolean | undefined;
  /** Where findings belong; `gland` where not given. */
  readonly at?: string | undefined;
}
