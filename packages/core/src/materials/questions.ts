/** Questions about materials: what one is, how it is cut, how two get on, which there are. */
import { z } from 'zod';
import { defineQuestion } from '../question.ts';
import { cuttingData, drillFeed, specificForceSpread } from './cutting-data.ts';
import { candidatesOf, findMaterial } from './find.ts';
import { allMaterials } from './material.ts';
import { pairFindings, pairVerdict } from './pairs.ts';
import { conditionField, diameterField, materialOutput, nameField, shown, sourcesField } from './question-fields.ts';

const candidatesOutput = z.strictObject({
  candidates: z
    .array(
      z.strictObject({
        name: z.string().describe('a name that means this one alone'),
        is: z.string().describe('what it is, and whether it is held here'),
      }),
    )
    .describe('the materials that the name may mean: ask again for one of them'),
  status: z.string().describe('how the names are known'),
  sources: sourcesField,
});

const material = defineQuestion({
  name: 'material',
  asks: 'What is this material, and what are its properties?',
  input: z.strictObject({ name: nameField, diameter: diameterField.optional(), condition: conditionField.optional() }),
  output: z.union([materialOutput, candidatesOutput]),
  sources: ['materials-MEM'],
  example: {
    input: { name: '1.4305' },
    gives: { grade: '303', tensileStrength: 500, tensileStrengthMax: 750, proofStrength: 190, elongation: 35 },
    from: 'AALCO, 1.4305 bar to EN 10088-3: Rm 500 to 750, Rp0.2 190, A 35 %',
  },
  answer({ name, diameter, condition }) {
    const candidates = candidatesOf(name);
    if (candidates.length === 0) return shown(findMaterial(name, { diameter, condition }));
    return { candidates, status: 'which name means which is from memory', sources: ['materials-MEM'] };
  },
});

const printedFields = {
  row: z.string().describe('row of the reference table'),
  for: z.string().describe('material or condition as the source prints it'),
  own: z.boolean().describe('true: the source names this alloy; false: its machining group'),
  status: z.string().describe('read, from memory or common practice'),
  source: z.string().describe('key of the source'),
};
const operationField = z
  .enum(['turn', 'rough', 'finish', 'drill', 'ream', 'thread', 'part'])
  .describe('operation; turn: the source does not tell rough from finish');
const rangeOutput = (what: string) =>
  z.strictObject({
    ...printedFields,
    cutter: z.enum(['high-speed steel', 'carbide', 'any']).describe('cutter'),
    operation: operationField,
    low: z.number().describe(`lower end of the ${what}`),
    high: z.number().describe(`upper end of the ${what}`),
  });

const cutting = defineQuestion({
  name: 'cutting-data',
  asks: 'What is printed about cutting this material: force, speeds, feeds, hardening?',
  input: z.strictObject({
    name: nameField,
    diameter: diameterField.optional(),
    condition: conditionField.optional(),
    drill: z.number().positive().max(100).optional().describe('drill diameter, for its feed [mm]'),
  }),
  output: z.strictObject({
    material: z.string().describe('id of the material understood'),
    remarks: z.array(z.string()).describe('what the name or size left open'),
    isoGroup: z.enum(['P', 'M', 'K', 'N', 'S', 'H']).describe('machining group'),
    specificForce: z.number().optional().describe('kc1.1, specific cutting force of a 1 mm chip [MPa]'),
    exponent: z.number().optional().describe('mc, fall of the specific force with chip thickness [-]'),
    rakeReference: z.number().optional().describe('rake the force holds for [°]'),
    atTenth: z
      .strictObject({
        low: z.number().describe('lowest of the sources [MPa]'),
        high: z.number().describe('highest of the sources [MPa]'),
      })
      .optional()
      .describe('specific force at a chip of 0.1 mm over all sources: its uncertainty'),
    forces: z
      .array(
        z.strictObject({
          ...printedFields,
          specificForce: z.number().describe('kc1.1 [MPa]'),
          exponent: z.number().optional().describe('mc [-]'),
          rakeReference: z.number().optional().describe('rake it holds for [°]'),
        }),
      )
      .describe('the force taken, then the other printed ones'),
    speeds: z
      .array(
        z.strictObject({
          ...printedFields,
          cutter: z.enum(['high-speed steel', 'carbide']).describe('cutter'),
          cutterPrinted: z.string().describe('cutter as printed'),
          operation: operationField,
          low: z.number().describe('lower end [m/min]'),
          high: z.number().describe('upper end [m/min]'),
        }),
      )
      .describe('cutting speeds; on a light lathe take the low ones'),
    feeds: z.array(rangeOutput('feed [mm/rev]')).describe('feeds'),
    depths: z.array(rangeOutput('depth of cut [mm]')).describe('depths of cut'),
    drillFeed: rangeOutput('feed [mm/rev]').optional().describe('feed for the drill asked about'),
    hardening: z
      .strictObject({
        level: z.string().describe('how strongly it hardens under the cutter'),
        advice: z.array(z.string()).describe('what to do about it'),
        chipLoadFloor: z
          .strictObject({
            operation: z.literal('drill').describe('operation'),
            low: z.number().describe('lower end of the least feed [mm/rev]'),
            high: z.number().describe('upper end of the least feed [mm/rev]'),
            scales: z.string().describe('how it goes with the drill'),
            status: z.string().describe('read, from memory or common practice'),
            source: z.string().describe('key of the source'),
          })
          .optional()
          .describe('least feed'),
        sources: sourcesField,
      })
      .describe('work hardening'),
    toolLife: z
      .array(
        z.strictObject({
          row: z.string().describe('row of the reference table'),
          cutter: z.string().describe('cutter'),
          exponent: z.tuple([z.number(), z.number()]).describe('Taylor exponent, low and high [-]'),
          constant: z.number().optional().describe('cutting speed for one minute of life [m/min]'),
          status: z.string().describe('read or from memory'),
          source: z.string().describe('key of the source'),
        }),
      )
      .describe('V·Tⁿ = C'),
    fluids: z
      .array(
        z.strictObject({
          operation: z.string().describe('operation'),
          fluid: z.string().describe('cutting fluid'),
          status: z.string().describe('read or common practice'),
          source: z.string().describe('key of the source'),
        }),
      )
      .describe('cutting fluids'),
    missing: z.array(z.string()).describe('looked for and not found; nothing is guessed'),
    status: z.string().describe('own or group value, read or from memory'),
    sources: sourcesField,
  }),
  sources: ['ISC17', 'TO1'],
  example: {
    input: { name: '303', condition: 'solution annealed' },
    gives: { isoGroup: 'M', specificForce: 2150, exponent: 0.2 },
    from: 'ISC17, p. 558: austenitic stainless steel, 2150 MPa and 0.20',
  },
  answer({ name, diameter, condition, drill }) {
    const found = findMaterial(name, { diameter, condition });
    const data = cuttingData(found);
    const atTenth = specificForceSpread(data, 0.1);
    return {
      material: found.id,
      remarks: [...found.remarks],
      isoGroup: data.isoGroup,
      ...(data.specificForce === undefined ? {} : { specificForce: data.specificForce }),
      ...(data.exponent === undefined ? {} : { exponent: data.exponent }),
      ...(data.rakeReference === undefined ? {} : { rakeReference: data.rakeReference }),
      ...(atTenth ? { atTenth } : {}),
      forces: [...data.forces],
      speeds: [...data.speeds],
      feeds: [...data.feeds],
      depths: [...data.depths],
      ...(drill === undefined ? {} : { drillFeed: drillFeed(drill) }),
      hardening: {
        ...data.hardening,
        advice: [...data.hardening.advice],
        sources: [...data.hardening.sources],
      },
      toolLife: data.toolLife.map((t) => ({ ...t, exponent: twoOf(t.exponent) })),
      fluids: [...data.fluids],
      missing: [...data.missing],
      status: data.status,
      sources: [...data.sources, ...(drill === undefined ? [] : ['NAVY'])],
    };
  },
});

const twoOf = ([low, high]: readonly [number, number]): [number, number] => [low, high];

const pair = defineQuestion({
  name: 'material-pair',
  asks: 'Will these two materials seize or corrode on each other, and what would do better?',
  input: z.strictObject({
    first: nameField,
    second: nameField,
    surroundings: z
      .enum(['harsh', 'normal', 'controlled'])
      .default('normal')
      .describe('harsh: outdoors, damp, salt; normal: indoors; controlled: warmth and damp controlled'),
  }),
  output: z.strictObject({
    first: z.string().describe('id of the first material'),
    second: z.string().describe('id of the second material'),
    remarks: z.array(z.string()).describe('what the names left open'),
    galling: z
      .strictObject({
        level: z.enum(['low', 'medium', 'high', 'not known']).describe('risk of seizing; the bands are ours'),
        threshold: z.number().optional().describe('stress at which galling begins, dry [MPa]'),
        orMore: z.boolean().optional().describe('true: no galling up to the threshold'),
        because: z.string().describe('reason'),
        status: z.string().describe('read, from memory or common practice'),
        sources: sourcesField,
      })
      .describe('galling'),
    galvanic: z
      .strictObject({
        difference: z.number().describe('difference of anodic index [V]'),
        attacked: z.string().optional().describe('id of the material that corrodes'),
        allowed: z
          .strictObject({
            harsh: z.boolean().describe('within 0.15 V'),
            normal: z.boolean().describe('within 0.25 V'),
            controlled: z.boolean().describe('within 0.50 V'),
          })
          .describe('surroundings that allow the difference'),
        sources: sourcesField,
      })
      .optional()
      .describe('galvanic corrosion; absent with plastics'),
    avoid: z
      .array(
        z.strictObject({
          why: z.string().describe('reason'),
          better: z.string().describe('what to take instead'),
          sources: sourcesField,
        }),
      )
      .describe('reasons to avoid the pair'),
    cautions: z.array(z.string()).describe('what to watch in those surroundings'),
    sources: sourcesField,
  }),
  sources: ['AISI-GALL', 'VK6', 'EICAC'],
  example: {
    input: { first: '6082', second: '303', surroundings: 'normal' },
    gives: { galvanic: { difference: 0.4, allowed: { harsh: false, normal: false, controlled: true } } },
    from: 'VK6: aluminium −0.90 V, 18 % chromium stainless −0.50 V, limit 0.25 V in normal surroundings',
  },
  answer({ first, second, surroundings }) {
    const [a, b] = [findMaterial(first), findMaterial(second)];
    const { galling, galvanic, avoid } = pairVerdict(a, b);
    const findings = pairFindings(a, b, { surroundings, at: 'pair', stage: 'part' });
    return {
      first: a.id,
      second: b.id,
      remarks: [...a.remarks, ...b.remarks],
      galling: { ...galling, sources: [...galling.sources] },
      ...(galvanic
        ? { galvanic: { ...galvanic, allowed: { ...galvanic.allowed }, sources: [...galvanic.sources] } }
        : {}),
      avoid: avoid.map((row) => ({ ...row, sources: [...row.sources] })),
      cautions: findings.map((f) => f.says),
      sources: [...new Set([...galling.sources, ...(galvanic?.sources ?? []), ...avoid.flatMap((row) => row.sources)])],
    };
  },
});

const list = defineQuestion({
  name: 'materials',
  asks: 'Which materials are known?',
  input: z.strictObject({
    family: z.string().max(60).optional().describe('words of the family: stainless, brass, plastic'),
  }),
  output: z.strictObject({
    materials: z
      .array(
        z.strictObject({
          id: z.string().describe('alloy, condition and size'),
          grade: z.string().describe('the alloy alone'),
          commonName: z.string().describe('common name'),
          family: z.string().describe('family'),
          condition: z.string().describe('condition'),
          en: z.string().optional().describe('EN material number'),
          status: z.string().describe('what was read and what is from memory'),
        }),
      )
      .describe('materials, grade by grade'),
    families: z.array(z.string()).describe('all families'),
    sources: sourcesField,
  }),
  sources: ['materials-MEM'],
  example: {
    input: { family: 'nickel alloy' },
    gives: { materials: [{ id: 'Monel400', en: '2.4360' }] },
    from: 'materials.csv: one nickel alloy, NiCu30Fe, 2.4360',
  },
  answer({ family }) {
    const asked = (family ?? '').trim().toLowerCase();
    const all = allMaterials();
    const found = all.filter((m) => m.family.includes(asked) || m.commonName.toLowerCase().includes(asked));
    return {
      materials: found.map(({ id, grade, commonName, family: kin, condition, names, status }) => ({
        id,
        grade,
        commonName,
        family: kin,
        condition,
        ...(names.en === undefined ? {} : { en: names.en }),
        status,
      })),
      families: [...new Set(all.map((m) => m.family))],
      sources: [...new Set(found.flatMap((m) => m.sources))],
    };
  },
});

export const materialQuestions = [material, cutting, pair, list] as const;
