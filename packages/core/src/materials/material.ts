/** The bar materials a workshop buys: one record for each alloy, condition and range of sizes. */
import type { SourceKey } from '../sources/register.ts';
import type { Celsius, Mm, MPa } from '../units/quantities.ts';
import type { GradeRow, Hardness, Machinability, MaterialNames, StateRow, WorkHardening } from './grade-row.ts';
import { alloySteels } from './table/alloy-steels.ts';
import { austeniticSteels } from './table/austenitic-steels.ts';
import { carbonSteels } from './table/carbon-steels.ts';
import { castIrons } from './table/cast-irons.ts';
import { copperAlloys } from './table/copper-alloys.ts';
import { hardenableStainlessSteels } from './table/hardenable-stainless-steels.ts';
import { lightMetals } from './table/light-metals.ts';
import { plastics } from './table/plastics.ts';

export interface Material {
  /** Alloy, condition and size: `303-CD`, `C45-QT-16-40`. */
  readonly id: string;
  /** The alloy alone: `303`, `C45`. */
  readonly grade: string;
  readonly commonName: string;
  readonly family: string;
  readonly condition: string;
  readonly names: MaterialNames;
  /** Bar diameters the strength holds for: over, up to. Absent where the source gives none. */
  readonly size?: readonly [Mm, Mm];
  readonly densityKgPerM3: number;
  /** [kg/mm³] */
  readonly density: number;
  readonly youngsModulus: MPa;
  readonly poisson: number;
  /** 0.2 % proof strength, guaranteed least. Of grey iron 0.1 %. */
  readonly proofStrength?: MPa;
  /** 0.2 % proof strength, typical, not guaranteed; of plastics the yield in tension. */
  readonly proofStrengthTypical?: MPa;
  /** Guaranteed least. */
  readonly tensileStrength?: MPa;
  readonly tensileStrengthMax?: MPa;
  /** Least elongation after fracture [%] */
  readonly elongation?: number;
  readonly hardness?: Hardness;
  /** Linear expansion, 20 to 100 °C [1/K] */
  readonly expansion: number;
  /** [W/(m·K)] */
  readonly conductivity: number;
  /** [J/(kg·K)] */
  readonly heatCapacity: number;
  /** Rough limit of ordinary use, by strength or corrosion. */
  readonly maxService: Celsius;
  readonly machinability?: Machinability;
  readonly workHardening: WorkHardening;
  /** What to mind at the cutter, where the source says something. */
  readonly cuttingNote?: string;
  readonly corrosion: string;
  readonly weld: string;
  /** How an anaerobic retaining compound takes to it. */
  readonly retainingCompound: string;
  readonly galling: string;
  /** Anodic index [V]; absent for plastics. */
  readonly anodicIndex?: number;
  readonly sources: readonly SourceKey[];
  /** Which value comes from which source, where the record says. */
  readonly sourceNote?: string;
  /** What was read and what is from memory. */
  readonly status: string;
  readonly note?: string;
  /** What to know about this finding of it: a near name, a guessed size. Empty when the name was plain. */
  readonly remarks: readonly string[];
}

const tables = [
  carbonSteels,
  alloySteels,
  austeniticSteels,
  hardenableStainlessSteels,
  castIrons,
  copperAlloys,
  lightMetals,
  plastics,
];

/** All grades, each with its conditions, the usual condition first. */
export const grades: readonly GradeRow[] = tables.flat();

let filled: readonly Material[] | undefined;

/** Every material, grade by grade. */
export function allMaterials(): readonly Material[] {
  filled ??= grades.flatMap((grade) => grade.states.map((state) => material(grade, state)));
  return filled;
}

/** Every condition and size of one grade, the usual condition first. */
export function materialsOfGrade(grade: string): readonly Material[] {
  return allMaterials().filter((m) => m.grade === grade);
}

type Writable<T> = { -readonly [K in keyof T]: T[K] };

// Field by field: copying through rest and spread took most of the time of the first look-up.
function material(row: GradeRow, state: GradeRow['states'][number]): Material {
  const v: Omit<GradeRow, 'states'> & Partial<StateRow> = { ...row, ...state };
  const need = <T>(value: T | undefined, field: string): T => {
    if (value === undefined) throw new Error(`the table of materials lacks ${field} of ${state.id}`);
    return value;
  };
  const density = need(v.density, 'density');
  const m: Writable<Material> = {
    id: state.id,
    grade: v.grade,
    commonName: v.commonName,
    family: v.family,
    condition: need(v.condition, 'condition'),
    names: need(v.names, 'names'),
    densityKgPerM3: density,
    density: density * 1e-9,
    youngsModulus: need(v.e, 'e') * 1000,
    poisson: need(v.poisson, 'poisson'),
    expansion: need(v.expansion, 'expansion') * 1e-6,
    conductivity: need(v.conductivity, 'conductivity'),
    heatCapacity: need(v.heatCapacity, 'heatCapacity'),
    maxService: need(v.maxService, 'maxService'),
    workHardening: need(v.workHardening, 'workHardening'),
    corrosion: need(v.corrosion, 'corrosion'),
    weld: need(v.weld, 'weld'),
    retainingCompound: need(v.retainingCompound, 'retainingCompound'),
    galling: need(v.galling, 'galling'),
    sources: need(v.sources, 'sources'),
    status: need(v.status, 'status'),
    remarks: [],
  };
  if (v.size) m.size = v.size;
  if (v.proof !== undefined) m.proofStrength = v.proof;
  if (v.proofTypical !== undefined) m.proofStrengthTypical = v.proofTypical;
  if (v.tensile !== undefined) m.tensileStrength = v.tensile;
  if (v.tensileMax !== undefined) m.tensileStrengthMax = v.tensileMax;
  if (v.elongation !== undefined) m.elongation = v.elongation;
  if (v.hardness) m.hardness = v.hardness;
  if (v.machinability) m.machinability = v.machinability;
  if (v.cuttingNote !== undefined) m.cuttingNote = v.cuttingNote;
  if (v.anodicIndex !== undefined) m.anodicIndex = v.anodicIndex;
  if (v.sourceNote !== undefined) m.sourceNote = v.sourceNote;
  if (v.note !== undefined) m.note = v.note;
  return m;
}
