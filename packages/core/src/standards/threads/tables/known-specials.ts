/**
 * Pairs of diameter and pitch outside the lists that a restorer meets all the same, and what listed threads are met on.
 * [DROO-S90] [SUZ-2010] [SHOP-blank] [YAMAWA-p656] [FEDHILL-M1-3] [TCB-threads] [ALWENA] [LATHENOVICE]
 */
import type { SourceKey } from '../../../sources/register.ts';

export interface KnownUse {
  readonly says: string;
  readonly source: SourceKey;
}

/** Unlisted metric pairs by designation. */
export const knownMetricSpecials: Readonly<Record<string, KnownUse>> = {
  'M1.7x0.35': { says: 'metric before ISO', source: 'YAMAWA-p656' },
  'M2.3x0.4': { says: 'metric before ISO', source: 'YAMAWA-p656' },
  'M2.6x0.45': { says: 'metric before ISO', source: 'YAMAWA-p656' },
  'M3x0.6': { says: 'old JIS and DIN, before about 1967; now M3x0.5', source: 'DROO-S90' },
  'M3.5x0.75': { says: 'metric before ISO', source: 'SHOP-blank' },
  'M4x0.75': { says: 'old JIS, before about 1967; now M4x0.7', source: 'DROO-S90' },
  'M5x0.9': { says: 'old JIS and DIN, before about 1967; now M5x0.8', source: 'DROO-S90' },
  M13x1: { says: 'catalogued by one die maker', source: 'SHOP-blank' },
  'M13x1.5': { says: 'catalogued by one die maker', source: 'SHOP-blank' },
  'M13x1.75': { says: 'catalogued by one die maker', source: 'SHOP-blank' },
};

/** Unlisted inch pairs: diameter [in], threads an inch, what for. */
export const knownInchSpecials: readonly (readonly [size: string, threadsPerInch: number, KnownUse])[] = [
  ['5/8', 27, { says: 'microphone stands', source: 'LATHENOVICE' }],
  ['7/16', 24, { says: 'brake pipe unions, 1/4 in tube', source: 'SAE-J512' }],
  ['7/8', 18, { says: 'early spark plugs', source: 'TCB-threads' }],
];

/** Listed threads and where they turn up, for telling look-alikes apart. */
export const knownUses: Readonly<Record<string, KnownUse>> = {
  M10x1: {
    says: 'European brake pipe unions; starts in 3/8-24 UNF but strips; also spark plugs',
    source: 'FEDHILL-M1-3',
  },
  'M10x1.25': { says: 'the usual pitch of Japanese vehicles', source: 'SUZ-2010' },
  M12x1: { says: 'larger metric brake pipe unions', source: 'remembered-trade-use' },
  'M12x1.25': { says: 'the usual pitch of Japanese vehicles; also spark plugs', source: 'SUZ-2010' },
  'M12x1.5': { says: 'old JIS, before about 1967; the ISO choice in vehicles', source: 'DROO-S90' },
  'M14x1.5': { says: 'vehicles, Japanese and ISO alike', source: 'SUZ-2010' },
  'M14x1.25': { says: 'spark plugs; ISO 261 keeps it for them', source: 'remembered-trade-use' },
  'M18x1.5': { says: 'spark plugs', source: 'remembered-trade-use' },
  'M35x1.5': { says: 'locknuts of bearings; ISO 261 keeps it for them', source: 'remembered-trade-use' },
  '3/8-24 UNF': { says: 'US brake pipe unions, 3/16 in tube', source: 'FEDHILL-M1-3' },
  '7/8-18 UNS': { says: 'early spark plugs', source: 'TCB-threads' },
  '5/32 BSW': { says: 'Meccano', source: 'ALWENA' },
};
