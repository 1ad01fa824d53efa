/** A job's assessment as an answer: every stage in figures, without what only a drawing needs. */
import { z } from 'zod';
import type { Assessment } from '../job/assessment.ts';
import type { Job } from '../job/schema.ts';

const text = (what: string) => z.string().describe(what);
const mm = (what: string) => z.number().describe(`${what} [mm]`);
const times = z
  .strictObject({
    low: z.number().describe('at best [s]'),
    likely: z.number().describe('likely [s]'),
    high: z.number().describe('at worst [s]'),
  })
  .describe('time, setting up included');

const finding = z.strictObject({
  id: text('kind of finding'),
  level: z.enum(['stop', 'caution', 'note']).describe('stop: cut no metal before it is settled'),
  stage: text('stage that says it'),
  at: text('what it belongs to: a feature, dimension, operation, reading or mate'),
  says: text('what was found'),
  because: z
    .array(
      z.strictObject({
        what: text('what the number is'),
        value: z.number().describe('the number [as unit says]'),
        unit: text('unit of value and limit; empty for a pure number'),
        limit: z.number().optional().describe('what it is held against [as unit says]'),
        source: z.string().optional().describe('key of the source of the limit'),
      }),
    )
    .describe('numbers behind it'),
  remedies: z.array(z.string()).describe('what would help'),
});

const part = z.strictObject({
  name: text('name of the part'),
  complete: z.boolean().describe('nothing had to be assumed'),
  length: mm('over all'),
  largestDiameter: mm('largest diameter'),
  mass: z.number().optional().describe('mass, where the material is known [kg]'),
  dimensions: z
    .array(
      z.strictObject({
        id: text('how readings, mates and inspection refer to it'),
        title: text('in words'),
        nominal: mm('nominal'),
        max: mm('largest'),
        min: mm('smallest'),
        basis: text('where the limits come from'),
      }),
    )
    .describe('sizes with their limits'),
});

const route = z.strictObject({
  stock: z
    .strictObject({
      material: text('material'),
      diameter: mm('diameter of the bar'),
      length: mm('length to cut off'),
      from: z.enum(['rack', 'to buy']).describe('on the rack, or to be bought'),
    })
    .optional()
    .describe('bar to start from'),
  setups: z
    .array(
      z.strictObject({
        number: z.number().describe('number [-]'),
        title: text('what is held where'),
        chuck: text('chuck'),
        out: mm('from the jaws to the free end'),
        tailstock: z.boolean().describe('the tailstock supports the free end'),
        grip: z.number().optional().describe('push of all jaws together that its cuts need [N]'),
      }),
    )
    .describe('setups in order'),
  holdings: z
    .array(
      z.strictObject({
        setup: text('setup it is for'),
        how: text('how the work is held'),
        taken: z.boolean().describe('this way is taken'),
        cost: z.number().describe('time and risk beside the cutting, for comparison [s]'),
      }),
    )
    .describe('ways to hold the work that were weighed'),
  operations: z
    .array(
      z.strictObject({
        id: text('id, by which wishes name it'),
        number: z.number().describe('number [-]'),
        setup: text('setup it belongs to'),
        title: text('what is done'),
        cutter: z.string().optional().describe('cutter or drill'),
        speed: z.number().optional().describe('spindle speed [rpm]'),
        feed: z.number().optional().describe('feed [mm/rev]'),
        depth: z.number().optional().describe('depth of cut, on the radius [mm]'),
        passes: z.number().optional().describe('passes [-]'),
        bending: z.number().optional().describe('how far edge and work give way, on the diameter [mm]'),
        sings: z.number().optional().describe('probability that it sings [-]'),
        why: z.array(z.string()).describe('why it stands here and is done like this'),
        time: times,
        cautions: z.array(z.string()).describe('what to beware of'),
      }),
    )
    .describe('operations in order'),
  time: times,
});

export const assessmentOutput = z.strictObject({
  title: text('title of the job'),
  hazard: text('hazard class'),
  missing: z.array(z.string()).describe('what is not entered yet and keeps a stage from answering'),
  cautions: z
    .array(z.strictObject({ about: text('what calls for it'), says: text('the caution') }))
    .describe('cautions of the hazard class and the planned work'),
  findings: z.array(finding).describe('findings, worst first'),
  evidence: z
    .array(
      z.strictObject({
        of: text('dimension measured'),
        readings: z.number().describe('how many readings [-]'),
        value: z.number().optional().describe('best estimate from protected places [mm]'),
        expanded: z.number().optional().describe('its expanded uncertainty, k = 2 [mm]'),
        wear: z.number().optional().describe('wear, on the diameter [mm]'),
      }),
    )
    .describe('what was measured'),
  part: part.optional().describe('the part, once one is entered'),
  fits: z
    .array(
      z.strictObject({
        mate: text('mate'),
        dimension: text('size that meets it'),
        kind: z.enum(['clearance', 'transition', 'interference']).describe('kind of fit'),
        least: mm('least clearance, negative for interference'),
        most: mm('most clearance'),
      }),
    )
    .describe('fits between part and mates'),
  duty: z
    .array(
      z.strictObject({
        of: text('what is checked'),
        what: text('the figure'),
        unit: text('its unit'),
        low: z.number().describe('over the tolerances at least [as unit says]'),
        typical: z.number().describe('in the middle of the tolerances [as unit says]'),
        high: z.number().describe('over the tolerances at most [as unit says]'),
        verdict: z.enum(['good', 'marginal', 'bad', 'not judged']).describe('how it stands against its limit'),
      }),
    )
    .describe('duty checks'),
  route: route.optional().describe('the route, once there are a part and a workshop'),
  stopPoints: z
    .array(
      z.strictObject({
        dimension: text('size to come to'),
        stopAt: mm('size to aim the last cut at'),
        leave: mm('left for abrasive paper, on the diameter'),
        chance: z.number().describe('chance of ending within the limits [-]'),
      }),
    )
    .describe('where to stop cutting'),
  inspection: z
    .array(
      z.strictObject({
        dimension: text('size'),
        decision: z
          .enum(['conforms', 'does not conform', 'cannot be decided', 'not measured'])
          .describe('decision, with the uncertainty of the gauge'),
        value: z.number().optional().describe('what was measured [mm]'),
      }),
    )
    .describe('the new part, measured'),
});

/** What of an assessment is answered. */
export function assessmentAnswer(job: Job, assessment: Assessment): z.output<typeof assessmentOutput> {
  const { evidence, duty, bench, inspection } = assessment;
  return {
    title: job.title,
    hazard: job.hazard,
    missing: [...assessment.missing],
    cautions: assessment.cautions.map(({ about, says }) => ({ about, says })),
    findings: assessment.findings.map((f) => ({
      ...f,
      because: f.because.map((b) => ({ ...b })),
      remedies: [...f.remedies],
    })),
    evidence: evidence.gathered.map(({ of, readings, estimate, wear }) => ({
      of,
      readings: readings.length,
      value: estimate?.value,
      expanded: estimate?.expanded,
      wear,
    })),
    part: partAnswer(assessment.part),
    fits: duty.fits.map(({ mate, dimension, kind, least, most }) => ({ mate, dimension, kind, least, most })),
    duty: duty.checks.flatMap((c) =>
      c.figures.map(({ limit: _limit, worked: _worked, ...figure }) => ({ of: c.title, ...figure })),
    ),
    route: routeAnswer(assessment.route),
    stopPoints: bench.stopPoints.map(({ dimension, stopAt, leave, chance }) => ({ dimension, stopAt, leave, chance })),
    inspection: inspection.rows.map(({ dimension, decision, value }) => ({ dimension, decision, value })),
  };
}

function partAnswer(found: Assessment['part']): z.output<typeof part> | undefined {
  if (!found) return undefined;
  const { name, complete, outline, mass, dimensions } = found;
  return {
    name,
    complete,
    length: outline.length,
    largestDiameter: outline.largestDiameter,
    mass: mass?.mass,
    dimensions: dimensions.map(({ id, title, nominal, max, min, basis }) => ({ id, title, nominal, max, min, basis })),
  };
}

function routeAnswer(planned: Assessment['route']): z.output<typeof route> | undefined {
  if (!planned) return undefined;
  const { stock, setups, holdings, operations, time } = planned;
  return {
    stock: stock && { material: stock.material, diameter: stock.diameter, length: stock.length, from: stock.from },
    setups: setups.map(({ number, title, chuck, out, tailstock, gripNeeded }) => ({
      number,
      title,
      chuck,
      out,
      tailstock,
      grip: gripNeeded,
    })),
    holdings: holdings.map(({ setup, how, taken, cost }) => ({ setup, how, taken, cost })),
    operations: operations.map(({ id, number, setup, title, cutter, cut, why, time: takes, cautions }) => ({
      id,
      number,
      setup,
      title,
      cutter,
      speed: cut?.speed,
      feed: cut?.feed,
      depth: cut?.depth,
      passes: cut?.passes,
      bending: cut?.bending,
      sings: cut?.sings,
      why: [...why],
      time: { ...takes },
      cautions: [...cautions],
    })),
    time: { ...time },
  };
}
