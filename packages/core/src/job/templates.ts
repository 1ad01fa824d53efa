/** First shapes for a new job: a part in plain proportions, so that there is a drawing to put the true sizes into. */
import type { LengthUnit } from '../units/length.ts';
import type { Mm } from '../units/quantities.ts';
import type { Hazard, JobDocument } from './schema.ts';

export const shapes = ['pin', 'plunger', 'bush', 'spindle', 'plug'] as const;
export type Shape = (typeof shapes)[number];

export interface NewJob {
  readonly title: string;
  /** Name of the machine the part belongs to; may be empty. */
  readonly machine: string;
  readonly units: LengthUnit;
  readonly hazard: Hazard;
  readonly shape: Shape;
  readonly longest: Mm;
  readonly thickest: Mm;
}

type PartDocument = NonNullable<JobDocument['part']>;
/** A share of the longest or of the thickest size, as text in the unit of the job. */
type Share = (share: number) => string;

/** A job document that begins with one of the shapes, in these outer sizes. */
export function newJob({ title, machine, units, hazard, shape, longest, thickest }: NewJob): JobDocument {
  const share = { along: shareOf(longest, units), across: shareOf(thickest, units) };
  const part = partOf[shape](share.along, share.across);
  return {
    sparewright: 'job',
    version: 1,
    title,
    units,
    hazard,
    ...(machine === '' ? {} : { machine: { name: machine } }),
    part: { name: title.slice(0, 120), generalTolerance: 'm', leftOpen: proportions(part, share), ...part },
    notes: 'Only the longest and the thickest size were given; all others are proportions to begin with.',
  };
}

/** Sizes that nobody gave: they stay in pencil until they are measured or typed. */
function proportions(
  { outside, inside }: Omit<PartDocument, 'name'>,
  { along, across }: { readonly along: Share; readonly across: Share },
): string[] {
  const given = new Map([
    ['diameter', across(1)],
    ['length', along(1)],
  ]);
  const isSize = (field: string) => field === 'diameter' || field === 'length' || field === 'depth';
  return [...outside, ...(inside?.left ?? [])].flatMap((section) =>
    Object.entries(section)
      .filter(([field, value]) => isSize(field) && value !== 'through' && value !== given.get(field))
      .map(([field]) => `${section.id}.${field}`),
  );
}

/** Tenths of a millimetre, or hundredths of an inch; the whole as it was given. */
function shareOf(size: Mm, units: LengthUnit): Share {
  const whole = units === 'in' ? size / 25.4 : size;
  return (share) => {
    const decimals = share === 1 ? 4 : whole < 1 ? 3 : units === 'in' ? 2 : 1;
    return String(Number((whole * share).toFixed(decimals)));
  };
}

const partOf: Readonly<Record<Shape, (along: Share, across: Share) => Omit<PartDocument, 'name'>>> = {
  pin: (along, across) => ({
    outside: [
      { id: 'head', name: 'head', kind: 'cylinder', diameter: across(1), length: along(0.15) },
      { id: 'shank', name: 'shank', kind: 'cylinder', diameter: across(0.6), length: along(0.85) },
    ],
  }),
  plunger: (along, across) => ({
    outside: [{ id: 'body', name: 'body', kind: 'cylinder', diameter: across(1), length: along(1), role: 'sliding' }],
    inside: {
      left: [{ id: 'cavity', name: 'cavity', kind: 'bored', diameter: across(0.5), depth: along(0.5) }],
    },
  }),
  bush: (along, across) => ({
    outside: [{ id: 'body', name: 'body', kind: 'cylinder', diameter: across(1), length: along(1), role: 'pressed' }],
    inside: {
      left: [{ id: 'bore', name: 'bore', kind: 'bored', diameter: across(0.6), depth: 'through', role: 'running' }],
    },
  }),
  spindle: (along, across) => ({
    outside: [
      {
        id: 'left-journal',
        name: 'left journal',
        kind: 'cylinder',
        diameter: across(0.7),
        length: along(0.25),
        role: 'running',
      },
      { id: 'middle', name: 'middle', kind: 'cylinder', diameter: across(1), length: along(0.5) },
      {
        id: 'right-journal',
        name: 'right journal',
        kind: 'cylinder',
        diameter: across(0.7),
        length: along(0.25),
        role: 'running',
      },
    ],
  }),
  // Which thread it has is for the person to say: a guessed thread would look measured.
  plug: (along, across) => ({
    outside: [
      { id: 'head', name: 'head', kind: 'cylinder', diameter: across(1), length: along(0.4) },
      { id: 'stem', name: 'stem, for the thread', kind: 'cylinder', diameter: across(0.7), length: along(0.6) },
    ],
    threads: [{ id: 'thread', on: 'stem', from: 'end' }],
  }),
};
