/**
 * Cautions that the hazard class and the planned work call for. They inform and never block; in the packet they cannot be switched off.
 */

import type { Duty } from '../duty/schema.ts';
import type { RouteResult } from '../route/route-result.ts';
import type { Hazard } from './schema.ts';

export interface Caution {
  readonly id: string;
  /** What calls for it: a hazard class or a kind of work. */
  readonly about: string;
  readonly says: string;
}

const defer =
  'This tool does not replace the rules of the place where the part is used, nor the licensed practice of those who may fit and test it.';

const byHazard: Record<Hazard, readonly string[]> = {
  ordinary: [],
  pressure: [
    `A pressure part can burst. Use material with a certificate, have a second competent person check it, prove it with liquid (never air) before use. ${defer}`,
    'Strength under pressure of the housing and of parts not entered here is not calculated.',
  ],
  lifting: [
    `A lifting part that fails can kill. It needs a written calculation with margin, certified material, a proof load witnessed by a competent person, and a record. ${defer}`,
    'Fatigue, shock and corrosion in service are not calculated.',
  ],
  'vehicle safety': [
    `Brake, steering and suspension parts can kill when they fail. A remade part may need inspection and approval before the vehicle is used on the road. ${defer}`,
    'Rubber must suit the fluid: glycol brake fluid needs EPDM or SBR, mineral fluids need NBR or FKM. A wrong seal swells.',
    'A bonded joint must not be the only path of a load here.',
  ],
  'food contact': [
    `Free-cutting steels and brasses with lead are not for food or drinking water; finishes must be cleanable. ${defer}`,
  ],
  electrical: [`Parts that carry or keep away voltage are the work of those licensed for it. ${defer}`],
  'rotating at speed': [
    `A part that turns fast can fly apart or throw its load. Balance, speed limit and guard are not calculated here. ${defer}`,
  ],
};

/** Whatever is turned. */
export const turningCautions: readonly string[] = [
  'Chuck key out before anything is switched on; turn the chuck once by hand after every change of set-up.',
  'Eye protection always; no gloves, rings, ties or loose cuffs; long hair tied up.',
  'Stop the spindle before measuring, before touching swarf, before reaching over the work. Swarf is hooked or brushed, never pulled by hand.',
];

/** Cautions for a job, worst first. */
export function cautionsFor(hazard: Hazard, duty: Duty | undefined, route: RouteResult | undefined): Caution[] {
  const cautions: Caution[] = byHazard[hazard].map((says, i) => ({ id: `hazard-${i + 1}`, about: hazard, says }));
  if (duty?.bonds?.length)
    cautions.push({
      id: 'adhesive',
      about: 'bonding',
      says: 'Retaining compounds can sensitise skin and eyes: nitrile gloves, fresh air, no open flame near cleaners and activators. Read the safety data sheet.',
    });
  if (duty?.pressure && hazard === 'ordinary')
    cautions.push({
      id: 'pressure-entered',
      about: 'pressure',
      says: `The duty names a pressure but the job is classed as ordinary. ${defer}`,
    });
  if (route) cautions.push(...turningCautions.map((says, i) => ({ id: `lathe-${i + 1}`, about: 'lathe work', says })));
  return cautions;
}
