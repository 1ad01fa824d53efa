/** What the duty stage answers. */
import type { Finding } from '../finding.ts';
import type { SourceKey } from '../sources/register.ts';
import type { Mm } from '../units/quantities.ts';

/** A number that went into a formula. */
export interface PutIn {
  /** Its sign in the formula and what it is. */
  readonly what: string;
  readonly value: number;
  /** '' for a pure number. */
  readonly unit: string;
}

/** How a figure comes about. */
export interface Worked {
  /** In plain mathematics. */
  readonly formula: string;
  readonly put: readonly PutIn[];
  /** Whose formula it is. */
  readonly source: SourceKey;
}

/** A fit between the new part and a mate. */
export interface FitCheck {
  readonly mate: string;
  readonly dimension: string;
  readonly kind: 'clearance' | 'transition' | 'interference';
  /** Negative is interference. */
  readonly least: Mm;
  readonly most: Mm;
  readonly says: string;
  readonly worked: Worked;
}

/** One figure of a duty check, over the whole tolerance range. */
export interface DutyFigure {
  readonly what: string;
  readonly unit: string;
  readonly low: number;
  readonly typical: number;
  readonly high: number;
  readonly limit?:
    | { readonly least?: number | undefined; readonly most?: number | undefined; readonly source: SourceKey }
    | undefined;
  readonly verdict: 'good' | 'marginal' | 'bad' | 'not judged';
  /** Of the typical figure. */
  readonly worked?: Worked | undefined;
}

export interface DutyCheck {
  readonly id: string;
  readonly title: string;
  readonly kind: 'seal' | 'bond' | 'pair' | 'thread';
  readonly figures: readonly DutyFigure[];
  readonly notes: readonly string[];
  readonly sources: readonly SourceKey[];
}

export interface DutyResult {
  readonly fits: readonly FitCheck[];
  readonly checks: readonly DutyCheck[];
  readonly findings: readonly Finding[];
}
