/**
 * Limits that hang on the section and the rubber: the published glands for that section, and what the rubber stands.
 */
import { elastomerTemperatures, knownElastomer } from '../standards/seals/elastomer.ts';
import { squeeze } from '../standards/seals/groove-formulas.ts';
import { glandRowsFor, recommendGland } from '../standards/seals/recommend-gland.ts';
import type { GlandFigures } from './gland-figures.ts';
import type { GlandInput } from './gland-input.ts';
import { looseSqueeze, type Rule } from './gland-rule.ts';

export function tableRules(input: GlandInput, figures: GlandFigures): Rule[] {
  const { ring, kind, motion, grooveWidth, grooveRadius, eccentricity } = input;
  const rows = glandRowsFor(ring.section, kind, motion);
  if (rows.length === 0) return [];
  const { source, standing, radius, runOutMax } = recommendGland(ring, kind, motion).chosen;
  const shared = {
    source,
    standing,
    level: 'note',
    remedies: ['compare with the published glands for this section'],
  } as const;
  const width = { ...shared, unit: 'mm', least: Math.min(...rows.map((r) => r.width.min)) } as const;
  const rules: Rule[] = [
    {
      ...shared,
      id: 'squeeze-table-least',
      what: 'least squeeze over the tolerances',
      value: figures.squeeze.min,
      unit: '%',
      least: Math.min(...rows.map((row) => squeeze(ring.section - ring.sectionTolerance, row.depth.max))),
      under: 'lighter than any published gland for this section',
      over: '',
    },
    {
      ...shared,
      id: 'squeeze-table-most',
      what: 'greatest squeeze over the tolerances',
      value: figures.squeeze.max,
      unit: '%',
      most: Math.max(...rows.map((row) => squeeze(ring.section + ring.sectionTolerance, row.depth.min))),
      under: '',
      over: 'harder than any published gland for this section',
    },
    {
      ...width,
      id: 'width-table',
      what: 'least groove width',
      value: grooveWidth.min,
      under: 'narrower than any published gland for this section',
      over: '',
    },
  ];
  if (grooveRadius !== undefined && radius) {
    rules.push({
      ...shared,
      id: 'groove-radius',
      what: 'radius in the groove bottom',
      value: grooveRadius,
      unit: 'mm',
      least: radius.min,
      most: radius.max,
      under: 'a sharp corner starts cracks',
      over: 'a large corner radius takes room from the ring',
      remedies: ['hone the corner of the grooving tool to suit'],
    });
  }
  if (eccentricity !== undefined && runOutMax !== undefined) {
    rules.push({
      ...shared,
      id: 'run-out',
      what: 'run-out of the groove to the land',
      value: 2 * eccentricity,
      unit: 'mm',
      most: runOutMax,
      level: 'caution',
      under: '',
      over: looseSqueeze,
      remedies: ['turn groove and land in one setting'],
    });
  }
  return rules;
}

export function temperatureRules({ elastomer, temperature }: GlandInput): Rule[] {
  const known = elastomer === undefined ? undefined : knownElastomer(elastomer);
  if (known === undefined || !temperature) return [];
  const { coldest, hottest, sources } = elastomerTemperatures(known);
  const shared = {
    unit: '°C',
    source: sources[0] ?? 'bodeseal',
    standing: 'read',
    level: 'caution',
    under: `${known} grows stiff and stops following its seat`,
    over: `${known} hardens and takes a set`,
    remedies: ['take another elastomer or a special grade'],
  } as const;
  const rules: Rule[] = [];
  if (coldest !== undefined)
    rules.push({ ...shared, id: 'coldest', what: 'coldest', value: temperature.min, least: coldest });
  if (hottest !== undefined)
    rules.push({ ...shared, id: 'hottest', what: 'hottest', value: temperature.max, most: hottest });
  return rules;
}
