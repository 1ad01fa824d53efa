/** The grip that the cuts of a setup need, and what that grip does to a thin wall. */
import type { Finding } from '../finding.ts';
import { innerRadiusAt } from '../part/outline-queries.ts';
import type { PartResult } from '../part/part-result.ts';
import type { Mm, Newton } from '../units/quantities.ts';
import { band, dimensionOf } from './draft.ts';
import type { Holding } from './hold.ts';
import type { Realised } from './realise.ts';
import type { Drive, Operation } from './route-result.ts';
import { roundEnough, squeezeOfWall } from './second-holding.ts';
import { gripNeeded, safety } from './squeeze.ts';

/** Push of all jaws together for the cut that turns the work hardest in them; undefined where none is reckoned. */
export function gripFor({ setup }: Holding, realised: readonly Realised[]): Newton | undefined {
  if (setup.held !== 'in the chuck' || !(setup.grip.diameter > 0)) return undefined;
  const needed = realised
    .map((r) => r.operation)
    .filter((o) => o.setup === setup.id && o.cut)
    .map((o) => gripNeeded(o.cut?.cuttingForce ?? 0, diameterCut(o), setup.grip.diameter));
  return needed.length > 0 ? Math.max(...needed) : undefined;
}

/** What turns the work where no jaws hold it, with the moment that the hardest cut of the setup asks of it, safety included. */
export function driveFor({ setup, drive }: Holding, realised: readonly Realised[]): Drive | undefined {
  const moments = realised
    .map((r) => r.operation)
    .filter((o) => o.setup === setup.id && o.cut)
    .map((o) => (safety * (o.cut?.cuttingForce ?? 0) * diameterCut(o)) / 2);
  return drive && { ...drive, asked: moments.length > 0 ? Math.max(...moments) : undefined };
}

/** Where a mandrel or a dog slips under the hardest cut. */
export function driveFindings(holding: Holding, realised: readonly Realised[]): Finding[] {
  const drive = driveFor(holding, realised);
  if (drive?.asked === undefined || drive.asked <= drive.holds) return [];
  const mandrel = holding.setup.held === 'on a mandrel';
  return [
    {
      id: 'route.drive-slips',
      level: 'caution',
      stage: 'route',
      at: holding.setup.id,
      says: `The hardest cut here may turn the work in ${drive.by}: take it in lighter cuts.`,
      because: [
        {
          what: 'moment asked, with safety',
          value: drive.asked / 1000,
          unit: 'N·m',
          limit: drive.holds / 1000,
          source: 'ROH',
        },
      ],
      remedies: [
        'Lighter cuts: half the depth asks half the moment',
        ...(mandrel
          ? ['Clamp it with a screw and washer on the end of the mandrel', 'Rough the outside in the chuck before']
          : ['File a small flat for the screw where the part allows it', 'Rough it before it is turned end for end']),
      ],
    },
  ];
}

/** Where the edge works, from the cutting speed. */
function diameterCut({ cut }: Operation): Mm {
  return cut ? (1000 * cut.cuttingSpeed) / (Math.PI * cut.speed) : 0;
}

/** Where the jaws squeeze a wall, and something close is cut while they do: it springs out of round when they are opened. */
export function squeezeFindings(part: PartResult, holding: Holding, realised: readonly Realised[]): Finding[] {
  const { setup } = holding;
  const grip = gripFor(holding, realised);
  // The bar is solid; what bears all round squeezes evenly.
  const bearsAllRound = setup.held !== 'in the chuck' || setup.grip.with !== 'thin sheet';
  if (grip === undefined || bearsAllRound) return [];
  const bore = innerRadiusAt(part.outline, (setup.gripFrom + setup.gripTo) / 2);
  const out = squeezeOfWall(part, setup.grip.diameter / 2, bore, setup.grip.length, holding.chuck.jaws, grip);
  const closest = closestCut(part, setup.id, realised);
  const limit = Math.max(roundEnough, (closest ?? 4 * roundEnough) / 4);
  if (out <= limit) return [];
  return [
    {
      id: 'route.wall-squeezed',
      level: 'caution',
      stage: 'route',
      at: setup.id,
      says: `Jaws that hold against the hardest cut squeeze this wall into ${holding.chuck.jaws} lobes: what is cut round in them comes out of round.`,
      because: [
        { what: 'out of round, on the radius', value: out, unit: 'mm', limit, source: 'roark-9.2' },
        { what: 'push of all jaws together', value: grip, unit: 'N', source: 'ROH' },
      ],
      remedies: [
        'Soft jaws or a split bush bored to the diameter, so that it is held all round',
        'A plug in the bore, or a mandrel',
        'Finish what must be round before the bore makes the wall thin, or in a setup gripped on thick work',
        'Lighter cuts and less grip for the last ones',
      ],
    },
  ];
}

/** The closest limits of a diameter cut in a setup. */
function closestCut(part: PartResult, setup: string, realised: readonly Realised[]): Mm | undefined {
  const bands = realised
    .filter((r) => r.operation.setup === setup)
    .flatMap((r) => r.operation.features)
    .flatMap((f) => band(dimensionOf(part, f, 'diameter')) ?? []);
  return bands.length > 0 ? Math.min(...bands) : undefined;
}
