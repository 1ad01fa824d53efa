/**
 * The published limits a gland is held against, each with its source, what it means to be outside, and what helps.
 */
import type { Level } from '../finding.ts';
import type { SourceKey } from '../sources/register.ts';
import { elastomerTemperatures, knownElastomer, knownMedium } from '../standards/seals/elastomer.ts';
import { extrusionLimit } from '../standards/seals/extrusion-gap.ts';
import { squeeze } from '../standards/seals/groove-formulas.ts';
import { glandRowsFor, recommendGland } from '../standards/seals/recommend-gland.ts';
import type { Standing } from '../standards/small-parts/standing.ts';
import type { GlandFigures } from './gland-figures.ts';
import type { GlandInput } from './gland-input.ts';

export interface HeldLimit {
  /** `squeeze-nominal`, `gap-diametral`… */
  readonly id: string;
  readonly what: string;
  readonly value: number;
  readonly unit: string;
  readonly least?: number;
  readonly most?: number;
  readonly source: SourceKey;
  readonly standing: Standing;
  readonly holds: boolean;
  /** Level of the finding when it does not hold. */
  readonly level: Level;
  /** What being under or over it means. */
  readonly under: string;
  readonly over: string;
  readonly remedies: readonly string[];
}

type Rule = Omit<HeldLimit, 'holds'>;

/**
 * @param input  what was asked
 * @param room  figures at 20 °C: published percentages are for rings as bought
 * @param all  figures over all temperatures: touch, room and gap must do hot and cold
 */
export function heldLimits(input: GlandInput, room: GlandFigures, all: GlandFigures): HeldLimit[] {
  const rules = [
    ...squeezeRules(input, room, all),
    ...stretchRules(input, room),
    ...fillRules(input, room, all),
    ...gapRules(input, all),
    ...tableRules(input, room),
    ...temperatureRules(input),
  ];
  return rules.map((rule) => ({
    ...rule,
    holds:
      rule.value >= (rule.least ?? Number.NEGATIVE_INFINITY) && rule.value <= (rule.most ?? Number.POSITIVE_INFINITY),
  }));
}

const looseSqueeze = 'the ring presses too lightly to seal when cold, worn or eccentric';
const hardSqueeze = 'the ring is hard to fit, drags, and takes a set';
const deeper = 'turn the groove deeper';
const shallower = 'turn the groove less deep, or take a ring of larger section';

function squeezeRules(
  { motion, ring, elastomer, medium }: GlandInput,
  figures: GlandFigures,
  { slackSqueeze }: GlandFigures,
): Rule[] {
  const shared = { unit: '%', under: looseSqueeze, over: hardSqueeze, remedies: [shallower, deeper] } as const;
  const nominal = { ...shared, what: 'nominal squeeze', value: figures.squeeze.nominal };
  const most = {
    ...shared,
    id: 'squeeze-most',
    what: 'greatest squeeze',
    value: figures.squeeze.max,
    remedies: [deeper],
  };
  const thin: Rule = {
    id: 'squeeze-least',
    what: 'least squeeze, on the slack side',
    value: slackSqueeze.min,
    unit: 'mm',
    least: 0.1,
    source: 'mem-parker-squeeze',
    standing: 'from memory',
    level: slackSqueeze.min <= 0 ? 'stop' : 'caution',
    under: slackSqueeze.min <= 0 ? 'the ring can lose touch on one side: it leaks' : looseSqueeze,
    over: '',
    remedies: [shallower, 'reduce the clearance between the parts', 'hold the groove and bore to closer limits'],
  };
  if (motion === 'static') {
    const rules: Rule[] = [
      {
        ...nominal,
        id: 'squeeze-nominal',
        least: 18,
        most: 25,
        source: 'seals-marco',
        standing: 'read',
        level: 'caution',
      },
      { ...most, most: 30, source: 'kutz-v3-290', standing: 'read', level: 'caution' },
      thin,
    ];
    if (elastomer !== undefined && knownElastomer(elastomer) === 'FFKM') {
      rules.push({
        ...nominal,
        id: 'squeeze-ffkm',
        most: 15,
        source: 'scribd-ring09',
        standing: 'read',
        level: 'caution',
      });
    }
    return rules;
  }
  const small = ring.section < 3.5;
  const air = medium !== undefined && knownMedium(medium) === 'compressed air';
  return [
    air
      ? {
          ...nominal,
          id: 'squeeze-nominal',
          ...{ least: 6, most: 15, source: 'seals-mem-common', standing: 'from memory', level: 'note' },
        }
      : {
          ...nominal,
          id: 'squeeze-nominal',
          least: 10,
          most: 20,
          source: 'seals-marco',
          standing: 'read',
          level: 'caution',
        },
    { ...nominal, id: 'squeeze-band', least: 12, most: 18, source: 'allorings', standing: 'read', level: 'note' },
    {
      ...most,
      most: small ? 25 : 16,
      source: 'kutz-v3-290',
      standing: 'read',
      level: figures.squeeze.max > 25 ? 'caution' : 'note',
    },
    thin,
    {
      id: 'section-moving',
      what: 'cross-section of a ring that slides',
      value: ring.section,
      unit: 'mm',
      least: 3.53,
      source: 'usseal',
      standing: 'read',
      level: 'note',
      under: 'this maker’s clearances for moving seals begin there; a thin ring rolls and spirals sooner',
      over: '',
      remedies: ['take a thicker ring where the part has room for it'],
    },
  ];
}

function stretchRules({ kind, matingDiameter, grooveDiameter }: GlandInput, figures: GlandFigures): Rule[] {
  const shared = {
    what: 'nominal stretch',
    value: figures.stretch.nominal,
    unit: '%',
    under: 'the ring lies loose on its seat and may twist or be nipped when fitted',
    over: 'stretch thins the ring and shortens its life',
    remedies: ['take the next ring size'],
    standing: 'read',
  } as const;
  const rules: Rule[] = [{ ...shared, id: 'stretch', most: 5, source: 'parker-stretch', level: 'caution' }];
  if (kind === 'piston') {
    rules.push({ ...shared, id: 'stretch-loose', least: 0, source: 'seals-marco', level: 'caution' });
    if (grooveDiameter.max > 12.7)
      rules.push({ ...shared, id: 'stretch-band', least: 1, most: 3, source: 'allorings', level: 'note' });
  } else if (matingDiameter.max > 0) {
    rules.push({ ...shared, id: 'stretch-band', most: 0, source: 'allorings', level: 'note' });
  }
  if (figures.assemblyStretch) {
    const { max } = figures.assemblyStretch;
    rules.push({
      ...shared,
      id: 'stretch-assembly',
      what: 'greatest stretch while it is put over the land',
      value: max,
      most: 50,
      source: 'allorings',
      level: max > 100 ? 'stop' : 'caution',
      over: 'the ring may tear or not recover when it is put on',
      remedies: ['split the part beside the groove', 'warm the ring and let it recover before the part goes in'],
    });
  }
  if (figures.outsideInterference) {
    rules.push({
      ...shared,
      id: 'outside-interference',
      what: 'ring over the groove diameter, outside',
      value: figures.outsideInterference.nominal,
      least: 0,
      most: 3,
      source: 'seals-mem-common',
      standing: 'from memory',
      level: 'note',
      under: 'the ring does not hold itself in the groove of the housing',
      over: 'the ring may buckle into the bore and be cut when the rod goes in',
    });
  }
  return rules;
}

function fillRules({ motion }: GlandInput, figures: GlandFigures, all: GlandFigures): Rule[] {
  const shared = {
    unit: '%',
    under: '',
    over: 'there is too little room for the ring to move, swell and grow warm in',
    remedies: ['widen the groove', 'take a smaller section'],
    standing: 'read',
  } as const;
  const { max, nominal } = figures.fill;
  return [
    {
      ...shared,
      id: 'fill-most',
      what: 'greatest fill of the groove',
      value: max,
      most: 90,
      source: 'parker-fill',
      level: max >= 100 ? 'stop' : 'caution',
      ...(max >= 100 && { over: 'the ring does not fit into its groove' }),
    },
    {
      ...shared,
      id: 'fill-hot',
      what: 'greatest fill of the groove, hottest',
      value: all.fill.max,
      most: 100,
      source: 'seals-physics',
      standing: 'computed',
      level: 'stop',
      over: 'rubber cannot be compressed: it bursts out of the groove or jams the part',
    },
    {
      ...shared,
      id: 'fill-nominal',
      what: 'nominal fill of the groove',
      value: nominal,
      most: motion === 'static' ? 90 : 85,
      source: 'allorings',
      level: 'note',
    },
  ];
}

function gapRules({ hardness, pressure, ring, elastomer, backUp, motion }: GlandInput, figures: GlandFigures): Rule[] {
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
  if (backUp || gapUnpublished(hardness, pressure)) return rules;
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

function tableRules(input: GlandInput, figures: GlandFigures): Rule[] {
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

function temperatureRules({ elastomer, temperature }: GlandInput): Rule[] {
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
