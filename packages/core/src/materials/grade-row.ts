/** The shape in which the tables hold a grade: what all its conditions share, then each condition's own. */
import type { SourceKey } from '../sources/register.ts';

export type WorkHardening = 'none' | 'low' | 'low to medium' | 'medium' | 'medium to high' | 'high';

export interface Hardness {
  readonly min?: number;
  readonly max?: number;
  readonly scale: 'HB' | 'HRB' | 'HRC' | 'HV';
  /** The figures are typical, not limits. */
  readonly typical?: boolean;
}

/** Ease of cutting against a named base; figures on different bases do not compare. */
export interface Machinability {
  readonly percent: number;
  readonly base: string;
}

/** Names as printed. Several names in one text stand apart by `;`, ` / ` or brackets; `(near)` marks a neighbour. */
export interface MaterialNames {
  /** EN material number. */
  readonly en?: string;
  /** EN short name. */
  readonly enName?: string;
  readonly aisi?: string;
  readonly bs?: string;
  readonly jis?: string;
  readonly also?: readonly string[];
}

interface Values {
  readonly names: MaterialNames;
  readonly condition: string;
  /** Bar diameter the strength holds for: over, up to [mm]. */
  readonly size?: readonly [number, number];
  /** [kg/m³] */
  readonly density: number;
  /** Young's modulus [GPa] */
  readonly e: number;
  readonly poisson: number;
  /** 0.2 % proof strength, guaranteed least [MPa] */
  readonly proof?: number;
  /** 0.2 % proof strength, typical; of plastics the yield in tension [MPa] */
  readonly proofTypical?: number;
  readonly tensile?: number;
  readonly tensileMax?: number;
  readonly elongation?: number;
  readonly hardness?: Hardness;
  /** [µm/(m·K)] */
  readonly expansion: number;
  readonly conductivity: number;
  readonly heatCapacity: number;
  readonly maxService: number;
  readonly machinability?: Machinability;
  readonly workHardening: WorkHardening;
  readonly cuttingNote?: string;
  readonly corrosion: string;
  readonly weld: string;
  readonly retainingCompound: string;
  readonly galling: string;
  readonly anodicIndex?: number;
  readonly sources: readonly SourceKey[];
  readonly sourceNote?: string;
  readonly status: string;
  readonly note?: string;
}

export interface GradeRow extends Partial<Values> {
  readonly grade: string;
  readonly family: string;
  readonly commonName: string;
  /** The usual condition first. */
  readonly states: readonly (Partial<Values> & { readonly id: string })[];
}

/** A condition with everything it inherits from its grade. */
export type StateRow = Values & {
  readonly id: string;
  readonly grade: string;
  readonly family: string;
  readonly commonName: string;
};
