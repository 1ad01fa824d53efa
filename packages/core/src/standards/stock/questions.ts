/**
 * Questions about bar stock and preferred numbers.
 */
import { z } from 'zod';
import { InputError } from '../../errors.ts';
import { defineQuestion } from '../../question.ts';
import type { SourceKey } from '../../sources/register.ts';
import { readLength } from '../../units/length.ts';
import { parseNominal } from '../fits/nominal.ts';
import { nominalField, unitsField } from '../fits/question-fields.ts';
import { barTolerance, type Supply, supplies } from './bar-tolerances.ts';
import { nextBars, steelDensity } from './bars.ts';
import { nearestPreferred, type SeriesName, series } from './preferred-numbers.ts';

const supplyNames = Object.keys(supplies) as [Supply, ...Supply[]];
const seriesNames = Object.keys(series) as [SeriesName, ...SeriesName[]];

const barOutput = z.strictObject({
  size: z.string().describe('as it is asked for [mm or in]'),
  diameter: z.number().describe('nominal diameter [mm]'),
  least: z.number().describe('smallest diameter it may come with [mm]'),
  spare: z.number().describe('over the diameter wanted, at its smallest [mm]'),
  tolerance: z.string().describe('class or deviations it is sold to [mm]'),
  massPerMetre: z.number().describe('mass of one metre [kg]'),
  sources: z.array(z.string()).describe('keys of the sources of size and tolerance'),
});

const bar = defineQuestion({
  name: 'bar',
  asks: 'Which listed round bar is the smallest from which this diameter can be made?',
  input: z.strictObject({
    diameter: nominalField,
    allowance: z
      .union([z.string().max(60), z.number()])
      .default(0)
      .describe('to be cleaned up all over, on the diameter [mm or in, as typed]'),
    supply: z
      .enum(supplyNames)
      .default('drawn')
      .describe(`how the bar is made: ${supplyNames.join(', ')}`),
    list: z.enum(['mm', 'in', 'either']).default('mm').describe('metric sizes, inch sizes or both'),
    density: z.number().positive().max(25_000).default(steelDensity).describe('density of the material [kg/m³]'),
    units: unitsField,
  }),
  output: z.strictObject({
    smallest: barOutput.nullable().describe('the smallest bar that will do, null when the lists have none'),
    larger: z.array(barOutput).describe('the next two'),
    says: z.string().describe('what was found, and how firm the list is'),
  }),
  sources: ['SJ-bar', 'bar-lists', 'TC-10278', 'EV-10278'],
  example: {
    input: { diameter: 49, density: 7950 },
    gives: { smallest: { size: '50 mm', diameter: 50, tolerance: 'h10', least: 49.9 } },
    from: 'SJ-bar lists 50 mm; EV-10278 gives h10 over 30 to 50 mm as 0/-0.100',
  },
  answer({ diameter, allowance, supply, list, density, units }) {
    const spare = readLength(String(allowance), units);
    if (!spare || spare.mm < 0) {
      const expected = 'an allowance on the diameter, not below 0';
      throw new InputError([{ path: 'allowance', value: allowance, expected, example: '1 or 1/32 in' }]);
    }
    const wanted = parseNominal(diameter, units, 'diameter').mm + spare.mm;
    const bars = nextBars(wanted, list, supply, density).map((offered) => {
      const tolerance = barTolerance(offered.diameter, supply);
      return {
        size: offered.label,
        diameter: offered.diameter,
        least: round(offered.least),
        spare: offered.spare,
        tolerance: tolerance?.toleranceClass || `${round(tolerance?.upper ?? 0)}/${round(tolerance?.lower ?? 0)} mm`,
        massPerMetre: offered.massPerMetre,
        sources: [...offered.sources, ...(tolerance?.sources ?? [])],
      };
    });
    const says =
      bars.length > 0
        ? 'common practice: stockists differ, EN 10278 itself lists no nominal sizes, so ask before planning on it'
        : `no listed bar that is supplied as ${supplies[supply].name} is large enough`;
    const [smallest, ...larger] = bars;
    return { smallest: smallest ?? null, larger, says };
  },
});

const preferredNumber = defineQuestion({
  name: 'preferred-number',
  asks: 'Which preferred number or preferred size is nearest?',
  input: z.strictObject({
    value: z.number().describe('the number, or a size in mm for the ANSI sizes [-]'),
    series: z
      .enum(seriesNames)
      .default('R20')
      .describe('basic series R, rounded R′ and R″, or preferred sizes of ANSI B4.2, first or second choice'),
  }),
  output: z.strictObject({
    nearest: z.number().describe('nearest value of the series [-]'),
    below: z.number().nullable().describe('value at or below, null when the list begins above [-]'),
    above: z.number().nullable().describe('value at or above, null when the list ends below [-]'),
    off: z.number().describe('how far the given value is from the nearest, as a part of it [-]'),
    sources: z.array(z.string()).describe('keys of the sources of the series'),
    says: z.string().describe('how firm the series is'),
  }),
  sources: ['RN-code', 'RN-wiki', 'ISO-3', 'ANSI-B4.2', 'MH-12'],
  example: {
    input: { value: 31, series: 'R10' },
    gives: { nearest: 31.5, below: 25, above: 31.5 },
    from: 'RN-wiki and RN-code: R10 has 2.5 and 3.15 in every decade',
  },
  answer({ value, series: name }) {
    const { nearest, below, above, off } = nearestPreferred(value, name);
    const { sources }: { sources: readonly SourceKey[] } = series[name];
    const fromMemory = name.startsWith('ANSI')
      ? !(name === 'ANSI first' && nearest <= 6)
      : !sources.includes('RN-code');
    const says = fromMemory ? 'these values are from memory' : 'these values were read in print';
    return { nearest, below: below ?? null, above: above ?? null, off, sources: [...sources], says };
  },
});

function round(mm: number): number {
  return Math.round(mm * 1e6) / 1e6 + 0;
}

export const stockQuestions = [bar, preferredNumber] as const;
