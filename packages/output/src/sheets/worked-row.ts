/** How a figure comes about, in words. */
import type { Worked } from '@sparewright/core/duty/duty-result';
import { presentSize } from '../present/length.ts';
import { presentQuantity } from '../present/quantity.ts';
import type { PresentSettings } from '../present/settings.ts';
import { presentSource } from '../present/source.ts';
import type { WorkedRow } from './blocks.ts';

interface Result {
  readonly what: string;
  readonly gives: string;
}

export function workedRow({ formula, put, source }: Worked, result: Result, settings: PresentSettings): WorkedRow {
  return {
    ...result,
    formula,
    put: put.map(({ what, value, unit }) => `${what}: ${wholly(value, unit, settings)}`),
    source: presentSource(source),
  };
}

/** Fine enough that whoever works it out again comes to the same figure. */
function wholly(value: number, unit: string, settings: PresentSettings): string {
  return unit === 'mm' ? presentSize(value, settings) : presentQuantity(value, unit, settings);
}
