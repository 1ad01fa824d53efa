/**
 * Limits on the gap beside the groove: it must be free, and too narrow for the pressure to push the ring into.
 */
import { knownElastomer } from '../standards/seals/elastomer.ts';
import { extrusionLimit } from '../standards/seals/extrusion-gap.ts';
import type { GlandFigures } from './gland-figures.ts';
import type { GlandInput } from './gland-input.ts';
import type { Rule } from './gland-rule.ts';

export function gapRules(
  { hardness, pressure, ring, elastomer, backUp, motion }: GlandInput,
  figures: GlandFigures,
): Rule[] {
  const { diametral, radial, radialOneSided } = figures.gap;
  const rules: Rule[] = [
    {
      id: 'gap-free',
      what: 'least clearance between land and mating part',
      value: diametral.min,
      unit: 'mm',
      least: 0,
      source: 'geometry',
      standing: 'computed',
      level: motion === 'moving' ? 'stop' : 'caution',
      under: 'the parts can bind',
      over: '',
      remedies: ['reduce the land or open the mating part'],
    },
  ];
  if (backUp || pressure === 0 || gapUnpublished(hardness, pressure)) return rules;
  const silicone = elastomer !== undefined && ['VMQ', 'FVMQ'].includes(knownElastomer(elastomer) ?? '');
  const shared = {
    unit: 'mm',
    under: '',
    over: 'the pressure can push the ring into the gap and nibble it away',
    remedies: ['reduce the clearance', 'fit a back-up ring on the side away from the pressure', 'take a harder ring'],
  };
  for (const table of extrusionLimit(hardness, pressure, ring.section, silicone).tables) {
    if (table.source === 'sealanddesign') {
      rules.push({
        ...shared,
        id: 'gap-diametral',
        what: 'greatest diametral clearance',
        value: diametral.max,
        most: table.diametral,
        source: table.source,
        standing: 'read',
        level: 'stop',
      });
    } else {
      const remembered = { ...shared, most: table.radial, source: table.source, standing: 'from memory' } as const;
      rules.push(
        {
          ...remembered,
          id: 'gap-radial',
          what: 'greatest gap all round, parts centred',
          value: radial.max,
          level: 'stop',
        },
        {
          ...remembered,
          id: 'gap-one-sided',
          what: 'greatest gap on one side, parts touching on the other',
          value: radialOneSided.max,
          level: 'caution',
          remedies: ['guide the part so that it cannot lie against its mate', ...shared.remedies],
        },
      );
    }
  }
  return rules;
}

/** Why no gap is published for this ring and pressure; undefined when one is. */
export function gapUnpublished(hardness: number, pressure: number): string | undefined {
  if (hardness < 70) return `no gap is published for rings softer than 70 Shore A, and this one has ${hardness}`;
  const most = hardness >= 90 ? 35 : 20.68;
  return pressure > most ? `no gap is published without a back-up ring above ${most} MPa at this hardness` : undefined;
}
