/** Every size of the part with its limits. */
import { DomainError } from '../errors.ts';
import { type GeneralClass, generalEdgeDeviation } from '../standards/fits/general-tolerances.ts';
import { type SizeLimits, sizeLimits, type TolerancedSize } from '../standards/fits/toleranced-size.ts';
import { threadLimits } from '../standards/threads/limits.ts';
import type { Mm } from '../units/quantities.ts';
import { called } from './gaps.ts';
import type { Dimension } from './part-result.ts';
import type { ReadThread } from './read-threads.ts';
import type { Groove, InsideSection, NotTurned, OutsideSection, Part } from './schema.ts';

type Kind = Dimension['kind'];
type Feature = OutsideSection | InsideSection | Groove | NotTurned | NonNullable<Part['threads']>[number];

interface Size {
  readonly field: string;
  readonly size: TolerancedSize;
  /** A radius or the size of an edge, entered without limits of its own. */
  readonly edge?: string | undefined;
}

/** Ids are `feature.field`, in the order of the document. */
export function dimensionsOf(part: Part, threads: readonly ReadThread[]): Dimension[] {
  const inside = new Set([...(part.inside?.left ?? []), ...(part.inside?.right ?? [])].map((s) => s.id));
  const features: { feature: Feature; isInside: boolean }[] = [
    ...part.outside.map((feature) => ({ feature, isInside: false })),
    ...(part.inside?.left ?? []).map((feature) => ({ feature, isInside: true })),
    ...(part.inside?.right ?? []).map((feature) => ({ feature, isInside: true })),
    ...(part.grooves ?? []).map((feature) => ({ feature, isInside: inside.has(feature.on) })),
    ...(part.threads ?? []).map((feature) => ({ feature, isInside: inside.has(feature.on) })),
    ...(part.notTurned ?? []).map((feature) => ({ feature, isInside: true })),
  ];
  return features.flatMap(({ feature, isInside }) =>
    sizesOf(feature).map((entry) => ({
      id: `${feature.id}.${entry.field}`,
      feature: feature.id,
      title: title(entry, feature),
      kind: entry.edge === undefined ? kindOf(entry.field, isInside) : entry.edge === 'radius' ? 'radius' : 'length',
      nominal: entry.size.nominal,
      ...limitsOf(entry, feature, part.generalTolerance, threads, isInside),
      text: entry.size.text,
      ...(part.leftOpen?.includes(`${feature.id}.${entry.field}`) ? { open: true as const } : {}),
    })),
  );
}

function limitsOf(
  { field, size, edge }: Size,
  feature: Feature,
  general: GeneralClass | undefined,
  threads: readonly ReadThread[],
  isInside: boolean,
): SizeLimits {
  if (edge !== undefined) return edgeLimits(size.nominal, general);
  const thread = field === 'diameter' ? threads.find((t) => t.feature.on === feature.id)?.thread : undefined;
  const ofThread = thread && size.tolerance.kind === 'none' ? crestLimits(size.nominal, thread, isInside) : undefined;
  return ofThread ?? sizeLimits(size, general);
}

/** The crest of a thread has the limits of its class, not those of a plain diameter; undefined where no such limits are held. */
function crestLimits(
  nominal: Mm,
  thread: NonNullable<ReadThread['thread']>,
  isInside: boolean,
): SizeLimits | undefined {
  try {
    const limits = threadLimits(thread, isInside ? 'internal' : 'external');
    const { max, min } = isInside ? limits.minor : limits.major;
    const basis = `thread ${thread.designation}, class ${limits.toleranceClass}`;
    const from = (mm: Mm) => Number((mm - nominal).toFixed(6));
    return { max, min, upper: from(max), lower: from(min), basis };
  } catch (error) {
    if (error instanceof DomainError) return undefined;
    throw error;
  }
}

/** Table 2 of ISO 2768-1 holds for radii and chamfers. */
function edgeLimits(nominal: Mm, general: GeneralClass | undefined): SizeLimits {
  const none = { upper: 0, lower: 0, max: nominal, min: nominal };
  if (general === undefined) return { ...none, basis: 'no tolerance stated' };
  if (nominal < 0.5) return { ...none, basis: `no tolerance stated, and ISO 2768-${general} gives none under 0.5 mm` };
  const either = generalEdgeDeviation(nominal, general);
  return { upper: either, lower: -either, max: nominal + either, min: nominal - either, basis: `ISO 2768-${general}` };
}

function sizesOf(feature: Feature): Size[] {
  return Object.entries(feature).flatMap(([field, value]) => {
    // A distance of 0 is no size to make or measure.
    if (isSize(value)) return value.nominal > 0 ? [{ field, size: value }] : [];
    const plain = plainSize(field, value);
    return plain ? [plain] : [];
  });
}

function isSize(value: unknown): value is TolerancedSize {
  return typeof value === 'object' && value !== null && 'nominal' in value && 'tolerance' in value;
}

/** Radii and edges are entered without limits of their own. */
function plainSize(field: string, value: unknown): Size | undefined {
  const made = (mm: Mm, edge: string): Size => ({
    field,
    size: { nominal: mm, tolerance: { kind: 'none' }, unit: 'mm', text: '' },
    edge,
  });
  if (typeof value === 'number') return /Radius$/.test(field) ? made(value, 'radius') : undefined;
  if (typeof value !== 'object' || value === null || !('kind' in value)) return undefined;
  if ('radius' in value && typeof value.radius === 'number') return made(value.radius, 'radius');
  if ('size' in value && typeof value.size === 'number') return made(value.size, 'chamfer');
  return 'width' in value && typeof value.width === 'number' ? made(value.width, 'relief') : undefined;
}

function title({ field, edge }: Size, feature: Feature): string {
  const name = called(feature);
  if (field === 'along') return `distance of the ${name} from the start of its section`;
  if (field === 'startEdge' || field === 'endEdge') return `${edge} at the ${field.slice(0, -4)} of the ${name}`;
  return `${field.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)} of the ${name}`;
}

function kindOf(field: string, isInside: boolean): Kind {
  if (/diameter$/i.test(field)) return isInside ? 'inside diameter' : 'outside diameter';
  if (/radius$/i.test(field)) return 'radius';
  if (/Edge$/.test(field)) return 'edge';
  if (field === 'width' || field === 'depth') return field;
  return field === 'acrossFlats' ? 'across flats' : 'length';
}
