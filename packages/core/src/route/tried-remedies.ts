/**
 * Remedies for the cuts that pass a limit, each tried on the model of that very cut on this lathe, best first. They take long beside the
 * route itself, so they are asked for apart, when the route stands.
 */
import { DomainError } from '../errors.ts';
import type { Finding } from '../finding.ts';
import type { JobCut } from '../lathe/job-remedies.ts';
import { type Outcome, type TriedRemedy, whatWouldHelp } from '../lathe/remedies.ts';
import type { Workshop } from '../lathe/schema.ts';
import type { PartResult } from '../part/part-result.ts';
import type { Mm } from '../units/quantities.ts';
import { judgedCuts } from './judged-cuts.ts';
import { singingBorne } from './practice.ts';
import type { RouteResult } from './route-result.ts';

/** Remedies named at a finding. */
const most = 4;
/** Less than this share of a number is no help. */
const leastHelp = 0.1;

/** The number of a limit that remedies are told by, and how it is said. */
interface Told {
  readonly of: (o: Outcome) => number;
  readonly says: (before: number, after: number) => string;
}

const told: Readonly<Record<string, (last: boolean) => Told>> = {
  'route.limit-sings': () => ({
    of: (o) => o.chatter,
    says: (before, after) =>
      `sings with ${percent(after)} instead of ${percent(before)}${after <= singingBorne ? ', which is borne' : ''}`,
  }),
  // Of a last cut the difference along the work counts, of others all that is left on.
  'route.limit-bending': (last) => ({
    of: (o) => (last ? o.taper : o.sizeError),
    says: (before, after) => `gives way ${length(after)} instead of ${length(before)}`,
  }),
};

/** What was tried for the findings of a route; a finding that the model has no better remedy for keeps its own. */
export function triedRemedies(
  route: RouteResult,
  part: Pick<PartResult, 'material'>,
  workshop: Workshop,
): ReadonlyMap<Finding, readonly string[]> {
  const asked = route.findings.filter((f) => told[f.id] !== undefined);
  if (asked.length === 0) return new Map();
  const lists = new Map(
    judgedCuts(route, part, workshop)
      .filter((cut) => asked.some((f) => f.at === cut.id))
      .map((cut) => [cut.id, listFor(cut, workshop)]),
  );
  return new Map(
    asked.flatMap((finding): [Finding, readonly string[]][] => {
      const list = lists.get(finding.at);
      const kind = route.operations.find((o) => o.id === finding.at)?.kind;
      const by = told[finding.id]?.(kind === 'finish turn' || kind === 'bore');
      const words = list && by ? helping(list, by) : [];
      return words.length > 0 ? [[finding, words]] : [];
    }),
  );
}

interface Tried {
  readonly asItStands: Outcome;
  readonly remedies: readonly TriedRemedy[];
}

/** One list for a cut on a lathe: a page and a packet ask for the same. */
const triedBefore = new WeakMap<Workshop, Map<string, Tried | undefined>>();

function listFor(cut: JobCut, workshop: Workshop): Tried | undefined {
  const before = triedBefore.get(workshop) ?? new Map<string, Tried | undefined>();
  triedBefore.set(workshop, before);
  const key = JSON.stringify([cut.setup, cut.asked, cut.material]);
  if (before.has(key)) return before.get(key);
  const list = tried(cut, workshop);
  before.set(key, list);
  return list;
}

function tried(cut: JobCut, { lathe }: Workshop): Tried | undefined {
  try {
    return whatWouldHelp(cut, cut.material, lathe);
  } catch (error) {
    // A remedy that leads outside what the formulas cover: the general ones stay.
    if (!(error instanceof DomainError)) throw error;
    return undefined;
  }
}

function helping({ asItStands, remedies }: Tried, { of, says }: Told): string[] {
  const before = of(asItStands);
  return remedies
    .filter((r) => r.gain > 0 && of(r) < (1 - leastHelp) * before)
    .slice(0, most)
    .map((r) => `${r.name} (${r.effort}): ${says(before, of(r))}`);
}

function percent(share: number): string {
  return `${Math.round(100 * share)} %`;
}

function length(value: Mm): string {
  return `${Number(value.toFixed(3))} mm`;
}
