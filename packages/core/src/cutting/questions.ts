/**
 * Questions about what a cut does.
 */
import { z } from 'zod';
import { findMaterial } from '../materials/find.ts';
import { defineQuestion } from '../question.ts';
import { numberField } from '../units/fields.ts';
import { degrees, radians } from '../units/quantities.ts';
import { chipGeometry } from './chip-geometry.ts';
import { drillingQuestion } from './drilling-questions.ts';
import { powerQuestion, speedQuestion } from './drive-questions.ts';
import { edgeRadius } from './edge.ts';
import {
  cutFields,
  edgeField,
  hardens,
  remarksField,
  significant,
  sourcesField,
  wearField,
  workFields,
  workOf,
} from './question-fields.ts';
import { minimumChip, rubbing, rubbingFinding } from './rubbing.ts';
import { threadingQuestion } from './threading-question.ts';
import { toolLifeQuestion } from './tool-life-question.ts';
import { thinnestTabulated, turningForce, wearFactors } from './turning-force.ts';

const forceSources = ['WKZ', 'KOE', 'merchant-1945', 'colwell-1954', 'budak-1996', 'SVF', 'LIT'] as const;

const force = defineQuestion({
  name: 'cutting-force',
  asks: 'How hard does this turning cut push along the cut, along the feed, and away from the axis?',
  input: z.strictObject({
    ...workFields,
    ...cutFields,
    rake: numberField('rake of the top face along the cut', 'degrees', -15, 25).default(0),
    edge: edgeField,
    wear: wearField,
    where: z.enum(['outside', 'bore']).default('outside').describe('turning outside or boring'),
  }),
  output: z.strictObject({
    cutting: z.number().describe('force along the cut, which makes the torque [N]'),
    feed: z.number().describe('force along the feed [N]'),
    radial: z.number().describe('force away from the axis, which bends the work [N]'),
    low: z.number().describe('share of these forces at which the lowest publisher stands [-]'),
    high: z.number().describe('share of these forces at which the highest publisher stands [-]'),
    chipThickness: z.number().describe('mean thickness of the chip [mm]'),
    chipWidth: z.number().describe('length of edge engaged [mm]'),
    effectiveApproach: z.number().describe('angle of the engaged edge against the feed, nose included [degrees]'),
    rubbing: z.enum(['cuts', 'may rub', 'rubs']).describe('whether the chip is thick enough for the edge'),
    remarks: remarksField,
    sources: sourcesField,
  }),
  sources: forceSources,
  example: {
    input: {
      specificForce: 2000,
      exponent: 0.25,
      depth: 2,
      feed: 0.2,
      noseRadius: 0,
      approachAngle: 30,
      edge: 'sharp',
    },
    gives: { chipThickness: 0.1, chipWidth: 4, effectiveApproach: 30 },
    from: 'aptitude-test example: feed 0.2 mm, side cutting edge angle 60°, uncut chip 0.1 mm',
  },
  answer(asked) {
    const work = workOf(asked);
    const made = turningForce({
      ...asked,
      approachAngle: radians(asked.approachAngle),
      rake: radians(asked.rake),
      cutData: work.cutData,
      wearFactor: wearFactors[asked.wear],
    });
    const spread = work.spread(made.chipThickness);
    const remarks = [
      ...work.remarks,
      'radial and feed force by ratios from memory: trust them to about a factor of one and a half',
    ];
    if (made.chipThickness < thinnestTabulated) {
      remarks.push(
        `chip thinner than ${thinnestTabulated} mm, the thinnest any printed table covers: carried on by the same law`,
      );
    }
    return {
      cutting: significant(made.cutting, 4),
      feed: significant(made.feed, 4),
      radial: significant(made.radial, 4),
      low: significant(spread.low, 3),
      high: significant(spread.high, 3),
      chipThickness: significant(made.chipThickness, 4),
      chipWidth: significant(made.chipWidth, 4),
      effectiveApproach: significant(degrees(made.effectiveApproach), 4),
      rubbing: rubbing(made.chipThickness, asked.edge),
      remarks,
      sources: [...new Set([...forceSources, ...work.sources])],
    };
  },
});

const range = (what: string) =>
  z
    .strictObject({
      low: z.number().describe('least [mm]'),
      usual: z.number().describe('usual [mm]'),
      high: z.number().describe('greatest [mm]'),
    })
    .describe(what);

const minimum = defineQuestion({
  name: 'minimum-chip',
  asks: 'Is the chip of this cut thick enough for the edge, or does it rub?',
  input: z.strictObject({
    ...cutFields,
    edge: edgeField,
    material: workFields.material,
    workHardens: z
      .boolean()
      .optional()
      .describe('whether the work hardens where it is rubbed, when no material is named'),
  }),
  output: z.strictObject({
    chipThickness: z.number().describe('mean thickness of the chip [mm]'),
    edgeRadius: range('rounding of the edge [mm]'),
    minimumChip: range('thinnest chip the edge can cut [mm]'),
    rubbing: z.enum(['cuts', 'may rub', 'rubs']).describe('the verdict'),
    level: z.enum(['stop', 'caution', 'note', 'none']).describe('how much it matters in this material'),
    says: z.string().describe('the verdict in words'),
    remedies: z.array(z.string()).describe('what helps'),
  }),
  sources: ['LIT', 'SVH', 'common-practice'],
  example: {
    input: { depth: 0.1, feed: 0.05, noseRadius: 0.4, approachAngle: 93, edge: 'honed', workHardens: true },
    gives: { edgeRadius: { low: 0.015, high: 0.03 } },
    from: 'general literature: ground and lightly honed finishing inserts have an edge radius of 15 to 30 µm (from memory)',
  },
  answer(asked) {
    const chip = chipGeometry({ ...asked, approachAngle: radians(asked.approachAngle) });
    const hardening =
      asked.material === undefined ? (asked.workHardens ?? false) : hardens(findMaterial(asked.material));
    const finding = rubbingFinding('cut', chip.chipThickness, asked.edge, hardening);
    return {
      chipThickness: significant(chip.chipThickness, 4),
      edgeRadius: edgeRadius(asked.edge),
      minimumChip: minimumChip(asked.edge),
      rubbing: rubbing(chip.chipThickness, asked.edge),
      level: finding?.level ?? ('none' as const),
      says: finding?.says ?? 'The chip is thick enough for this edge.',
      remedies: [...(finding?.remedies ?? [])],
    };
  },
});

export const cuttingQuestions = [
  force,
  speedQuestion,
  powerQuestion,
  drillingQuestion,
  threadingQuestion,
  minimum,
  toolLifeQuestion,
];
