/**
 * What is believed of each element of a lathe before anything was tested, with what each belief rests on.
 *
 * Knowledge: for light lathes hardly anything is published; where nothing is, the belief is wide and says so.
 */
import type { SourceKey } from '../sources/register.ts';
import type { Mm } from '../units/quantities.ts';
import type { Belief, ElementId } from './elements.ts';
import { type LatheClass, latheClass } from './lathe-class.ts';

export const bearingKinds = ['deep groove', 'angular contact', 'taper roller', 'plain', 'unknown'] as const;
export type BearingKind = (typeof bearingKinds)[number];

/** Stiffness and mass over those of a centre lathe; nothing is published below that size. */
const size: Record<LatheClass, { readonly stiffness: number; readonly mass: number; readonly wider: number }> = {
  small: { stiffness: 0.5, mass: 0.3, wider: 0.2 },
  bench: { stiffness: 0.7, mass: 0.5, wider: 0.1 },
  centre: { stiffness: 1, mass: 1, wider: 0 },
};

const axial: Record<BearingKind, readonly [middle: number, spread: number, basis: Belief['basis'], note: string]> = {
  'deep groove': [8, 0.6, 'computed', 'one row under a light load; 6 to 17 N/µm computed for 6204 to 6208'],
  'angular contact': [
    45,
    0.6,
    'computed',
    'a pair, lightly preloaded; 26 to 160 N/µm computed for 7204 to 7208, less a soft spacer',
  ],
  'taper roller': [60, 0.8, 'nothing published', 'stiffer than balls'],
  plain: [25, 0.9, 'nothing published', 'a thrust washer or ball race'],
  unknown: [15, 0.9, 'nothing published', 'kind of bearing not said'],
};

/**
 * What is believed of a lathe before any test.
 *
 * @throws DomainError when the swing is not above 0
 */
export function priorBeliefs(swing: Mm, bearings: BearingKind): readonly Belief[] {
  const { stiffness, mass, wider } = size[latheClass(swing)];
  const [axialMiddle, axialSpread, axialBasis, axialNote] = axial[bearings];
  const share = (part: string) => `${part}; for a lighter lathe scaled down by judgement`;
  const log = (
    id: ElementId,
    what: string,
    unit: string,
    middle: number,
    spread: number,
    basis: Belief['basis'],
    source: SourceKey,
    note: string,
  ): Belief => ({ id, what, unit, scale: 'log', middle, spread, basis, source, note });
  const linear = (
    id: ElementId,
    what: string,
    unit: string,
    spread: number,
    basis: Belief['basis'],
    source: SourceKey,
    note: string,
  ): Belief => ({ id, what, unit, scale: 'linear', middle: 0, spread, basis, source, note });
  const k = (value: number) => value * stiffness;
  const wide = (value: number) => value + wider;
  return [
    log(
      'spindleRadial',
      'spindle and headstock, sideways at the nose',
      'N/µm',
      k(44.5),
      wide(0.5),
      'from memory',
      'KJ',
      share('teaching exercise on a centre lathe'),
    ),
    log(
      'spindleTilt',
      'spindle, against tilting at the nose',
      'kN·m/rad',
      k(400),
      wide(0.7),
      'computed',
      'NSKF',
      'two bearings 100 mm apart as computed, halved for spindle and housing',
    ),
    log(
      'spindleAxial',
      'spindle, along its axis',
      'N/µm',
      axialMiddle * (stiffness / 0.5) ** 0.3,
      axialSpread,
      axialBasis,
      'NSKF',
      axialNote,
    ),
    log(
      'grip',
      'jaws on the work, for each mm of grip',
      'N/µm per mm',
      15,
      0.7,
      'nothing published',
      'lathe-judgement',
      'contact of serrated or plain jaws; found by a push on a stout bar',
    ),
    log(
      'tailstock',
      'tailstock with its centre, sideways',
      'N/µm',
      k(30),
      wide(0.5),
      'from memory',
      'KJ',
      share('teaching exercise on a centre lathe'),
    ),
    log(
      'toolPost',
      'tool post with its clamping',
      'N/µm',
      k(90),
      wide(0.5),
      'nothing published',
      'lathe-judgement',
      'tool side together set to the 13.3 N/µm of a teaching exercise [KJ]',
    ),
    log(
      'topSlide',
      'top slide, or the block in its place',
      'N/µm',
      k(30),
      wide(0.6),
      'nothing published',
      'lathe-judgement',
      'usually the softest joint; gibs adjusted well gave a third of the deflection [SNAF]',
    ),
    log(
      'crossSlide',
      'cross slide with screw and gibs',
      'N/µm',
      k(50),
      wide(0.6),
      'nothing published',
      'SNAF',
      'gibs adjusted well gave a third of the deflection',
    ),
    log(
      'saddle',
      'saddle on the bed',
      'N/µm',
      k(90),
      wide(0.5),
      'nothing published',
      'lathe-judgement',
      'tool side together set to the 13.3 N/µm of a teaching exercise [KJ]',
    ),
    log(
      'toolAxialRatio',
      'tool side along the bed, over sideways',
      '-',
      1.2,
      0.4,
      'nothing published',
      'lathe-judgement',
      'no direction is known to be much stiffer',
    ),
    log(
      'toolTangentialRatio',
      'tool side downwards, over sideways',
      '-',
      1.3,
      0.4,
      'nothing published',
      'lathe-judgement',
      'no direction is known to be much stiffer',
    ),
    log(
      'chuckMass',
      'mass of chuck and spindle that swings sideways',
      'kg',
      8 * mass,
      0.35,
      'common practice',
      'common-practice',
      'a 100 mm chuck weighs about 2 kg',
    ),
    log(
      'axialMass',
      'mass of spindle, chuck and work along the axis',
      'kg',
      15 * mass,
      0.35,
      'common practice',
      'common-practice',
      'chuck and spindle together',
    ),
    log(
      'toolMass',
      'mass of the tool side that swings',
      'kg',
      9 * mass,
      0.5,
      'published',
      'BISU',
      'from 190 Hz chatter of a medium lathe with 13.3 N/µm; scaled down by judgement',
    ),
    log(
      'toolDamping',
      'damping of the tool side',
      '-',
      0.05,
      0.4,
      'from memory',
      'lathe-judgement',
      'oiled slides 0.02 to 0.1',
    ),
    log(
      'workDamping',
      'damping of work in the chuck',
      '-',
      0.025,
      0.4,
      'from memory',
      'lathe-judgement',
      'a bar in jaws 0.01 to 0.05',
    ),
    log(
      'axialDamping',
      'damping of the spindle along its axis',
      '-',
      0.05,
      0.4,
      'from memory',
      'lathe-judgement',
      'greased bearings 0.02 to 0.1',
    ),
    linear(
      'toolTilt',
      'tool side dips as it gives way (+) or rises (−)',
      'degrees',
      5,
      'nothing published',
      'lathe-judgement',
      'may go either way',
    ),
    log(
      'force',
      'force of the cut over that reckoned',
      '-',
      1,
      0.3,
      'published',
      'lathe-kc-spread',
      'publishers differ by 25 to 40 % in one material; the sideways force by ratio',
    ),
    log(
      'rubbing',
      'rubbing of a fresh honed flank on waves, for each mm of edge',
      'N/mm',
      120,
      0.7,
      'from memory',
      'wu-1989',
      'set, with the dampings, so that cuts which practice calls usual on such a lathe are mostly quiet; amounts to a land of 0.04 mm at 1.3·10⁵ N/mm³ of metal pressed aside; grows with wear',
    ),
    linear(
      'alignment',
      'spindle out of line with the bed, taper on the diameter in 100 mm',
      'mm',
      0.01,
      'published',
      'GRZ',
      'one maker allows 0.015 mm in 300 mm, which is 0.01 mm on the diameter in 100 mm',
    ),
  ];
}
