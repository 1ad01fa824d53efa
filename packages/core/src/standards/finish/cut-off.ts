/** How to set a stylus instrument: cut-off, evaluation length, tip. */
import { DomainError } from '../../errors.ts';
import type { Micrometre, Mm } from '../../units/quantities.ts';

export interface StylusSetting {
  readonly cutOff: Mm;
  readonly evaluationLength: Mm;
  /** Short-wave filter λs. */
  readonly shortWave: Micrometre;
  readonly tipRadiusMax: Micrometre;
}

const settings: Readonly<Record<number, StylusSetting>> = {
  0.08: { cutOff: 0.08, evaluationLength: 0.4, shortWave: 2.5, tipRadiusMax: 2 },
  0.25: { cutOff: 0.25, evaluationLength: 1.25, shortWave: 2.5, tipRadiusMax: 2 },
  0.8: { cutOff: 0.8, evaluationLength: 4, shortWave: 2.5, tipRadiusMax: 2 },
  2.5: { cutOff: 2.5, evaluationLength: 12.5, shortWave: 8, tipRadiusMax: 5 },
  8: { cutOff: 8, evaluationLength: 40, shortWave: 25, tipRadiusMax: 10 },
};

/** Upper end of the range, cut-off. */
const byRa: readonly (readonly [Micrometre, Mm])[] = [
  [0.02, 0.08],
  [0.1, 0.25],
  [2, 0.8],
  [10, 2.5],
  [80, 8],
];
const bySpacing: readonly (readonly [Mm, Mm])[] = [
  [0.04, 0.08],
  [0.13, 0.25],
  [0.4, 0.8],
  [1.3, 2.5],
];

/**
 * Stylus setting for a surface without a regular pattern: ground, lapped, papered.
 *
 * @param ra  Ra to be expected [µm]
 * @returns cut-off, evaluation length and tip [mm]
 * @throws DomainError outside 0.006 to 80 µm
 * @source mem-iso4288
 * @source studylib-surf
 * @valid Ra over 0.006 to 80 µm
 * @example cutOffForRa(0.4).cutOff → 0.8
 */
export function cutOffForRa(ra: Micrometre): StylusSetting {
  return pick('ra', ra, 0.006, byRa, 'µm');
}

/**
 * Stylus setting for a turned surface, whose marks repeat with the feed.
 *
 * @param feed  feed it was turned with, the spacing of the marks [mm/rev]
 * @returns cut-off, evaluation length and tip [mm]
 * @throws DomainError outside 0.013 to 1.3 mm
 * @source mem-iso4288
 * @valid spacing over 0.013 to 1.3 mm
 * @example cutOffForFeed(0.1).cutOff → 0.25
 */
export function cutOffForFeed(feed: Mm): StylusSetting {
  return pick('feed', feed, 0.013, bySpacing, 'mm');
}

function pick(
  name: string,
  value: number,
  over: number,
  table: readonly (readonly [upTo: number, cutOff: Mm])[],
  unit: string,
): StylusSetting {
  const row = value > over ? table.find(([upTo]) => value <= upTo) : undefined;
  const setting = row && settings[row[1]];
  if (!setting) throw new DomainError(name, value, `over ${over} to ${table.at(-1)?.[0]} ${unit}`);
  return setting;
}

/** How a measured value is held against an upper limit. */
export const acceptanceRules = [
  {
    rule: 'upper limit passes if no more than 16 % of values exceed it: first value under 70 %, or first 3 all under, or 1 of 6, or 2 of 12',
    source: 'studylib-surf',
  },
  { rule: 'newer default: no value may exceed the limit', source: 'mem-iso21920' },
] as const;
