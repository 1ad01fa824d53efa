/** Taylor's tool life V·Tⁿ = C as printed, V in m/min, T in min. From reference/cutting/taylor.csv. */
import type { SourceKey } from '../sources/register.ts';

export interface ToolLife {
  readonly row: string;
  readonly cutter: string;
  /** n: one value, or the range printed */
  readonly exponent: readonly [low: number, high: number];
  /** C: speed for a life of one minute [m/min]; absent where only the exponent is printed */
  readonly constant?: number;
  readonly status: string;
  readonly source: SourceKey;
}

const memory = { status: 'from memory', source: 'GRO' } as const;
const read = { status: 'read', source: 'CUR' } as const;

const any: readonly ToolLife[] = [
  { row: 'TC010', cutter: 'high-speed steel', exponent: [0.08, 0.2], ...read },
  { row: 'TC011', cutter: 'carbide', exponent: [0.2, 0.3], ...read },
];

const printed: Readonly<Record<'steel' | 'non-steel', readonly ToolLife[]>> = {
  steel: [
    { row: 'TC004', cutter: 'high-speed steel', exponent: [0.125, 0.125], constant: 70, ...memory },
    { row: 'TC006', cutter: 'carbide', exponent: [0.25, 0.25], constant: 500, ...memory },
    { row: 'TC007', cutter: 'coated carbide', exponent: [0.25, 0.25], constant: 700, ...memory },
  ],
  'non-steel': [
    { row: 'TC003', cutter: 'high-speed steel', exponent: [0.125, 0.125], constant: 120, ...memory },
    { row: 'TC005', cutter: 'carbide', exponent: [0.25, 0.25], constant: 900, ...memory },
  ],
};

/** What is printed for steel, for other metals, or (`none`) the exponents alone. */
export function toolLifeOf(work: 'steel' | 'non-steel' | 'none'): readonly ToolLife[] {
  return work === 'none' ? any : [...printed[work], ...any];
}
