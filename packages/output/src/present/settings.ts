/** How a job wants its figures written. */
import type { Job } from '@sparewright/core/job/schema';
import type { LengthUnit } from '@sparewright/core/units/length';

export type DecimalSign = 'point' | 'comma';

export interface PresentSettings {
  readonly units: LengthUnit;
  readonly decimalSign: DecimalSign;
}

export function presentSettings(job: Pick<Job, 'units' | 'sheet'>): PresentSettings {
  return { units: job.units, decimalSign: job.sheet?.decimalSign ?? 'point' };
}

export function signOf(decimalSign: DecimalSign): '.' | ',' {
  return decimalSign === 'comma' ? ',' : '.';
}
