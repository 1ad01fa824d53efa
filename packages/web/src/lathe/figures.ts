/** Figures of the lathe as they are read. */
import { presentNumber } from '@sparewright/output/present/number';

export interface Range {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

const figure = (value: number): string => presentNumber(Number(value.toPrecision(2)), 'point');

/** `15 (4.7 to 47)` */
export function rangeWords({ low, middle, high }: Range): string {
  return `${figure(middle)} (${figure(low)} to ${figure(high)})`;
}
