/** How the figures of the job on the page are written. */
import type { Json } from '@sparewright/core/job/merge';
import type { JobPage } from '@sparewright/output/present/job-view';
import type { PresentSettings } from '@sparewright/output/present/settings';
import { textAt } from '../document.ts';

export function settingsOf({ document, units }: JobPage): PresentSettings {
  const sign = textAt(document as Json, ['sheet', 'decimalSign']);
  return { units, decimalSign: sign === 'comma' ? 'comma' : 'point' };
}
