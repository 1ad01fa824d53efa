/**
 * Screwdriver slots and driving squares.
 */
import { InputError } from '../../errors.ts';
import type { SourceKey } from '../../sources/register.ts';
import type { Mm } from '../../units/quantities.ts';
import type { Standing } from '../small-parts/standing.ts';
import { slots, squares } from './hexagon-table.ts';

export interface Slot {
  readonly thread: string;
  readonly nominal: Mm;
  readonly width: { readonly min: Mm; readonly max: Mm };
  readonly depthMin: Mm;
  readonly sources: readonly SourceKey[];
  readonly standing: Standing;
}

/** The slot of a cheese-head screw ISO 1207, by thread: `M5`. */
export function slot(thread: string): Slot {
  const row = slots.find(([name]) => name.toLowerCase() === thread.trim().toLowerCase());
  if (!row) {
    const known = slots.map(([name]) => name).join(', ');
    throw new InputError([{ path: 'thread', value: thread, expected: `one of ${known}`, example: 'M5' }]);
  }
  const [name, nominal, min, max, depthMin] = row;
  return {
    thread: name,
    nominal,
    width: { min, max },
    depthMin,
    sources: ['CQW', 'slots-MEM'],
    standing: 'read in part, rest from memory',
  };
}

export interface DriveSquare {
  readonly nominal: Mm;
  readonly male: { readonly min: Mm; readonly max: Mm };
  readonly female: { readonly min: Mm; readonly max: Mm };
  readonly source: SourceKey;
  readonly standing: Standing;
}

/** The driving square ISO 1174-1 of a nominal size: 6.3, 10, 12.5, 20 or 25 mm. */
export function driveSquare(nominal: Mm): DriveSquare {
  const row = squares.find(([size]) => size === nominal);
  if (!row) {
    const known = squares.map(([size]) => size).join(', ');
    throw new InputError([{ path: 'nominal', value: nominal, expected: `one of ${known} mm`, example: '12.5' }]);
  }
  const [size, maleMin, maleMax, femaleMin, femaleMax] = row;
  return {
    nominal: size,
    male: { min: maleMin, max: maleMax },
    female: { min: femaleMin, max: femaleMax },
    source: 'ISO1174-MEM',
    standing: 'from memory',
  };
}
