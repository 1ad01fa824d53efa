/** A finding as it is read: what it says, the numbers behind it, what helps. */
import type { Because, Finding, Level } from '@sparewright/core/finding';
import { presentProse } from './prose.ts';
import { presentQuantity } from './quantity.ts';
import type { PresentSettings } from './settings.ts';
import { presentSource } from './source.ts';

export interface PresentedFinding {
  readonly level: Level;
  readonly headline: string;
  /** Numbers with limit and source, then remedies: one line each. */
  readonly lines: readonly string[];
  readonly because: readonly PresentedBecause[];
  readonly remedies: readonly string[];
}

export interface PresentedBecause {
  readonly text: string;
  readonly source?: string | undefined;
}

export function presentFinding(finding: Finding, settings: PresentSettings): PresentedFinding {
  const because = finding.because.map((b) => presentBecause(b, settings));
  const remedies = finding.remedies.map((r) => presentProse(r, settings));
  return {
    level: finding.level,
    headline: presentProse(finding.says, settings),
    because,
    remedies,
    lines: [
      ...because.map((b) => (b.source === undefined ? b.text : `${b.text} (${b.source})`)),
      ...remedies.map((r) => `What helps: ${r}`),
    ],
  };
}

function presentBecause(because: Because, settings: PresentSettings): PresentedBecause {
  const value = presentQuantity(because.value, because.unit, settings);
  const limit = because.limit === undefined ? '' : `; limit ${presentQuantity(because.limit, because.unit, settings)}`;
  return {
    text: `${because.what}: ${value}${limit}`,
    ...(because.source !== undefined && { source: presentSource(because.source) }),
  };
}
