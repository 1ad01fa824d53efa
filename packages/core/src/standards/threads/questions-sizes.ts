/** Questions about the sizes of a thread: basic sizes and limits. */
import { z } from 'zod';
import { defineQuestion } from '../../question.ts';
import { degrees } from '../../units/quantities.ts';
import { threadLimits } from './limits.ts';
import { leadAngle } from './over-wires.ts';
import { bandField, bandText, classField, sideField, sourceFields, sourcesOf, threadField } from './question-fields.ts';
import { tensileStressArea } from './stress-area.ts';
import { parseThread } from './thread.ts';

/** To a tenth of a micrometre: what a question shows. */
const shown = (value: number) => Number(value.toFixed(4)) + 0;
const shownBand = ({ max, min }: { max: number; min: number }) => ({ max: shown(max), min: shown(min) });

export const threadQuestion = defineQuestion({
  name: 'thread',
  asks: 'What are the sizes of this thread?',
  input: z.strictObject({ designation: threadField }),
  output: z.strictObject({
    designation: z.string().describe('the designation as this project writes it'),
    family: z.string().describe('family of threads'),
    series: z.string().describe('series within the family'),
    form: z.string().describe('form of the profile'),
    status: z.enum(['standard', 'special']).describe('standard: listed; special: worked out from the form'),
    hand: z.enum(['right', 'left']).describe('hand of the helix'),
    starts: z.number().describe('number of starts [-]'),
    majorDiameter: z.number().describe('major diameter [mm]'),
    pitch: z.number().describe('pitch [mm]'),
    threadsPerInch: z.number().optional().describe('threads an inch, for inch threads [1/in]'),
    pitchDiameter: z.number().describe('basic pitch (effective) diameter [mm]'),
    minorDiameter: z.number().describe('basic minor diameter, that of the nut [mm]'),
    rootDiameter: z.number().describe('root diameter of the bolt cut to nominal depth [mm]'),
    flankAngle: z.number().describe('angle between the flanks [°]'),
    depth: z.number().describe('radial depth of the bolt’s groove [mm]'),
    taper: z.number().optional().describe('taper on diameter of a taper thread [-]'),
    leadAngle: z.number().describe('angle of lead at the pitch diameter [°]'),
    stressArea: z.number().describe('section that carries tension [mm²]'),
    remark: z.string().optional().describe('what to know of this thread, or what was taken for granted in reading it'),
    ...sourceFields,
  }),
  sources: ['ISO261', 'ASME-B1.1', 'BS84', 'MH31-p2115', 'ISO228-1'],
  example: {
    input: { designation: 'M10x1.25' },
    gives: { pitchDiameter: 9.188, minorDiameter: 8.647, status: 'standard' },
    from: 'EE-B1.13M-int, least pitch and minor diameter of M10x1.25-6H, which are the basic ones',
  },
  answer({ designation: text }) {
    const t = parseThread(text);
    return {
      designation: t.designation,
      family: t.family,
      series: t.series,
      form: t.form,
      status: t.status,
      hand: t.hand,
      starts: t.starts,
      majorDiameter: shown(t.majorDiameter),
      pitch: shown(t.pitch),
      ...(t.threadsPerInch === undefined ? {} : { threadsPerInch: t.threadsPerInch }),
      pitchDiameter: shown(t.pitchDiameter),
      minorDiameter: shown(t.minorDiameter),
      rootDiameter: shown(t.rootDiameterExternal),
      flankAngle: shown(degrees(t.flankAngle)),
      depth: shown(t.depthExternal),
      ...(t.taper === undefined ? {} : { taper: t.taper }),
      leadAngle: shown(degrees(leadAngle(t))),
      stressArea: shown(tensileStressArea(t)),
      ...(t.remark === undefined ? {} : { remark: t.remark }),
      ...sourcesOf(t.sources),
    };
  },
});

export const limitsQuestion = defineQuestion({
  name: 'thread-limits',
  asks: 'Between which limits do the diameters of this thread lie?',
  input: z.strictObject({ designation: threadField, side: sideField, toleranceClass: classField }),
  output: z.strictObject({
    designation: z.string().describe('the thread'),
    side: sideField,
    toleranceClass: z.string().describe('class that the limits are of; empty where there is only one'),
    major: bandField('major diameter'),
    pitch: bandField('pitch (effective) diameter'),
    minor: bandField('minor diameter'),
    allowance: z.number().describe('distance of the tolerance zone from the basic profile [mm]'),
    notSet: z
      .array(z.string())
      .describe('ends that the standard does not set; there the figure is where the form itself ends'),
    text: z.string().describe('the limits in words [mm and in]'),
    remark: z.string().optional().describe('what to know of these limits'),
    ...sourceFields,
  }),
  sources: ['ISO965-1-T1', 'MH31-p2025', 'MH27-p1794', 'ASME-B1.1', 'BS84', 'MH31-p2115', 'ISO228-1', 'ISO7-1'],
  example: {
    input: { designation: 'M10', side: 'external', toleranceClass: '6g' },
    gives: { major: { max: 9.968, min: 9.732 }, pitch: { max: 8.994, min: 8.862 } },
    from: 'ASME-B1.13M-chart, M10x1.5-6g',
  },
  answer({ designation: text, side, toleranceClass }) {
    const t = parseThread(text);
    const limits = threadLimits(t, side, toleranceClass);
    const inch = t.threadsPerInch !== undefined;
    const words = (['major', 'pitch', 'minor'] as const).map((what) => `${what} ${bandText(limits[what], inch)}`);
    return {
      designation: t.designation,
      side,
      toleranceClass: limits.toleranceClass,
      major: shownBand(limits.major),
      pitch: shownBand(limits.pitch),
      minor: shownBand(limits.minor),
      allowance: shown(limits.allowance),
      notSet: [...limits.notSet],
      text: words.join('; '),
      ...(limits.remark === undefined ? {} : { remark: limits.remark }),
      ...sourcesOf([...limits.sources, ...t.sources]),
    };
  },
});
