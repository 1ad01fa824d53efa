/** Which sizes there are to recover, and what is known of each before it is measured. */
import type { Dimension, PartResult } from '../part/part-result.ts';
import type { TolerancedSize } from '../standards/fits/toleranced-size.ts';
import { sizeLimits } from '../standards/fits/toleranced-size.ts';
import type { Mm } from '../units/quantities.ts';
import type { Stated } from './hypotheses.ts';
import type { Role } from './role-classes.ts';

/** A size to recover. */
export interface RecoverFeature {
  /** Dimension id: `guide.diameter`. */
  readonly id: string;
  readonly title: string;
  readonly kind: Dimension['kind'];
  readonly role: Role;
  /** Size entered for the new part: only to tell a wrong unit by. */
  readonly entered?: Mm | undefined;
}

/** A part that works against the one to remake, as a job has it. */
export interface RecoverMate {
  readonly id: string;
  readonly name: string;
  readonly kind: 'bore' | 'shaft';
  readonly with: string;
  /** The mate that is the same piece. */
  readonly sameAs?: string | undefined;
  readonly size?: TolerancedSize | undefined;
  readonly wanted?: { readonly least: Mm; readonly most: Mm } | undefined;
}

/** Wear makes these larger. */
export function isShaftLike(kind: Dimension['kind']): boolean {
  return kind !== 'inside diameter' && kind !== 'width';
}

export function isDiameter(kind: Dimension['kind']): boolean {
  return kind === 'inside diameter' || kind === 'outside diameter';
}

/** Sizes of the part with the role of the surface that carries them. */
export function featuresOf(part: PartResult): RecoverFeature[] {
  const roles = new Map<string, Role>();
  for (const { feature } of [...part.outside, ...part.inside]) if (feature.role) roles.set(feature.id, feature.role);
  return part.dimensions.map(({ id, feature, title, kind, nominal }) => ({
    id,
    title,
    kind,
    role: roles.get(feature) ?? 'free',
    entered: nominal,
  }));
}

/** A size that readings name but the part does not have: taken for what its name says. */
export function unnamedFeature(id: string): RecoverFeature {
  const kind: Dimension['kind'] = /width$/.test(id)
    ? 'width'
    : /(bore|hole|socket).*diameter$/i.test(id)
      ? 'inside diameter'
      : /depth$/.test(id)
        ? 'depth'
        : /length$/.test(id)
          ? 'length'
          : 'outside diameter';
  return { id, title: id, kind, role: 'free' };
}

/** A size with its limits, as a manual gives it, made a hypothesis; undefined when it has no limits. */
export function statedOf(size: TolerancedSize | undefined): Stated | undefined {
  if (!size || size.tolerance.kind === 'none') return undefined;
  const { min, max } = sizeLimits(size, undefined);
  return {
    min,
    max,
    nominal: size.nominal,
    system: size.unit === 'in' ? 'inch' : 'metric',
    written: `${size.text} as stated`,
  };
}
