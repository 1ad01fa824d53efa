/** Dial tables: headings and cells as they are shown and exported. */
import type { Column } from '@sparewright/core/route/dial-table';
import { presentProse } from './prose.ts';
import { presentFigure, shownUnit } from './quantity.ts';
import type { PresentSettings } from './settings.ts';

/** The unit at the head of a column; '' for a plain number or words. */
export function presentUnit(column: Column, settings: PresentSettings): string {
  return shownUnit(column.unit, settings);
}

/** One cell; a missing value and a blank to write in are empty. */
export function presentCell(column: Column, value: number | string | undefined, settings: PresentSettings): string {
  if (value === undefined || column.blank) return '';
  if (typeof value === 'string') return presentProse(value, settings);
  return presentFigure(value, column.unit, settings, column.decimals);
}
