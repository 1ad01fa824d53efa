/**
 * What is said about a bonded joint.
 */
import type { Because, Finding, Level } from '../finding.ts';
import type { BondInput, Factor, Spread } from './bond-factors.ts';

export interface JudgedBond {
  readonly input: BondInput;
  readonly unit: 'N·m' | 'N';
  readonly capacity: Spread;
  /** Safety that is usual [-]. */
  readonly wanted: number;
  readonly duty: number | undefined;
  readonly factors: readonly Factor[];
}

type Say = (
  id: string,
  level: Level,
  says: string,
  because: readonly Because[],
  remedies: readonly string[],
) => Finding;

export function bondFindings(bond: JudgedBond): Finding[] {
  const at = bond.input.at ?? 'bond';
  const say: Say = (id, level, says, because, remedies) => ({
    id: `duty.bond-${id}`,
    level,
    stage: 'duty',
    at,
    says,
    because,
    remedies,
  });
  return [...dutyFindings(bond, say), ...formFindings(bond.input, say), ...trustFindings(bond, say)];
}

const stronger = [
  'a larger diameter counts twice in torque, length once',
  'pin, key or thread the joint as well',
  'a stronger compound, by its data sheet',
];

function dutyFindings({ unit, capacity, wanted, duty }: JudgedBond, say: Say): Finding[] {
  if (duty === undefined || duty === 0) return [];
  const because = [
    { what: 'typical capacity', value: capacity.typical, unit, limit: duty, source: 'bond-MEM' },
    { what: 'low end of the band', value: capacity.low, unit, limit: duty, source: 'bond-MEM' },
  ] as const;
  const reserve = capacity.typical / duty;
  const quoted = `${digits(capacity.typical)} ${unit} (${digits(capacity.low)} to ${digits(capacity.high)}) against ${digits(duty)} ${unit}`;
  if (reserve < 1)
    return [say('too-weak', 'stop', `The bond typically lets go below its duty: ${quoted}.`, because, stronger)];
  const found: Finding[] = [];
  if (reserve < wanted) {
    const says = `The bond has little reserve: ${quoted}; a safety of ${wanted} is usual, common practice.`;
    found.push(say('small-reserve', 'caution', says, because, stronger));
  }
  if (capacity.low < duty) {
    const says = `At the low end of what is said of such bonds it would let go: ${quoted}. Prove it before it is trusted.`;
    found.push(say('unproved', 'caution', says, because, ['prove it by a test', ...stronger]));
  }
  return found;
}

function formFindings({ length, diameter, roughness, gap }: BondInput, say: Say): Finding[] {
  const found: Finding[] = [];
  if (length > 1.5 * diameter) {
    const why = {
      what: 'length over diameter',
      value: length / diameter,
      unit: '',
      limit: 1.5,
      source: 'bond-MEM',
    } as const;
    found.push(
      say(
        'long',
        'note',
        'Shear peaks at the ends of a long joint: only 1.5 diameters of length are counted.',
        [why],
        [],
      ),
    );
  }
  if (roughness !== undefined && roughness > 3.2) {
    const why = { what: 'Ra', value: roughness, unit: 'µm', limit: 3.2, source: 'bond-MEM' } as const;
    const says = 'The surface is rougher than any that a factor is known for: nothing is taken off for it.';
    found.push(say('rough', 'caution', says, [why], ['finish the joint to Ra 0.8 to 3.2 µm']));
  }
  if (gap !== undefined && gap < 0.01) {
    const why = { what: 'diametral gap', value: gap, unit: 'mm', limit: 0.01, source: 'GOBEAR' } as const;
    const says = 'The gap is under 0.010 mm, the least that is advised: little compound stays between the parts.';
    found.push(say('tight', 'caution', says, [why], ['give 0.02 to 0.08 mm on the diameter']));
  }
  return found;
}

function trustFindings({ input, factors }: JudgedBond, say: Say): Finding[] {
  const remembered = [
    ...(typeof input.strength === 'number' ? [] : ['the strength']),
    ...factors.filter((factor) => factor.standing !== 'computed').map((factor) => `the factor for ${factor.name}`),
    'the shape of the formula',
  ];
  const memory = `From memory, low confidence: ${remembered.join(', ')}. Ask the data sheet, and prove the joint.`;
  const unstated = (['gap', 'roughness', 'materials', 'temperature', 'ageing'] as const).filter(
    (name) => input[name] === undefined,
  );
  const open = `Not stated, so nothing is taken off for: ${unstated.join(', ')}. Some of these can take half or more.`;
  return [
    say('from-memory', 'note', memory, [], ['use the figures of the data sheet']),
    ...(unstated.length > 0 ? [say('unstated', 'note', open, [], ['state them'])] : []),
  ];
}

/** A figure as it is quoted: three digits. */
export function digits(value: number): string {
  return String(Number(value.toPrecision(3)));
}
