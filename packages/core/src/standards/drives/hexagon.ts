/**
 * Hexagon drives by their width across flats: the key, the socket it goes in, the external hexagon.
 */
import { DomainError } from '../../errors.ts';
import type { SourceKey } from '../../sources/register.ts';
import type { Mm, NewtonMetre } from '../../units/quantities.ts';
import type { Standing } from '../small-parts/standing.ts';
import { boltHeads, capScrews, externals, keys, makerKeys, setScrews, sockets } from './hexagon-table.ts';

export interface Across {
  readonly min: Mm;
  readonly max: Mm;
}

export interface HexagonKey {
  readonly flats: Across;
  readonly corners: Across;
  /** Torque a key must withstand [ISO2936]. */
  readonly testTorque: NewtonMetre;
  /** Least torque at which a maker's key shears and yields [PRACMAINT]. */
  readonly maker?: { readonly shear: NewtonMetre; readonly yield: NewtonMetre; readonly standing: Standing };
  readonly source: SourceKey;
  readonly standing: Standing;
}

export interface HexagonSocket {
  readonly flats: Across;
  /** Least across corners: what a gauge must enter. */
  readonly cornersMin: Mm;
  readonly sources: readonly SourceKey[];
  readonly standing: Standing;
  readonly note?: string;
  /** Screws with this socket and its least depth. */
  readonly usedBy: readonly { readonly screw: string; readonly depthMin: Mm }[];
}

export interface ExternalHexagon {
  readonly flats: Across;
  readonly cornersMin: Mm;
  readonly sources: readonly SourceKey[];
  readonly standing: Standing;
  readonly note?: string;
  /** Bolts with this head. */
  readonly usedBy: readonly string[];
}

export interface Hexagon {
  readonly acrossFlats: Mm;
  /** Sharp corners of this hexagon. */
  readonly sharpCorners: Mm;
  readonly key?: HexagonKey;
  readonly socket?: HexagonSocket;
  readonly external?: ExternalHexagon;
}

/**
 * Diameter through the sharp corners of a hexagon.
 *
 *     e = 2 s / √3
 *
 * @param acrossFlats  width across flats s [mm]
 * @returns width across sharp corners; the bar to turn down to nothing smaller than this [mm]
 * @throws DomainError when the width is not above zero
 * @source geometry
 * @valid any width above 0
 * @example sharpCorners(8) → 9.238
 */
export function sharpCorners(acrossFlats: Mm): Mm {
  if (!(acrossFlats > 0)) throw new DomainError('acrossFlats', acrossFlats, 'more than 0 mm');
  return (2 * acrossFlats) / Math.sqrt(3);
}

/** All widths that a table holds, smallest first [mm]. */
function hexagonSizes(): Mm[] {
  return [...new Set([...keys, ...sockets, ...externals].map(([size]) => size))].toSorted((a, b) => a - b);
}

/**
 * What is tabled for a hexagon: key, socket and external hexagon, where there is one of that size.
 *
 * @param acrossFlats  nominal width across flats [mm]
 * @throws DomainError when no table has this width, naming the nearest
 */
export function hexagon(acrossFlats: Mm): Hexagon {
  const key = keyOf(acrossFlats);
  const socket = socketOf(acrossFlats);
  const external = externalOf(acrossFlats);
  if (!key && !socket && !external) {
    const nearest = hexagonSizes()
      .toSorted((a, b) => Math.abs(a - acrossFlats) - Math.abs(b - acrossFlats))
      .slice(0, 2);
    throw new DomainError('acrossFlats', acrossFlats, `a width in the tables, the nearest ${nearest.join(' or ')} mm`);
  }
  return {
    acrossFlats,
    sharpCorners: sharpCorners(acrossFlats),
    ...(key && { key }),
    ...(socket && { socket }),
    ...(external && { external }),
  };
}

function keyOf(acrossFlats: Mm): HexagonKey | undefined {
  const row = keys.find(([size]) => size === acrossFlats);
  if (!row) return undefined;
  const [, flatsMin, flatsMax, cornersMin, cornersMax, testTorque] = row;
  const maker = makerKeys.find(([size]) => size === acrossFlats);
  return {
    flats: { min: flatsMin, max: flatsMax },
    corners: { min: cornersMin, max: cornersMax },
    testTorque,
    ...(maker && {
      maker: { shear: maker[3], yield: maker[4], standing: acrossFlats <= 1.5 ? 'read' : 'from memory' },
    }),
    source: 'ISO2936',
    standing: 'from memory',
  };
}

function socketOf(acrossFlats: Mm): HexagonSocket | undefined {
  const row = sockets.find(([size]) => size === acrossFlats);
  if (!row) return undefined;
  const [size, min, max, corners] = row;
  const cornersRead = size >= 0.9 && size <= 12;
  const doubtful = size === 0.9 || size === 1.3;
  return {
    flats: { min, max },
    cornersMin: corners > 0 ? corners : 1.14 * min,
    sources: cornersRead ? ['ISO4762-MEM', 'CREATIVE', 'ISO23429'] : ['ISO4762-MEM', 'ISO23429'],
    standing: doubtful ? 'doubtful' : cornersRead ? 'read in part, rest from memory' : 'from memory',
    ...(doubtful && { note: 'the corner that was read wants a smaller width across flats than the one remembered' }),
    usedBy: [
      ...capScrews
        .filter(([, k]) => k === size)
        .map(([thread, , depthMin]) => ({ screw: `cap screw ${thread}`, depthMin })),
      ...setScrews
        .filter(([, k]) => k === size)
        .map(([thread, , depthMin]) => ({ screw: `set screw ${thread}`, depthMin })),
    ],
  };
}

/** External hexagons whose tabled corner was not read either [mm]. */
const cornersFromMemory: readonly Mm[] = [16, 18, 21, 34];

function externalOf(acrossFlats: Mm): ExternalHexagon | undefined {
  const row = externals.find(([size]) => size === acrossFlats);
  if (!row) return undefined;
  const [size, min, corners] = row;
  const read = corners > 0 && !cornersFromMemory.includes(size);
  const notes = [
    size > 32 ? 'coarser product grades have wider limits above 36 mm: least width from memory' : undefined,
    size === 3.2 ? 'the corner that was read is from a coarser table: 1.13 × least width gives 3.41' : undefined,
  ].filter((note) => note !== undefined);
  return {
    flats: { min, max: size },
    cornersMin: corners > 0 ? corners : 1.13 * min,
    sources: read ? ['CREATIVE', 'BOLTS', 'ISO4759-MEM'] : ['ISO272-MEM', 'ISO4759-MEM'],
    standing: size === 3.2 ? 'doubtful' : read ? 'read in part, rest from memory' : 'from memory',
    ...(notes.length > 0 && { note: notes.join('; ') }),
    usedBy: boltHeads.filter(([, s]) => s === size).map(([thread]) => thread),
  };
}
