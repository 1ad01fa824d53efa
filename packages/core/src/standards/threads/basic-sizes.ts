/** Basic sizes of a thread from its diameter, pitch and form. */
import type { SourceKey } from '../../sources/register.ts';
import { type Mm, mmPerInch, radians } from '../../units/quantities.ts';
import { type FormName, formConstants, forms } from './forms.ts';
import type { Thread, ThreadFamily } from './record.ts';

/** What has to be said of a thread before its sizes can be worked out. */
export interface ThreadBasis {
  readonly designation: string;
  readonly family: ThreadFamily;
  readonly series: string;
  readonly size: string;
  readonly form: FormName;
  readonly majorDiameter: Mm;
  readonly pitch: Mm;
  readonly threadsPerInch?: number;
  readonly taper?: number;
  readonly status: 'standard' | 'special';
  readonly remark?: string;
  readonly sources: readonly SourceKey[];
  /** Published pitch and minor diameter, where the standard prints them rather than the formula's. */
  readonly published?: { readonly pitchDiameter: Mm; readonly minorDiameter: Mm };
}

/** The diameters of a right-hand single-start thread, rounded as its standard rounds them: 0.001 mm or 0.0001 in. */
export function threadOf(basis: ThreadBasis): Thread {
  const { published, ...said } = basis;
  const k = formConstants(basis.form);
  const form = forms[basis.form];
  const step = basis.threadsPerInch === undefined ? 0.001 : mmPerInch / 10_000;
  const drop = (multiple: number) => {
    const steps = Math.round((basis.majorDiameter - multiple * basis.pitch) / step + 1e-6);
    return Number((steps * step).toFixed(6));
  };
  return {
    ...said,
    pitchDiameter: published?.pitchDiameter ?? drop(k.pitchDrop),
    minorDiameter: published?.minorDiameter ?? drop(k.minorDrop),
    rootDiameterExternal:
      form.rootTruncation === form.minorTruncation && published ? published.minorDiameter : drop(k.rootDrop),
    flankAngle: radians(form.includedAngle),
    fundamentalHeight: k.height * basis.pitch,
    depthExternal: k.depth * basis.pitch,
    starts: 1,
    hand: 'right',
    sources: [...new Set([...basis.sources, ...form.sources])],
  };
}

/**
 * A size as it is called, in inches: a fraction, a decimal or a gauge number.
 *
 *     gauge number n: 0.060 + 0.013 n
 *
 * @param size  `1/4`, `1 1/8`, `.5`, `1.370` or `#10`
 * @returns the size in inches, undefined when it is none of these [in]
 * @source MEDH-p301
 * @valid plain and mixed fractions, decimals, gauge numbers
 * @example inchSize('#10') → 0.19
 */
export function inchSize(size: string): number | undefined {
  const gauge = /^#(\d+)$/.exec(size);
  if (gauge) return Number((0.06 + 0.013 * Number(gauge[1])).toFixed(4));
  const parts = /^(?:(\d+) )?(\d+)\/(\d+)$/.exec(size);
  if (parts) {
    const value = Number(parts[1] ?? 0) + Number(parts[2]) / Number(parts[3]);
    return Number.isFinite(value) ? value : undefined;
  }
  return /^\d*\.?\d+$/.test(size) ? Number(size) : undefined;
}

/** A diameter in inches as it is called: a fraction to 1/64, else a decimal. */
export function inchName(inches: number): string {
  const sixtyFourths = Math.round(inches * 64);
  if (Math.abs(inches * 64 - sixtyFourths) > 1e-6) return inches.toFixed(4).replace(/0$/, '');
  const whole = Math.floor(sixtyFourths / 64);
  let over = sixtyFourths % 64;
  let under = 64;
  while (over > 0 && over % 2 === 0) {
    over /= 2;
    under /= 2;
  }
  if (over === 0) return String(whole);
  return whole === 0 ? `${over}/${under}` : `${whole} ${over}/${under}`;
}
