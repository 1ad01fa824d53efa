/** Threads, cones, crowns, grooves and drives as recovered, in finished words and pictures. */
import type { RecoverResult } from '@sparewright/core/recover/recover-result';
import { degrees } from '@sparewright/core/units/quantities';
import type { DocumentPath, RecoveredFeatureView, TakeView } from './job-view.ts';
import { presentSize } from './length.ts';
import { presentNumber } from './number.ts';
import { presentProse } from './prose.ts';
import type { ViewContext } from './recovered-context.ts';
import { decisionAbout, isLeftOpen } from './recovered-decision.ts';
import { barsOf, enteredAt } from './recovered-size.ts';
import { sureness } from './size-line.ts';

/** Less likely than this is not worth a button. */
const leastTaken = 0.05;
const mostTaken = 3;
const mostShown = 5;

interface Candidate {
  readonly name: string;
  readonly probability: number;
  readonly says?: string | undefined;
  /** As it is typed into the part, where it is. */
  readonly write?: string | undefined;
}

interface Shape {
  readonly of: string;
  readonly title: string;
  readonly says: readonly string[];
  readonly candidates: readonly Candidate[];
  readonly lookAlike?: string | undefined;
  /** Field of the feature that takes the answer. */
  readonly field?: string | undefined;
}

export function shapeViews(result: RecoverResult, context: ViewContext): RecoveredFeatureView[] {
  const shapes = [
    ...threads(result, context),
    ...tapers(result, context),
    ...crowns(result, context),
    ...rings(result, context),
    ...drives(result, context),
  ];
  return shapes.map((s) => shapeView(s, result, context));
}

function shapeView(shape: Shape, result: RecoverResult, context: ViewContext): RecoveredFeatureView {
  const { settings, places } = context;
  const shown = shape.candidates.filter((c, i) => i === 0 || c.probability > 0.005).slice(0, mostShown);
  const openAs = `${shape.of}.${shape.field ?? 'shape'}`;
  const feature = places.get(shape.of);
  const at: DocumentPath | null = feature && shape.field !== undefined ? [...feature, shape.field] : null;
  return {
    of: shape.of,
    title: shape.title,
    says: shape.says,
    line: null,
    bars: shown.length === 0 ? null : barsOf(shown, shape.title, settings),
    designs: shown.map((c) => ({ written: c.name, share: sureness(c.probability, settings) })),
    wear: [],
    lookAlike: shape.lookAlike === undefined ? null : presentProse(shape.lookAlike, settings),
    next: result.next.filter((n) => n.of === shape.of).map((n) => presentProse(n.says, settings)),
    takes: takesOf(shown, at, context),
    ownAt: at,
    entered: enteredAt(at, context),
    decision: decisionAbout(shape.of, context),
    openAs,
    isOpen: isLeftOpen(openAs, context),
    conflicts: [],
  };
}

function takesOf(candidates: readonly Candidate[], at: DocumentPath | null, { settings }: ViewContext): TakeView[] {
  return candidates
    .filter((c, i) => i === 0 || c.probability >= leastTaken)
    .slice(0, mostTaken)
    .map((c, i) => ({
      name: i === 0 ? 'The likeliest' : 'Also possible',
      write: c.write ?? c.name,
      means: '',
      why: [`${sureness(c.probability, settings)} by the readings`, c.says].filter(Boolean).join('; '),
      puts: at && c.write !== undefined ? [{ at, value: c.write }] : [],
    }));
}

/** `thread on the shank`, `cone`: what a feature is called. */
function called(of: string, { job }: ViewContext): string {
  const { outside = [], inside, grooves = [], notTurned = [] } = job.part ?? {};
  const all = [...outside, ...(inside?.left ?? []), ...(inside?.right ?? []), ...grooves, ...notTurned];
  return all.find((f) => f.id === of)?.name ?? of.replaceAll('-', ' ');
}

function threads({ threads: found }: RecoverResult, context: ViewContext): Shape[] {
  const { settings, job } = context;
  return found.map((t) => {
    const on = job.part?.threads?.find((p) => p.id === t.of)?.on;
    const first = t.designs[0];
    return {
      of: t.of,
      title: on === undefined ? `thread of the ${called(t.of, context)}` : `thread on the ${called(on, context)}`,
      says: [
        `Crest ${presentSize(t.crestDiameter, settings)}, ${t.pitch === undefined ? 'pitch not measured' : `pitch ${presentSize(t.pitch, settings)} (${presentNumber(25.4 / t.pitch, settings.decimalSign, 1)} to the inch)`}.`,
        ...(first?.use === undefined ? [] : [`${first.designation}: ${first.use}.`]),
      ],
      candidates: t.designs.map((d) => ({
        name: d.designation,
        probability: d.probability,
        says: d.use,
        write: d.designation,
      })),
      lookAlike: t.lookAlike,
      field: 'designation',
    };
  });
}

function tapers({ tapers: found }: RecoverResult, context: ViewContext): Shape[] {
  const { decimalSign } = context.settings;
  return found.map((t) => {
    const angle = (r: number) => `${presentNumber(degrees(r), decimalSign, 2)}°`;
    return {
      of: t.of,
      title: `cone of the ${called(t.of, context)}`,
      says: [
        `Half angle ${angle(t.halfAngle)} ± ${angle(2 * t.uncertainty)}, that is ${presentNumber(1 / Math.max(1e-9, Math.abs(t.ratio)), decimalSign, 2)} of length to 1 of diameter.`,
        ...(t.matches.length === 0 ? ['No standard taper is near it: keep it as measured.'] : []),
      ],
      candidates: t.matches.map((m) => ({
        name: m.name,
        probability: m.probability,
        says: `half angle ${angle(m.halfAngle)}${m.standing === 'read' ? '' : ', its figure from memory'}`,
      })),
    };
  });
}

function crowns({ crowns: found }: RecoverResult, context: ViewContext): Shape[] {
  return found.map((c) => ({
    of: c.of,
    title: `dome of the ${called(c.of, context)}`,
    says: [
      `Radius ${presentSize(c.radius, context.settings, 2)} ± ${presentSize(2 * c.uncertainty, context.settings, 2)}, from the height of the cap and its foot.`,
    ],
    candidates: [],
  }));
}

function rings({ rings: found }: RecoverResult, context: ViewContext): Shape[] {
  const grooves = [...new Set(found.map((r) => r.of))];
  return grooves.map((of) => ({
    of,
    title: `${called(of, context)}: the ring it was cut for`,
    says: [],
    candidates: found
      .filter((r) => r.of === of)
      .map((r) => ({ name: r.ring, probability: r.probability, says: presentProse(r.why, context.settings) })),
  }));
}

function drives({ drives: found }: RecoverResult, context: ViewContext): Shape[] {
  const features = [...new Set(found.map((d) => d.of))];
  return features.map((of) => ({
    of,
    title: `${called(of, context)}: the key or spanner it takes`,
    says: [],
    candidates: found
      .filter((d) => d.of === of)
      .map((d) => ({
        name: d.written,
        probability: d.probability,
        write: d.written.replace(/ across flats$/, ''),
      })),
    field: 'acrossFlats',
  }));
}
