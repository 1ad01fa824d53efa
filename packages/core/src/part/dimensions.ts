/** Every size of the part with its limits. */
import { sizeLimits, type TolerancedSize } from '../standards/fits/toleranced-size.ts';
import type { Mm } from '../units/quantities.ts';
import { called } from './gaps.ts';
import type { Dimension } from './part-result.ts';
import type { Groove, InsideSection, NotTurned, OutsideSection, Part } from './schema.ts';

type Kind = Dimension['kind'];
type Feature = OutsideSection | InsideSection | Groove | NotTurned | NonNullable<Part['threads']>[number];

/** Ids are `feature.field`, in the order of the document. */
export function dimensionsOf(part: Part): Dimension[] {
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
    sizesOf(feature).map(({ field, size }) => ({
      id: `${feature.id}.${field}`,
      feature: feature.id,
      title: `${words(field)} of the ${called(feature)}`,
      kind: kindOf(field, isInside),
      nominal: size.nominal,
      ...sizeLimits(size, part.generalTolerance),
      text: size.text,
    })),
  );
}

function sizesOf(feature: Feature): { field: string; size: TolerancedSize }[] {
  return Object.entries(feature).flatMap(([field, value]) => {
    // A distance of 0 is no size to make or measure.
    if (isSize(value)) return value.nominal > 0 ? [{ field, size: value }] : [];
    const plain = plainRadius(field, value);
    return plain ? [plain] : [];
  });
}

function isSize(value: unknown): value is TolerancedSize {
  return typeof value === 'object' && value !== null && 'nominal' in value && 'tolerance' in value;
}

/** Radii and edges are entered without limits of their own. */
function plainRadius(field: string, value: unknown): { field: string; size: TolerancedSize } | undefined {
  const mm = typeof value === 'number' && /Radius$/.test(field) ? value : edgeSize(value);
  return mm === undefined
    ? undefined
    : { field, size: { nominal: mm, tolerance: { kind: 'none' }, unit: 'mm', text: '' } };
}

function edgeSize(value: unknown): Mm | undefined {
  if (typeof value !== 'object' || value === null || !('kind' in value)) return undefined;
  for (const key of ['radius', 'size', 'width']) {
    const entry: unknown = Object.entries(value).find(([name]) => name === key)?.[1];
    if (typeof entry === 'number') return entry;
  }
  return undefined;
}

function words(field: string): string {
  const text = field.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
  return field === 'along' ? 'distance from the start of its section' : text;
}

function kindOf(field: string, isInside: boolean): Kind {
  if (/diameter$/i.test(field)) return isInside ? 'inside diameter' : 'outside diameter';
  if (/radius$/i.test(field)) return 'radius';
  if (field === 'width' || field === 'depth') return field;
  return field === 'acrossFlats' ? 'across flats' : 'length';
}
