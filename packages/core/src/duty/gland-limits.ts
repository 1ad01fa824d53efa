/**
 * The published limits a gland is held against, each with its source, what it means to be outside, and what helps.
 */
import { knownElastomer, knownMedium } from '../standards/seals/elastomer.ts';
import type { GlandFigures } from './gland-figures.ts';
import { gapRules } from './gland-gap-rules.ts';
import type { GlandInput } from './gland-input.ts';
import { type HeldLimit, looseSqueeze, type Rule } from './gland-rule.ts';
import { tableRules, temperatureRules } from './gland-table-rules.ts';

export type { HeldLimit } from './gland-rule.ts';

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
