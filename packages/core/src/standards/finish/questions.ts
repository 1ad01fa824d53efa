/** Questions about surface finish: what a cut, a paper or a seal face asks for, and what to leave for polishing. */
import { z } from 'zod';
import { InputError } from '../../errors.ts';
import { defineQuestion } from '../../question.ts';
import type { SourceKey } from '../../sources/register.ts';
import { acceptanceRules, cutOffForFeed, cutOffForRa } from './cut-off.ts';
import { findGrit, finishesOfGrit, gritSteps, paperFor, sameGrain } from './grit.ts';
import { finishingAllowances, paperAllowance } from './polish-allowance.ts';
import { processesFor, roughnessOfProcess } from './process-roughness.ts';
import { gradeWithin, nGrades, raOfGrade, rtFromRa, rzFromRa } from './roughness-units.ts';
import { type SealFace, sealFaces, sealFinishAsked } from './seal-surface.ts';
import { arcRa, arcRt, expectedRa } from './turned-roughness.ts';

const sourcesField = z.array(z.string()).describe('keys of the sources the answer rests on');
const rangeOutput = (what: string) =>
  z.strictObject({ low: z.number().describe(`low ${what}`), high: z.number().describe(`high ${what}`) });
const feedField = z.number().positive().max(10).describe('feed [mm/rev]');
const noseField = z.number().positive().max(50).describe('nose radius of the cutter [mm]');
const faceNames = Object.keys(sealFaces);
const faceField = z
  .string()
  .refine((face): face is SealFace => faceNames.includes(face), { error: `one of: ${faceNames.join('; ')}` })
  .describe(`face of a sealed joint: ${faceNames.join('; ')}`);

const stylusOutput = z
  .strictObject({
    cutOff: z.number().describe('cut-off [mm]'),
    evaluationLength: z.number().describe('evaluation length [mm]'),
    shortWave: z.number().describe('short-wave filter λs [µm]'),
    tipRadiusMax: z.number().describe('largest tip radius [µm]'),
  })
  .describe('how to set a stylus instrument');

const surfaceFinish = defineQuestion({
  name: 'surface-finish',
  asks: 'How rough will this cut leave it, what does a roughness mean, or what does a seal face ask for?',
  input: z.strictObject({
    feed: feedField.optional(),
    noseRadius: noseField.optional(),
    ra: z.number().positive().max(400).optional().describe('Ra to be told in other measures [µm]'),
    grade: z.string().max(4).optional().describe('N1 to N12, as on older drawings'),
    face: faceField.optional(),
    process: z.string().max(40).optional().describe('way of working: turning, grinding, reaming'),
  }),
  output: z.strictObject({
    turned: z
      .strictObject({
        rt: z.number().describe('peak to valley by geometry [µm]'),
        ra: z.number().describe('Ra by geometry [µm]'),
        expected: rangeOutput('Ra to expect on a light lathe, sharp tool, no built-up edge [µm]')
          .optional()
          .describe('Ra to expect; absent where the feed exceeds the nose radius'),
        atFloor: z.boolean().optional().describe('true: finer feed hardly helps, turning usually gets no finer'),
      })
      .optional()
      .describe('what feed and nose radius leave'),
    ra: z.number().optional().describe('Ra asked about [µm]'),
    nGrade: z.string().optional().describe('coarsest N grade within that Ra'),
    rt: rangeOutput('Rt [µm]').optional().describe('Rt to be expected with that Ra, ±35 %'),
    rz: rangeOutput('Rz [µm]').optional().describe('Rz to be expected with that Ra, 4 to 7 times'),
    stylus: stylusOutput.optional(),
    processes: z
      .array(
        z.strictObject({
          process: z.string().describe('way of working'),
          raMin: z.number().describe('finest usual Ra [µm]'),
          raMax: z.number().describe('coarsest usual Ra [µm]'),
          source: z.string().describe('key of the source'),
        }),
      )
      .optional()
      .describe('ways of working, with the Ra they usually leave'),
    seal: z
      .strictObject({
        strictest: z.number().optional().describe('strictest upper limit of Ra printed [µm]'),
        mostLenient: z.number().optional().describe('most lenient upper limit of Ra printed [µm]'),
        notSmootherThan: z.number().optional().describe('highest lower limit of Ra printed [µm]'),
        rows: z
          .array(
            z.strictObject({
              surface: z.string().describe('surface'),
              service: z.string().describe('service'),
              raMin: z.number().optional().describe('Ra not under [µm]'),
              raMax: z.number().optional().describe('Ra not over [µm]'),
              rzMax: z.number().optional().describe('Rz not over [µm]'),
              note: z.string().optional().describe('note'),
              source: z.string().describe('key of the source'),
            }),
          )
          .describe('what each maker asks'),
      })
      .optional()
      .describe('what seal makers ask of the face'),
    remarks: z.array(z.string()).describe('how far to trust it'),
    sources: sourcesField,
  }),
  sources: ['mem-machinery', 'mem-b46'],
  example: {
    input: { feed: 0.2, noseRadius: 0.8, grade: 'N7' },
    gives: { ra: 1.6, turned: { rt: 6.2746 } },
    from: 'exact arc r − √(r² − f²/4) by hand; N7 = 1.6 µm, ISO 1302 from memory',
  },
  answer({ feed, noseRadius, ra: raAsked, grade, face, process }) {
    if ((feed === undefined) !== (noseRadius === undefined)) {
      const missing = feed === undefined ? 'feed' : 'noseRadius';
      throw new InputError([
        { path: missing, value: undefined, expected: 'feed and nose radius together', example: '0.4' },
      ]);
    }
    const ra = raAsked ?? (grade === undefined ? undefined : raOfGrade(grade));
    if (feed === undefined && ra === undefined && face === undefined && process === undefined) {
      throw new InputError([
        { path: '', value: {}, expected: 'feed with noseRadius, ra, grade, face or process', example: '{"ra": 0.8}' },
      ]);
    }
    const sources = new Set<SourceKey>();
    const remarks: string[] = [];
    const note = (keys: readonly SourceKey[], remark?: string) => {
      for (const key of keys) sources.add(key);
      if (remark) remarks.push(remark);
    };
    if (feed !== undefined) note(['surface-derived', 'mem-machinery', 'common-practice', 'mem-b46'], turnedRemark);
    if (ra !== undefined)
      note(['iso1302', 'epm', 'mem-din4768'], 'Rz by Ra is a rule of thumb from memory; measure where it matters');
    if (ra !== undefined || feed !== undefined) note(['mem-iso4288', 'studylib-surf']);
    if (ra !== undefined) for (const { rule, source } of acceptanceRules) note([source], `acceptance: ${rule}`);
    const processes =
      process === undefined ? (ra === undefined ? undefined : processesFor(ra)) : roughnessOfProcess(process);
    if (processes)
      note(['firstratemold', 'mem-b46'], 'bands by process differ between sources, above all for honing and polishing');
    const seal = face === undefined ? undefined : sealFinishAsked(face);
    if (seal)
      note(
        seal.rows.map((r) => r.source),
        'makers differ; a lay across the seal leaks where the same roughness round it does not',
      );
    return {
      ...(feed !== undefined && noseRadius !== undefined ? { turned: turned(feed, noseRadius) } : {}),
      ...(ra === undefined ? {} : told(ra)),
      ...stylusFor(feed, ra),
      ...(processes ? { processes } : {}),
      ...(seal ? { seal: { ...seal, rows: [...seal.rows] } } : {}),
      remarks,
      sources: [...sources],
    };
  },
});

const turnedRemark =
  'geometry alone is a lower bound; 1.5 to 2 times it is common practice with a sharp tool, a built-up edge on mild steel is far worse';

function turned(feed: number, noseRadius: number) {
  const inReach = feed <= noseRadius;
  const expected = inReach ? expectedRa(feed, noseRadius) : undefined;
  return {
    rt: arcRt(feed, noseRadius),
    ra: arcRa(feed, noseRadius),
    ...(expected ? { expected: { low: expected.low, high: expected.high }, atFloor: expected.atFloor } : {}),
  };
}

function told(ra: number) {
  const finest = nGrades[0]?.[1] ?? 0;
  return {
    ra,
    ...(ra >= finest ? { nGrade: gradeWithin(ra) } : {}),
    ...(ra >= 0.1 ? { rt: rtFromRa(ra) } : {}),
    rz: rzFromRa(ra),
  };
}

/** Turned marks set the cut-off by the feed; otherwise the roughness does. */
function stylusFor(feed: number | undefined, ra: number | undefined) {
  if (feed !== undefined) return feed > 0.013 && feed <= 1.3 ? { stylus: cutOffForFeed(feed) } : {};
  return ra !== undefined && ra > 0.006 && ra <= 80 ? { stylus: cutOffForRa(ra) } : {};
}

const gritField = z.string().max(8).describe('grade of abrasive paper: P400 (FEPA, Europe) or 320 (CAMI, America)');
const gritOutput = z.strictObject({
  grade: z.string().describe('grade'),
  system: z.enum(['FEPA P', 'CAMI']).describe('grade system'),
  grain: z.number().describe('mean grain [µm]'),
  tolerance: z.number().optional().describe('tolerance of the mean grain, from memory [µm]'),
});
const finishOutput = z.strictObject({
  grades: z.tuple([z.number(), z.number()]).describe('grades as printed, from and to [-]'),
  system: z.string().describe('grade system as printed'),
  material: z.string().describe('material'),
  process: z.string().describe('process'),
  raMin: z.number().describe('low Ra, 0 where only the upper is printed [µm]'),
  raMax: z.number().describe('high Ra [µm]'),
  note: z.string().optional().describe('note'),
  source: z.string().describe('key of the source'),
});

const grit = defineQuestion({
  name: 'grit',
  asks: 'How coarse is this abrasive paper, what finish does it leave, and which papers come before it?',
  input: z.strictObject({
    grade: gritField.optional(),
    from: gritField.optional(),
    ra: z.number().positive().max(100).optional().describe('wanted Ra, to choose a paper [µm]'),
  }),
  output: z.strictObject({
    grit: gritOutput.optional().describe('the grade asked about'),
    sameGrain: gritOutput.optional().describe('grade of the other system with the nearest grain'),
    steps: z.array(gritOutput).optional().describe('papers to go through from the coarse one'),
    finishes: z.array(finishOutput).describe('Ra printed for the grade; sources differ three- to fourfold'),
    remarks: z.array(z.string()).describe('how far to trust it'),
    sources: sourcesField,
  }),
  sources: ['stusshed-grit'],
  example: {
    input: { grade: 'P1500' },
    gives: { grit: { grain: 12.6 }, sameGrain: { grade: '800', system: 'CAMI' } },
    from: 'stusshed-grit: P1500 and CAMI 800 stand on one line, 12.6 µm',
  },
  answer({ grade, from, ra }) {
    if (grade === undefined && ra === undefined) {
      throw new InputError([{ path: 'grade', value: grade, expected: 'a grade or a wanted ra', example: 'P400' }]);
    }
    const wanted = ra === undefined ? undefined : paperFor(ra);
    const found = findGrit(grade ?? `P${wanted?.grades[0]}`);
    const steps = from === undefined ? undefined : gritSteps(findGrit(from, found.system), found);
    const finishes = finishesOfGrit(found);
    return {
      grit: found,
      sameGrain: sameGrain(found),
      ...(steps ? { steps } : {}),
      finishes: finishes.map((f) => ({ ...f, grades: twoOf(f.grades) })),
      remarks: [
        'Ra of one grade number differs three- to fourfold between sources; worn paper cuts finer: measure, do not predict',
        ...(steps ? ['steps at most halve the grain: common practice'] : []),
        'keep abrasive cloth and fingers clear of chuck and work; never wrap cloth round turning work',
      ],
      sources: [
        ...new Set<SourceKey>([
          'stusshed-grit',
          ...(found.tolerance === undefined ? [] : (['mem-iso6344'] as const)),
          ...finishes.map((f) => f.source),
        ]),
      ],
    };
  },
});

const twoOf = ([low, high]: readonly [number, number]): [number, number] => [low, high];

const polish = defineQuestion({
  name: 'polish-allowance',
  asks: 'How much is to be left on the diameter for polishing, lapping or grinding?',
  input: z.strictObject({
    rt: z.number().positive().max(500).optional().describe('peak-to-valley height of the turned surface [µm]'),
    feed: feedField.optional(),
    noseRadius: noseField.optional(),
  }),
  output: z.strictObject({
    rt: z.number().optional().describe('peak-to-valley height reckoned with [µm]'),
    paper: z
      .strictObject({
        least: z.number().describe('below this the turning marks cannot all go [mm]'),
        low: z.number().describe('to leave, low [mm]'),
        high: z.number().describe('to leave, high [mm]'),
      })
      .optional()
      .describe('left on the diameter for abrasive paper'),
    operations: z
      .array(
        z.strictObject({
          operation: z.string().describe('finishing operation'),
          low: z.number().describe('left on the diameter, low [mm]'),
          high: z.number().describe('left on the diameter, high [mm]'),
          note: z.string().optional().describe('note'),
          source: z.string().describe('key of the source'),
        }),
      )
      .describe('allowances of the finishing operations'),
    remarks: z.array(z.string()).describe('how far to trust it'),
    sources: sourcesField,
  }),
  sources: ['surface-derived', 'curioustab-lapping', 'mem-toolengineers'],
  example: {
    input: { feed: 0.1, noseRadius: 0.4 },
    gives: { rt: 3.1373, paper: { least: 0.0062746 } },
    from: 'exact arc by hand: 0.4 − √(0.16 − 0.0025) = 3.1373 µm, twice it on the diameter',
  },
  answer({ rt, feed, noseRadius }) {
    if ((feed === undefined) !== (noseRadius === undefined)) {
      const missing = feed === undefined ? 'feed' : 'noseRadius';
      throw new InputError([
        { path: missing, value: undefined, expected: 'feed and nose radius together', example: '0.4' },
      ]);
    }
    const height = rt ?? (feed === undefined || noseRadius === undefined ? undefined : arcRt(feed, noseRadius));
    return {
      ...(height === undefined ? {} : { rt: height, paper: paperAllowance(height) }),
      operations: [...finishingAllowances],
      remarks: [
        'derived from the depth of the marks; no published trial was found: measure before and after the first paper',
        ...(rt === undefined && height !== undefined
          ? ['reckoned with the marks that geometry leaves; real ones are 1.5 to 2 times as deep (common practice)']
          : []),
      ],
      sources: [...new Set<SourceKey>(['surface-derived', ...finishingAllowances.map((f) => f.source)])],
    };
  },
});

export const finishQuestions = [surfaceFinish, grit, polish] as const;
