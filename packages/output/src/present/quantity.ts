/** Numbers with a unit, the metric ones of length brought into the job's unit. */
import { mmPerInch } from '@sparewright/core/units/quantities';
import { presentNumber } from './number.ts';
import type { PresentSettings } from './settings.ts';

interface Shown {
  readonly unit: string;
  readonly times: number;
  /** Decimals a person at the lathe can use. */
  readonly decimals: number;
}

/** A foot is twelve inches, in metres. */
const metresPerFoot = (12 * mmPerInch) / 1000;

const inInches: Readonly<Record<string, Shown>> = {
  mm: { unit: 'in', times: 1 / mmPerInch, decimals: 4 },
  'mm/rev': { unit: 'in/rev', times: 1 / mmPerInch, decimals: 4 },
  'mm/min': { unit: 'in/min', times: 1 / mmPerInch, decimals: 2 },
  'm/min': { unit: 'ft/min', times: 1 / metresPerFoot, decimals: 0 },
};

/** The unit in which figures given in `unit` are shown. */
export function shownUnit(unit: string, { units }: PresentSettings): string {
  return units === 'in' ? (inInches[unit]?.unit ?? unit) : unit;
}

/** A bare figure in {@link shownUnit}. */
export function presentFigure(value: number, unit: string, settings: PresentSettings, decimals?: number): string {
  const shown = settings.units === 'in' ? inInches[unit] : undefined;
  if (!shown) return presentNumber(value, settings.decimalSign, decimals);
  const converted = value * shown.times;
  // Roundings that would show nothing at all are widened.
  const places = Math.abs(converted) < 0.5 * 10 ** -shown.decimals && converted !== 0 ? undefined : shown.decimals;
  return presentNumber(converted, settings.decimalSign, places);
}

/** With its unit; a pure number has none. */
export function presentQuantity(value: number, unit: string, settings: PresentSettings, decimals?: number): string {
  return `${presentFigure(value, unit, settings, decimals)} ${shownUnit(unit, settings)}`.trim();
}
