/** Fields that the questions about materials share. */
import { z } from 'zod';
import type { Material } from './material.ts';

export const nameField = z
  .string()
  .max(80, { error: 'the name of a material, for example 303' })
  .describe('name of the material, any a person types: 303, 1.4305, EN58M, gunmetal, SAE 660');

export const diameterField = z
  .number()
  .positive()
  .max(3000)
  .describe('diameter of the bar, where strength depends on it [mm]');

export const conditionField = z.string().max(80).describe('words of the condition: cold drawn, H900');

export const sourcesField = z.array(z.string()).describe('keys of the sources the answer rests on');

const namesOutput = z
  .strictObject({
    en: z.string().optional().describe('EN material number'),
    enName: z.string().optional().describe('EN short name'),
    aisi: z.string().optional().describe('AISI, SAE, UNS or ASTM'),
    bs: z.string().optional().describe('British Standard'),
    jis: z.string().optional().describe('JIS'),
    also: z.array(z.string()).optional().describe('other names'),
  })
  .describe('names as printed; (near) marks a neighbour');

const hardnessOutput = z
  .strictObject({
    min: z.number().optional().describe('least, on the scale named [-]'),
    max: z.number().optional().describe('most, on the scale named [-]'),
    scale: z.enum(['HB', 'HRB', 'HRC', 'HV']).describe('hardness scale'),
    typical: z.boolean().optional().describe('true: typical figures, not limits'),
  })
  .describe('hardness');

export const materialOutput = z.strictObject({
  id: z.string().describe('alloy, condition and size'),
  grade: z.string().describe('the alloy alone'),
  commonName: z.string().describe('common name'),
  family: z.string().describe('family'),
  condition: z.string().describe('condition of supply or heat treatment'),
  names: namesOutput,
  size: z.tuple([z.number(), z.number()]).optional().describe('bar diameters the strength holds for: over, up to [mm]'),
  density: z.number().describe('density [kg/m³]'),
  youngsModulus: z.number().describe('Young’s modulus [MPa]'),
  poisson: z.number().describe('Poisson’s ratio [-]'),
  proofStrength: z.number().optional().describe('0.2 % proof strength, guaranteed least [MPa]'),
  proofStrengthTypical: z.number().optional().describe('0.2 % proof strength, typical; plastics: yield [MPa]'),
  tensileStrength: z.number().optional().describe('tensile strength, guaranteed least [MPa]'),
  tensileStrengthMax: z.number().optional().describe('tensile strength, most [MPa]'),
  elongation: z.number().optional().describe('least elongation after fracture [%]'),
  hardness: hardnessOutput.optional(),
  expansion: z.number().describe('linear expansion, 20 to 100 °C [1/K]'),
  conductivity: z.number().describe('thermal conductivity [W/(m·K)]'),
  heatCapacity: z.number().describe('heat capacity [J/(kg·K)]'),
  maxService: z.number().describe('rough limit of ordinary use [°C]'),
  machinability: z
    .strictObject({
      percent: z.number().describe('ease of cutting against the base [%]'),
      base: z.string().describe('what 100 % is; figures on different bases do not compare'),
    })
    .optional()
    .describe('machinability'),
  workHardening: z.string().describe('how strongly it hardens under the cutter'),
  cuttingNote: z.string().optional().describe('what to mind at the cutter'),
  corrosion: z.string().describe('corrosion'),
  weld: z.string().describe('welding and brazing'),
  retainingCompound: z.string().describe('how an anaerobic retaining compound takes to it'),
  galling: z.string().describe('galling'),
  anodicIndex: z.number().optional().describe('anodic index [V]'),
  status: z.string().describe('what was read and what is from memory'),
  sourceNote: z.string().optional().describe('which value comes from which source'),
  note: z.string().optional().describe('note'),
  remarks: z.array(z.string()).describe('what the name or size left open'),
  sources: sourcesField,
});

/** A material as it is answered. */
export function shown(material: Material): z.output<typeof materialOutput> {
  const { densityKgPerM3, names, size, remarks, sources, ...same } = material;
  const { also, ...printed } = names;
  return {
    ...same,
    density: densityKgPerM3,
    names: { ...printed, ...(also ? { also: [...also] } : {}) },
    ...(size ? { size: [...size] } : {}),
    remarks: [...remarks],
    sources: [...sources],
  };
}
