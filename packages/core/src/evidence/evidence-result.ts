/** What the evidence stage answers. */
import type { Finding } from '../finding.ts';
import type { Mm } from '../units/quantities.ts';
import type { Reading } from './schema.ts';

/** A reading corrected and with its uncertainty. */
export interface Weighed {
  readonly reading: Reading;
  /** Corrected for the gauge's zero and, where a temperature was given, to 20 °C. */
  readonly value: Mm;
  /** Standard uncertainty. */
  readonly uncertainty: Mm;
  /** How it came about, largest share first. */
  readonly budget: readonly { readonly from: string; readonly share: Mm }[];
}

/** Everything measured of one dimension. */
export interface Gathered {
  /** Dimension id: `guide.diameter`. */
  readonly of: string;
  readonly readings: readonly Weighed[];
  /** Best estimate from readings at protected places, if there are any. */
  readonly estimate?: { readonly value: Mm; readonly uncertainty: Mm; readonly expanded: Mm } | undefined;
  /** For a shaft the as-made size was at least this, for a bore at most this, from all usable readings (wear only ever takes off). */
  readonly bound?: { readonly kind: 'at least' | 'at most'; readonly value: Mm } | undefined;
  /** Wear: best estimate less (shaft) or plus (bore) the most worn reading, on diameter. */
  readonly wear?: Mm | undefined;
}

export interface EvidenceResult {
  readonly gathered: readonly Gathered[];
  readonly findings: readonly Finding[];
}
