/** Parts of the lathe in as few words as a bar or a box has room for; the tables say them in full. */
import type { alterableIds } from '@sparewright/core/lathe/elements';

export const partNames = {
  spindleRadial: 'spindle, sideways',
  spindleTilt: 'spindle, tilting',
  spindleAxial: 'spindle, along its axis',
  grip: 'jaws on the work',
  tailstock: 'tailstock',
  toolPost: 'tool post',
  topSlide: 'top slide or block',
  crossSlide: 'cross slide and gibs',
  saddle: 'saddle on the bed',
  toolAxialRatio: 'tool side along the bed',
  toolTangentialRatio: 'tool side downwards',
  chuckMass: 'weight of the chuck',
  axialMass: 'weight along the axis',
  toolMass: 'weight of the tool side',
  toolDamping: 'damping, tool side',
  workDamping: 'damping, work',
  axialDamping: 'damping along the axis',
  toolTilt: 'tool side dips or rises',
  alignment: 'line of the headstock',
  work: 'the work itself',
  cutter: 'the cutter itself',
} as const satisfies Readonly<Record<(typeof alterableIds)[number] | 'work' | 'cutter', string>>;

export function partName(id: string, otherwise: string): string {
  return Object.entries(partNames).find(([key]) => key === id)?.[1] ?? otherwise;
}
