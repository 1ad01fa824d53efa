/**
 * The order of work, as rules with reasons. A rule holds between two operations of the same setup.
 */
import type { Mm } from '../units/quantities.ts';
import type { Operation } from './route-result.ts';

type Kind = Operation['kind'];

/** What ordering needs to know of an operation. */
export interface Ordered {
  readonly id: string;
  readonly kind: Kind;
  readonly setup: string;
  readonly features: readonly string[];
  /** Largest diameter it works on. */
  readonly diameter: Mm;
  /** Cut from the free end with the tailstock out of the way. */
  readonly atFreeEnd: boolean;
  /** A surface that seals or slides. */
  readonly working: boolean;
  /** What is in the tool post or the tailstock for it; operations with the same one need no change between them. */
  readonly tool?: string | undefined;
  /** Its limits are close: it is likelier to go wrong, and dearer to spoil. */
  readonly close?: boolean | undefined;
}

export interface Rule {
  readonly id: string;
  readonly why: string;
  readonly before: readonly Kind[];
  readonly after: readonly Kind[];
  /** Only when the two touch the same feature. */
  readonly sameFeature?: boolean;
  readonly when?: (before: Ordered, after: Ordered) => boolean;
}

const turning: readonly Kind[] = [
  'rough turn',
  'finish turn',
  'turn cone',
  'turn curve',
  'groove',
  'chamfer',
  'thread',
  'knurl',
  'polish',
];

export const rules: readonly Rule[] = [
  {
    id: 'face-first',
    why: 'Lengths are measured from this face, so it is faced first.',
    before: ['face'],
    after: ['centre', 'drill', 'bore', ...turning],
  },
  {
    id: 'centre-before-drill',
    why: 'A centre hole keeps the drill from wandering.',
    before: ['centre'],
    after: ['drill'],
  },
  {
    id: 'centre-before-turning',
    why: 'A centre is drilled while the end is stout; one that carries the work carries it from here on.',
    before: ['centre'],
    after: turning,
  },
  {
    id: 'pilot-before-drill',
    why: 'The small drill leads the large one.',
    before: ['drill'],
    after: ['drill'],
    sameFeature: true,
    when: (a, b) => a.diameter < b.diameter,
  },
  {
    id: 'drill-before-bore',
    why: 'The boring bar needs a hole to go into.',
    before: ['drill'],
    after: ['bore', 'turn cone'],
    when: (a, b) => b.kind === 'bore' || shareFeature(a, b),
  },
  {
    id: 'bore-before-inner-cone',
    why: 'The cone is the last cut of its cavity.',
    before: ['bore'],
    after: ['turn cone'],
    sameFeature: true,
  },
  {
    id: 'rough-before-finish',
    why: 'All heavy cuts come before any finishing cut: they move the work, warm it and free its stresses.',
    before: ['rough turn', 'drill'],
    after: ['finish turn', 'groove', 'thread', 'chamfer', 'turn cone', 'turn curve', 'polish'],
  },
  {
    id: 'thick-before-thin-rough',
    why: 'Roughed from the thick to the thin, the work stays stiff as long as it can.',
    before: ['rough turn'],
    after: ['rough turn'],
    when: (a, b) => a.diameter > b.diameter,
  },
  {
    id: 'bore-before-finish',
    why: 'Boring lets a wall spring; whatever is close, outside or in the bore itself, comes after it.',
    before: ['bore'],
    after: ['finish turn', 'groove', 'chamfer', 'thread', 'polish'],
  },
  {
    id: 'open-before-bore',
    why: 'The hole is opened first, so that the last cuts of the boring bar are light and alike.',
    before: ['bore'],
    after: ['bore'],
    sameFeature: true,
    when: (a, b) => a.diameter < b.diameter,
  },
  {
    id: 'knurl-before-thread',
    why: 'Knurling pushes hard; the threads of thinner work and polished surfaces come after it.',
    before: ['knurl'],
    after: ['thread', 'polish'],
    when: (a, b) => b.kind === 'polish' || a.diameter > b.diameter,
  },
  {
    id: 'size-before-knurl',
    why: 'The knurl needs a true surface of the right size to start on.',
    before: ['finish turn'],
    after: ['knurl'],
    sameFeature: true,
  },
  {
    id: 'groove-before-finish',
    why: 'The finishing cut takes the burr of the groove with it.',
    before: ['groove'],
    after: ['finish turn'],
    sameFeature: true,
  },
  {
    id: 'groove-before-thread',
    why: 'The threading cutter runs out into the relief.',
    before: ['groove'],
    after: ['thread'],
    sameFeature: true,
  },
  {
    id: 'size-before-chamfer',
    why: 'A chamfer is measured from the finished size.',
    before: ['finish turn', 'turn cone', 'turn curve'],
    after: ['chamfer'],
    sameFeature: true,
  },
  {
    id: 'size-before-thread',
    why: 'The crest of the thread is turned to size first.',
    before: ['finish turn', 'turn cone'],
    after: ['thread'],
    sameFeature: true,
  },
  {
    id: 'heavy-before-slender',
    why: 'Nothing slender is finished before the heavy work elsewhere is done.',
    before: ['groove', 'thread', 'knurl'],
    after: ['finish turn'],
    when: (a, b) => a.diameter > b.diameter && !a.atFreeEnd && !shareFeature(a, b),
  },
  {
    id: 'chamfer-before-thread',
    why: 'Chamfers at both ends keep the thread from raising a burr and let it start.',
    before: ['chamfer'],
    after: ['thread'],
    sameFeature: true,
    when: (a, b) => a.features.every((f) => b.features.includes(f)),
  },
  {
    id: 'thick-before-thin-finish',
    why: 'The slender end is finished last, when nothing heavy is left to do.',
    before: ['finish turn'],
    after: ['finish turn'],
    when: (a, b) => a.diameter > b.diameter,
  },
  {
    id: 'free-end-late',
    why: 'The free end is shaped last, once the tailstock is no longer needed.',
    before: ['finish turn', 'groove', 'thread'],
    after: ['turn curve', 'turn cone'],
    when: (a, b) => b.atFreeEnd && !a.atFreeEnd && !shareFeature(a, b),
  },
  {
    id: 'working-surface-last',
    why: 'A sealing or sliding surface is polished after everything that could mark it.',
    before: ['groove', 'chamfer', 'thread', 'turn cone', 'turn curve', 'finish turn', 'bore'],
    after: ['polish'],
  },
  {
    id: 'cut-off-last',
    why: 'Once cut off, nothing more can be done true to this setup.',
    before: ['face', 'centre', 'drill', 'bore', ...turning],
    after: ['part off'],
  },
  {
    id: 'groove-before-saw',
    why: 'The saw follows the groove, which keeps it square.',
    before: ['part off'],
    after: ['part off'],
    when: (a, b) => a.tool !== 'saw' && b.tool === 'saw',
  },
  {
    id: 'bench-work-last',
    why: 'Work off the lathe waits until the lathe work is done.',
    before: ['face', 'centre', 'drill', 'bore', ...turning, 'part off'],
    after: ['off the lathe'],
  },
];

function shareFeature(a: Ordered, b: Ordered): boolean {
  return a.features.some((f) => b.features.includes(f));
}

/** Rules that may hold between two kinds, looked up once. */
const ofKinds = new Map<Kind, Map<Kind, readonly Rule[]>>();

/** The rules that put `a` before `b`. */
function rulesBetween(a: Ordered, b: Ordered): readonly Rule[] {
  const own = ofKinds.get(a.kind) ?? new Map<Kind, readonly Rule[]>();
  ofKinds.set(a.kind, own);
  let candidates = own.get(b.kind);
  if (!candidates) {
    candidates = rules.filter((r) => r.before.includes(a.kind) && r.after.includes(b.kind));
    own.set(b.kind, candidates);
  }
  return candidates.length === 0 ? candidates : candidates.filter((r) => applies(r, a, b));
}

/** Looks up the rules that put one operation before another, worked out once for each pair. */
export type Between = (a: Ordered, b: Ordered) => readonly Rule[];

export function rulesAmong(operations: readonly Ordered[]): Between {
  const places = new Map(operations.map((o, i) => [o, i]));
  const known: (readonly Rule[])[] = [];
  return (a, b) => {
    const at = (places.get(a) ?? 0) * operations.length + (places.get(b) ?? 0);
    const found = known[at] ?? rulesBetween(a, b);
    known[at] = found;
    return found;
  };
}

/** Does the rule put `a` before `b`? */
export function applies(rule: Rule, a: Ordered, b: Ordered): boolean {
  return (
    a.id !== b.id &&
    a.setup === b.setup &&
    rule.before.includes(a.kind) &&
    rule.after.includes(b.kind) &&
    (!rule.sameFeature || shareFeature(a, b)) &&
    (rule.when?.(a, b) ?? true)
  );
}
