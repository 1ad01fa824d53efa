/** Questions about making a thread: holes, undercut, infeed. */
import { z } from 'zod';
import { DomainError, InputError } from '../../errors.ts';
import { defineQuestion } from '../../question.ts';
import type { SourceKey } from '../../sources/register.ts';
import { lengthField, numberField } from '../../units/fields.ts';
import { type Mm, radians } from '../../units/quantities.ts';
import {
  crestWidthAtDepth,
  depthAlongSlide,
  depthSources,
  describeTip,
  formTip,
  infeedDepth,
  infeedSteps,
  type ToolTip,
} from './cutting-geometry.ts';
import { clearanceHole, holeForEngagement, tappingDrill } from './holes.ts';
import { middle, threadLimits } from './limits.ts';
import { usualPasses } from './passes.ts';
import { preTurnedDiameter } from './pre-turned.ts';
import { bandField, classField, sideField, sourceFields, sourcesOf, threadField } from './question-fields.ts';
import type { Side, Thread } from './record.ts';
import { reliefGroove } from './relief.ts';
import { parseThread } from './thread.ts';

/** To a tenth of a micrometre: what a question shows. */
const shown = (value: number) => Number(value.toFixed(4)) + 0;

/** The answer, or undefined where the tables hold none. */
function held<T>(work: () => T): T | undefined {
  try {
    return work();
  } catch (error) {
    if (error instanceof DomainError) return undefined;
    throw error;
  }
}

export const drillQuestion = defineQuestion({
  name: 'tapping-drill',
  asks: 'Which drill is for tapping this thread, and which hole lets the bolt through?',
  input: z.strictObject({
    designation: threadField,
    engagement: numberField(
      'part of the full depth of thread wanted, in place of the table’s drill; 0.65 to 0.7 in stubborn material',
      '-',
      0.5,
      1,
    ).optional(),
  }),
  output: z.strictObject({
    designation: z.string().describe('the thread'),
    diameter: z.number().describe('diameter of the hole to tap [mm]'),
    name: z.string().optional().describe('what the drill is called, if not by millimetres'),
    engagement: z.number().describe('part of the full depth of thread that it leaves [-]'),
    minor: bandField('limits of the nut’s minor diameter').optional(),
    withinLimits: z.boolean().optional().describe('whether the hole lies in those limits'),
    clearance: z
      .strictObject({
        fine: z.number().describe('fine [mm]'),
        medium: z.number().describe('medium [mm]'),
        coarse: z.number().describe('coarse [mm]'),
      })
      .optional()
      .describe('holes for the bolt to pass, ISO 273'),
    ...sourceFields,
  }),
  sources: ['MEDH-p299', 'ISO2306', 'ASME-B1.1', 'OLDENGINE-W', 'threads-ISO273', 'common-practice'],
  example: { input: { designation: 'M8' }, gives: { diameter: 6.8 }, from: 'MEDH-p299' },
  answer({ designation: text, engagement }) {
    const t = parseThread(text);
    const table = tappingDrill(t);
    const diameter = engagement === undefined ? table.diameter : holeForEngagement(t, engagement);
    const within = table.minor && diameter >= table.minor.min - 0.0005 && diameter <= table.minor.max + 0.0005;
    const clearance = held(() => ({
      fine: clearanceHole(t, 'fine'),
      medium: clearanceHole(t, 'medium'),
      coarse: clearanceHole(t, 'coarse'),
    }));
    const keys: SourceKey[] = [
      ...(engagement === undefined ? table.sources : (['common-practice'] as const)),
      ...(clearance ? (['threads-ISO273'] as const) : []),
    ];
    return {
      designation: t.designation,
      diameter: shown(diameter),
      ...(table.name === undefined || engagement !== undefined ? {} : { name: table.name }),
      engagement: shown(engagement ?? table.engagement),
      ...(table.minor === undefined ? {} : { minor: { max: shown(table.minor.max), min: shown(table.minor.min) } }),
      ...(within === undefined ? {} : { withinLimits: within }),
      ...(clearance === undefined ? {} : { clearance }),
      ...sourcesOf(keys),
    };
  },
});

export const reliefQuestion = defineQuestion({
  name: 'thread-relief',
  asks: 'What undercut or run-out does this thread want?',
  input: z.strictObject({
    designation: threadField,
    side: sideField,
    length: z.enum(['normal', 'short']).default('normal').describe('normal, or short where room is scarce'),
  }),
  output: z.strictObject({
    designation: z.string().describe('the thread'),
    form: z.enum(['A', 'B', 'C', 'D']).describe('form of DIN 76-1'),
    diameter: z.number().describe('diameter of the groove [mm]'),
    tolerance: z.string().describe('tolerance class of that diameter'),
    leastLength: z.number().describe('least length at full diameter [mm]'),
    greatestLength: z.number().describe('greatest length over all [mm]'),
    radius: z.number().describe('radius in the corners, about [mm]'),
    flankDegrees: z.number().describe('angle of the run-out flank [°]'),
    runOut: z.number().describe('greatest incomplete thread where no groove is cut [mm]'),
    shoulderDistance: z
      .number()
      .optional()
      .describe('greatest distance from the shoulder to the last full thread where no groove is cut [mm]'),
    remark: z.string().optional().describe('what to be wary of'),
    ...sourceFields,
  }),
  sources: ['DIN76-1', 'GBT3-CADHOME'],
  example: {
    input: { designation: 'M10', side: 'internal' },
    gives: { diameter: 10.5, leastLength: 6, runOut: 6 },
    from: 'GBT3-CADHOME, pitch 1.5, normal',
  },
  answer({ designation: text, side, length }) {
    const t = parseThread(text);
    const { sources, ...groove } = reliefGroove(t, side, length);
    return {
      designation: t.designation,
      ...groove,
      runOut: shown(groove.runOut),
      ...(groove.shoulderDistance === undefined ? {} : { shoulderDistance: shown(groove.shoulderDistance) }),
      ...sourcesOf(sources),
    };
  },
});

export const infeedQuestion = defineQuestion({
  name: 'thread-infeed',
  asks: 'How deep is this thread cut, from which diameter, and in which passes?',
  input: z.strictObject({
    designation: threadField,
    side: sideField.default('external'),
    toleranceClass: classField,
    aim: z
      .enum(['middle', 'basic'])
      .default('middle')
      .describe('middle: crest and pitch diameter in the middle of their limits; basic: the basic sizes'),
    crestDiameter: lengthField('mm', 'diameter that was turned or bored, if another').optional(),
    tip: z
      .enum(['form', 'sharp', 'flat', 'radius'])
      .default('form')
      .describe('end of the tool; form: as the form has it'),
    tipSize: lengthField('mm', 'width of the flat or radius of the nose').optional(),
    passes: numberField('number of passes', '-', 1, 60).optional(),
    rule: z
      .enum(['constant area', 'gentle first'])
      .default('constant area')
      .describe('how the depth is shared among the passes'),
    slideAngle: numberField('angle of the top slide from the cross-slide’s travel', '°', 0, 89).default(0),
  }),
  output: z.strictObject({
    designation: z.string().describe('the thread'),
    side: sideField,
    tip: z.string().describe('end of the tool reckoned with'),
    crestDiameter: z.number().describe('diameter before threading [mm]'),
    crestLimits: bandField('limits of that diameter').optional(),
    why: z.string().describe('why that diameter'),
    pitchDiameter: z.number().describe('pitch diameter aimed at [mm]'),
    depth: z.number().describe('radial depth from touching the crest [mm]'),
    alongSlide: z.number().describe('the same along the top slide [mm]'),
    rootDiameter: z.number().describe('diameter at the bottom of the groove [mm]'),
    crestLand: z.number().describe('width of the land on the finished crest [mm]'),
    passes: z
      .array(
        z.strictObject({
          pass: z.number().describe('number of the pass [-]'),
          infeed: z.number().describe('radial infeed of this pass [mm]'),
          cumulative: z.number().describe('radial depth after it [mm]'),
          alongSlide: z.number().describe('the same along the top slide [mm]'),
          crestLand: z.number().describe('width of the land left on the crest [mm]'),
        }),
      )
      .describe('passes'),
    usualPasses: z
      .strictObject({ least: z.number().describe('least [-]'), most: z.number().describe('most [-]') })
      .optional()
      .describe('passes that a maker advises for rigid lathes; a light one takes more'),
    ...sourceFields,
  }),
  sources: ['geometry', 'ISO68-1', 'common-practice', 'SANDVIK-OM114', 'TUNGALOY-p1636', 'SHOP-blank'],
  example: {
    input: { designation: 'M16', aim: 'basic', slideAngle: 29.5 },
    gives: { alongSlide: 1.4096 },
    from: 'ISO 68-1: depth 0.6134P, which along a slide at 29.5° is 0.7048P',
  },
  answer(input) {
    const t = parseThread(input.designation);
    const { side, aim, rule } = input;
    const blank = aim === 'middle' ? preTurnedDiameter(t, side, input.toleranceClass) : undefined;
    const crestDiameter =
      input.crestDiameter ?? blank?.diameter ?? (side === 'external' ? t.majorDiameter : t.minorDiameter);
    const limits = aim === 'middle' ? held(() => threadLimits(t, side, input.toleranceClass)) : undefined;
    const tip = toolTip(t, side, input.tip, input.tipSize);
    const feed = infeedDepth(t, side, {
      tip,
      crestDiameter,
      pitchDiameter: limits ? middle(limits.pitch) : t.pitchDiameter,
    });
    const usual = held(() => usualPasses(t.pitch));
    const angle = radians(input.slideAngle);
    const steps = infeedSteps(feed.depth, input.passes ?? usual?.most ?? Math.max(4, Math.ceil(6 * feed.depth)), rule);
    const keys: SourceKey[] = [
      ...depthSources(t),
      ...(blank?.sources ?? []),
      rule === 'gentle first' ? 'SANDVIK-OM114' : 'common-practice',
      ...(usual ? (['TUNGALOY-p1636'] as const) : []),
    ];
    return {
      designation: t.designation,
      side,
      tip: describeTip(tip),
      crestDiameter: shown(crestDiameter),
      ...(blank ? { crestLimits: { max: shown(blank.limits.max), min: shown(blank.limits.min) } } : {}),
      why: input.crestDiameter !== undefined ? 'as given' : (blank?.why ?? 'the basic crest'),
      pitchDiameter: shown(feed.pitchDiameter),
      depth: shown(feed.depth),
      alongSlide: shown(depthAlongSlide(feed.depth, angle)),
      rootDiameter: shown(feed.rootDiameter),
      crestLand: shown(crestWidthAtDepth(t, feed.depth, tip)),
      passes: steps.map(({ pass, infeed, cumulative }) => ({
        pass,
        infeed: shown(infeed),
        cumulative: shown(cumulative),
        alongSlide: shown(depthAlongSlide(cumulative, angle)),
        crestLand: shown(crestWidthAtDepth(t, cumulative, tip)),
      })),
      ...(usual ? { usualPasses: { ...usual } } : {}),
      ...sourcesOf(keys),
    };
  },
});

function toolTip(t: Thread, side: Side, kind: 'form' | 'sharp' | 'flat' | 'radius', size: Mm | undefined): ToolTip {
  if (kind === 'form') return formTip(t, side);
  if (kind === 'sharp') return { kind };
  if (size === undefined) {
    throw new InputError([
      {
        path: 'tipSize',
        value: size,
        expected: `the ${kind === 'flat' ? 'width of the flat' : 'radius of the nose'}`,
        example: '0.15',
      },
    ]);
  }
  return kind === 'flat' ? { kind, width: size } : { kind, radius: size };
}
