/** How figures of the duty stage come about: each formula in plain mathematics, and the numbers put in. */
import type { ORing } from '../standards/seals/o-ring.ts';
import type { Mm } from '../units/quantities.ts';
import type { BondResult } from './bonded-joint.ts';
import type { PutIn, Worked } from './duty-result.ts';
import type { Limits } from './gland-figures.ts';
import type { Bond } from './schema.ts';

const mm = (what: string, value: Mm): PutIn => ({ what, value, unit: 'mm' });
const middle = ({ min, max }: Limits): Mm => (min + max) / 2;

interface GlandAtHand {
  readonly kind: 'piston' | 'rod';
  readonly ring: Pick<ORing, 'insideDiameter' | 'section'>;
  readonly groove: Limits;
  readonly mating: Limits;
  readonly carrier: Limits;
  readonly width: Limits;
}

export type GlandWorked = Readonly<Record<'squeeze' | 'stretch' | 'fill' | 'gap', Worked>>;

/** The four figures of a ring in its groove, at the middle of all limits and at 20 °C. */
export function workedGland({ kind, ring, groove, mating, carrier, width }: GlandAtHand): GlandWorked {
  const piston = kind === 'piston';
  const section = mm('W, thickness of the ring', ring.section);
  const floor = mm('d, floor of the groove', middle(groove));
  const against = mm(`D, ${piston ? 'bore' : 'rod'}`, middle(mating));
  const depth = mm('h, depth of the groove', Math.abs(middle(mating) - middle(groove)) / 2);
  const seat = mm(piston ? 'd, floor of the groove' : 'd, rod', middle(piston ? groove : mating));
  return {
    squeeze: {
      formula: 'squeeze = (W − h) / W;  h = |D − d| / 2',
      put: [section, against, floor, depth],
      source: 'seals-marco',
    },
    stretch: {
      formula: 'stretch = (d − i) / i',
      put: [seat, mm('i, inside of the ring', ring.insideDiameter)],
      source: 'parker-stretch',
    },
    fill: {
      formula: 'fill = (π/4) W² / (b h)',
      put: [section, mm('b, width of the groove', middle(width)), depth],
      source: 'scribd-ring09',
    },
    gap: {
      formula: piston ? 'gap = D − c' : 'gap = c − D',
      put: [against, mm('c, beside the groove', middle(carrier))],
      source: 'geometry',
    },
  };
}

/** Clearance of a bore and a shaft at the corners of their limits. */
export function workedFit(bore: Limits, shaft: Limits): Worked {
  return {
    source: 'ISO-286-1',
    formula: 'least = D least − d most;  most = D most − d least',
    put: [
      mm('D least, bore', bore.min),
      mm('D most', bore.max),
      mm('d least, shaft', shaft.min),
      mm('d most', shaft.max),
    ],
  };
}

/** What a bonded joint carries, at the typical value of each factor. */
export function workedBond({ diameter }: Bond, { unit, usefulLength, strength, factors }: BondResult): Worked {
  return {
    source: 'bond-MEM',
    formula: unit === 'N' ? 'F = π d L τ' : 'T = π d² L τ / 2',
    put: [
      mm('d, diameter', diameter),
      mm('L, length that counts', usefulLength),
      { what: 'τ, strength by its data sheet', value: strength.typical, unit: 'MPa' },
      ...factors.map(({ name, condition, typical }) => ({
        what: `τ times, for ${name} ${condition}`,
        value: typical,
        unit: '',
      })),
    ],
  };
}
