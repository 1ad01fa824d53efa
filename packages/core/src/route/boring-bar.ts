/** How far a boring bar gives way by itself, for where the lathe is not judged. */
import type { Cutter } from '../cutting/cutter.ts';
import { clamped, deflectionUnderUnitLoad, type MmPerNewton } from '../structure/stepped-beam.ts';
import { steel } from './held-beam.ts';

/** A cantilever of steel as long as the bar stands out. */
export function giveOfBar(cutter: Cutter): MmPerNewton {
  const { barDiameter, overhang } = cutter;
  if (!barDiameter) return 0;
  const section = { from: 0, to: overhang, outerDiameter: barDiameter };
  const beam = { sections: [section], youngsModulus: steel.youngsModulus, poissonRatio: steel.poisson, chuck: clamped };
  return deflectionUnderUnitLoad(beam, [overhang])[0] ?? 0;
}
