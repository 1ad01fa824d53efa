/** What the part does not say: collected while it is being placed, told as notes. */
import type { Finding } from '../finding.ts';
import type { TolerancedSize } from '../standards/fits/toleranced-size.ts';
import type { Mm } from '../units/quantities.ts';

/** Something of the part with an id and perhaps a name. */
interface Named {
  readonly id: string;
  readonly name?: string | undefined;
}

/** `seal groove`: the name the turner gave it, or its id in words. */
export function called(feature: Named): string {
  return feature.name ?? feature.id.replaceAll('-', ' ');
}

/** Hands out sizes; where one is missing, hands out the assumed one and remembers that it was missing. */
export class Gaps {
  readonly findings: Finding[] = [];
  /** Entered, but left open by whoever entered them. */
  readonly #open: readonly string[];

  constructor(open: readonly string[] = []) {
    this.#open = open;
  }

  /** The size as entered, or what is assumed in its place. */
  size(feature: Named, field: string, entered: TolerancedSize | undefined, assumed: Mm): Mm {
    return entered?.nominal ?? this.assume(feature, field, assumed);
  }

  assume(feature: Named, field: string, assumed: Mm): Mm {
    const value = Number.isFinite(assumed) && assumed > 0 ? assumed : 1;
    const words = field.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
    this.findings.push({
      id: 'part.size-missing',
      level: 'note',
      stage: 'part',
      at: `${feature.id}.${field}`,
      says: `The ${words} of the ${called(feature)} is not entered; it is drawn in pencil with an assumed size.`,
      because: [{ what: `assumed ${words}`, value: Math.round(value * 1000) / 1000, unit: 'mm' }],
      remedies: [`enter the ${words} of the ${called(feature)}`],
    });
    return value;
  }

  /** Whether anything of this feature was assumed, or is left open. */
  in(feature: Named): boolean {
    const own = `${feature.id}.`;
    return this.findings.some((f) => f.at.startsWith(own)) || this.#open.some((of) => of.startsWith(own));
  }
}
