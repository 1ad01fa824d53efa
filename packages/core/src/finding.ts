/**
 * A finding: something the tool wants the person to know. The only type through which any stage speaks up.
 */
import type { SourceKey } from './sources/register.ts';

/** `stop`: do not cut metal before this is settled. `caution`: look at it. `note`: good to know. */
export type Level = 'stop' | 'caution' | 'note';

export type Stage = 'evidence' | 'part' | 'duty' | 'route' | 'bench' | 'inspection' | 'record';

/** A number behind a finding. */
export interface Because {
  /** What the number is, in trade words. */
  readonly what: string;
  readonly value: number;
  /** Unit of value and limit; '' for a pure number. */
  readonly unit: string;
  /** The limit it is held against, in the same unit. */
  readonly limit?: number | undefined;
  readonly source?: SourceKey | undefined;
}

export interface Finding {
  /** Stable name of the kind of finding: `part.wall-too-thin`. */
  readonly id: string;
  readonly level: Level;
  readonly stage: Stage;
  /** Where it belongs: the id of a feature, operation, reading or mate, and if need be the dimension: `seal-groove.width`. */
  readonly at: string;
  readonly says: string;
  readonly because: readonly Because[];
  readonly remedies: readonly string[];
}

const order: Record<Level, number> = { stop: 0, caution: 1, note: 2 };

/** Findings worst first, otherwise in the order they were made; the same finding said twice is kept once. */
export function worstFirst(findings: readonly Finding[]): Finding[] {
  const seen = new Set<string>();
  const kept = findings.filter((f) => {
    const key = `${f.id}|${f.at}|${f.says}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
  return kept.toSorted((a, b) => order[a.level] - order[b.level]);
}
