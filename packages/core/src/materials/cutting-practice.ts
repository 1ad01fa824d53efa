/** Habits at the cutter that depend on the material: keeping under a hardened skin, cutting fluids. */
import type { SourceKey } from '../sources/register.ts';
import type { MmPerRev } from '../units/quantities.ts';
import type { WorkHardening } from './grade-row.ts';
import type { Material } from './material.ts';

/** Least feed below which the edge stays inside the skin that the cut before it hardened. */
export interface ChipLoadFloor {
  readonly operation: 'drill';
  readonly low: MmPerRev;
  readonly high: MmPerRev;
  /** How it goes with the drill. */
  readonly scales: string;
  readonly status: string;
  readonly source: SourceKey;
}

export interface Hardening {
  readonly level: WorkHardening;
  readonly advice: readonly string[];
  readonly chipLoadFloor?: ChipLoadFloor;
  readonly sources: readonly SourceKey[];
}

export interface Fluid {
  readonly operation: string;
  readonly fluid: string;
  readonly status: string;
  readonly source: SourceKey;
}

const floor: ChipLoadFloor = {
  operation: 'drill',
  low: 0.02,
  high: 0.05,
  scales: 'with the diameter: about D/100 to D/60 a revolution',
  status: 'common practice',
  source: 'common-practice',
};

/** How a material hardens under the cutter and what to do about it. */
export function hardeningOf(material: Material): Hardening {
  const level = material.workHardening;
  const noted = material.cuttingNote === undefined ? [] : [material.cuttingNote];
  if (level !== 'high') return { level, advice: noted, sources: material.sources };
  const stainless = material.family.includes('stainless');
  return {
    level,
    advice: [
      ...noted,
      'never dwell or rub; the feed stays on until the cutter is withdrawn',
      ...(stainless
        ? [
            'drilling: each lip must cut under the skin that the other left',
            'getting under the skin of cold-drawn bar may be hard at first',
          ]
        : []),
    ],
    ...(stainless ? { chipLoadFloor: floor } : {}),
    sources: [...material.sources, 'common-practice', ...(stainless ? (['WSP'] as const) : [])],
  };
}

const practice = 'common practice';
const paired = 'read; columns printed in one run, pairing checked but not certain';
const fluids: readonly (readonly [
  material: string,
  operation: string,
  fluid: string,
  status: string,
  source: SourceKey,
])[] = [
  ['steel', 'turn', '25 % lard oil with 75 % mineral oil (low-carbon and tool steel)', paired, 'MH31F'],
  ['steel', 'turn', '25 % sulphur-base oil with 75 % mineral oil (alloy steel)', paired, 'MH31F'],
  ['steel', 'drill', 'soluble oil, sulphurised oil, lard oil', 'read', 'TUTE'],
  [
    'austenitic stainless',
    'turn',
    'strong sulphur or chlorine EP oil for slow work, rich emulsion for carbide',
    practice,
    'common-practice',
  ],
  ['cast iron', 'turn', 'dry', 'read', 'TUTE'],
  ['cast iron', 'drill', 'dry or air jet', 'read', 'TUTE'],
  ['brass', 'turn', 'mineral oil with 10 % fat', paired, 'MH31F'],
  ['brass', 'drill', 'dry, soluble oil, mineral oil, lard oil', 'read', 'TUTE'],
  ['bronze', 'turn', 'soluble oil', paired, 'MH31F'],
  ['bronze', 'drill', 'dry, soluble oil, mineral oil, lard oil', 'read', 'TUTE'],
  ['copper', 'turn', 'soluble oil', paired, 'MH31F'],
  ['copper', 'drill', 'dry, soluble oil, mineral lard oil', 'read', 'TUTE'],
  ['copper, Monel', 'turn', 'soluble oil', paired, 'MH31F'],
  ['aluminium', 'turn', 'mineral oil with 10 % fat, or soluble oil', paired, 'MH31F'],
  ['aluminium', 'drill', 'soluble oil, paraffin, paraffin with lard oil', 'read', 'TUTE'],
  ['titanium', 'turn', 'flood emulsion; never let chips lie: they burn', practice, 'common-practice'],
  ['plastics', 'turn', 'dry or air; polyamide swells with water', practice, 'common-practice'],
];

/** Cutting fluids printed for those classes of material. */
export function fluidsFor(classes: readonly string[]): Fluid[] {
  return fluids
    .filter(([material]) => classes.includes(material))
    .map(([, operation, fluid, status, source]) => ({ operation, fluid, status, source }));
}
