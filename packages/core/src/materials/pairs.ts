/** Two materials together: will they seize, will one eat the other, what instead. */
import type { Finding, Stage } from '../finding.ts';
import type { SourceKey } from '../sources/register.ts';
import type { MPa } from '../units/quantities.ts';
import { gallingThreshold } from './galling.ts';
import type { Material } from './material.ts';

export type Surroundings = 'harsh' | 'normal' | 'controlled';

/** Difference of anodic index that the surroundings allow [V]. VK6, EICAC. */
export const galvanicLimits: Readonly<Record<Surroundings, number>> = { harsh: 0.15, normal: 0.25, controlled: 0.5 };

const surroundingsSaid: Readonly<Record<Surroundings, string>> = {
  harsh: 'outdoors, damp or salt',
  normal: 'indoors, no control of warmth and damp',
  controlled: 'warmth and damp controlled',
};

export interface GallingVerdict {
  readonly level: 'low' | 'medium' | 'high' | 'not known';
  /** Dry, unlubricated, where a test is printed. */
  readonly threshold?: MPa;
  /** The test ended at the threshold without galling. */
  readonly orMore?: boolean;
  readonly because: string;
  readonly status: string;
  readonly sources: readonly SourceKey[];
}

export interface GalvanicVerdict {
  /** Difference of anodic index [V] */
  readonly difference: number;
  /** Id of the one that is eaten; undefined when both stand alike. */
  readonly attacked?: string;
  readonly allowed: Readonly<Record<Surroundings, boolean>>;
  readonly sources: readonly SourceKey[];
}

export interface PairToAvoid {
  readonly why: string;
  readonly better: string;
  readonly sources: readonly SourceKey[];
}

export interface PairVerdict {
  readonly galling: GallingVerdict;
  /** Absent where one of them is no metal. */
  readonly galvanic?: GalvanicVerdict;
  readonly avoid: readonly PairToAvoid[];
}

type Test = (m: Material) => boolean;
const family =
  (...words: readonly string[]): Test =>
  (m) =>
    words.some((w) => m.family.includes(w));
const grade =
  (...names: readonly string[]): Test =>
  (m) =>
    names.includes(m.grade);
const metal: Test = (m) => m.family !== 'plastic';
const hard: Test = (m) => m.hardness?.scale === 'HRC' && (m.hardness.min ?? 0) >= 45;
const copperAlloy: Test = (m) => family('brass', 'bronze', 'gunmetal')(m);
const stainless = family('stainless');
const ironSteel: Test = (m) => family('steel')(m) && !stainless(m);

/** Pairs to avoid and what does better, one row each of reference/materials/pairs-to-avoid.csv that names two bar materials. */
const avoided: readonly (readonly [Test, Test, PairToAvoid & { readonly seizes: boolean }])[] = [
  [
    grade('303', '304', '316'),
    grade('303', '304', '316'),
    {
      seizes: true,
      why: 'lowest threshold galling stress (about 14 MPa dry), threads seize',
      better: '416 or aluminium bronze against 316; anti-seize; one part nitrided or plated',
      sources: ['AISI-GALL', 'BSSA'],
    },
  ],
  [
    grade('17-4PH'),
    grade('17-4PH'),
    {
      seizes: true,
      why: 'about 14 MPa dry',
      better: 'harder unlike mate, manganese-silicon austenitic, aluminium bronze',
      sources: ['AISI-GALL', 'BSSA'],
    },
  ],
  [
    family('titanium'),
    family('titanium'),
    { seizes: true, why: 'seizes at low load', better: 'bronze, polymer liner, coating', sources: ['common-practice'] },
  ],
  [
    family('titanium'),
    family('austenitic', 'duplex'),
    { seizes: true, why: 'seizes', better: 'dry film lubricant, bronze', sources: ['common-practice'] },
  ],
  [
    family('aluminium alloy'),
    stainless,
    {
      seizes: true,
      why: 'galling in threads and galvanic couple 0.40 V by anodic index',
      better: 'paste, isolate, thread insert',
      sources: ['VK6', 'common-practice'],
    },
  ],
  [
    family('aluminium alloy'),
    copperAlloy,
    {
      seizes: false,
      why: 'galvanic couple 0.45 to 0.50 V: aluminium corrodes outdoors',
      better: 'isolate, anodise, seal',
      sources: ['VK6'],
    },
  ],
  [
    ironSteel,
    copperAlloy,
    {
      seizes: false,
      why: 'couple 0.40 to 0.45 V: steel rusts in the wet',
      better: 'oil or grease; keep the bronze area small',
      sources: ['VK6'],
    },
  ],
  [
    (m) => family('steel', 'stainless')(m) && !hard(m),
    (m) => grade('CuSn8', 'CuSn12', 'C90700')(m),
    {
      seizes: false,
      why: 'a soft shaft scores when grit embeds in hard tin bronze',
      better: 'hardened shaft over 45 to 50 HRC, or leaded bronze with a soft shaft',
      sources: ['common-practice'],
    },
  ],
];

const likeMetals: PairToAvoid = {
  why: 'like metals: adhesion rises with mutual solubility',
  better: 'unlike metals, hardness difference of 50 to 100 HV (bearing pairs), oil',
  sources: ['common-practice'],
};

/** How two materials get on. */
export function pairVerdict(a: Material, b: Material): PairVerdict {
  const rows = avoided.filter(([one, other]) => (one(a) && other(b)) || (one(b) && other(a))).map(([, , row]) => row);
  const galvanic = galvanicVerdict(a, b);
  return {
    galling: gallingVerdict(
      a,
      b,
      rows.find((r) => r.seizes),
    ),
    ...(galvanic ? { galvanic } : {}),
    avoid: [...rows.map(({ seizes: _, ...row }) => row), ...(alike(a, b) && rows.length === 0 ? [likeMetals] : [])],
  };
}

function alike(a: Material, b: Material): boolean {
  return metal(a) && a.family === b.family && !a.family.includes('iron');
}

/** Bands of threshold stress in which galling is called high or medium; ours, the sources print none [MPa]. */
const bands = { high: 35, medium: 100 } as const;

function gallingVerdict(a: Material, b: Material, seizing: PairToAvoid | undefined): GallingVerdict {
  const tested = gallingThreshold(a.grade, b.grade);
  if (tested) {
    const { threshold, orMore } = tested;
    const level = orMore || threshold > bands.medium ? 'low' : threshold > bands.high ? 'medium' : 'high';
    const because = `begins to gall at ${orMore ? 'over ' : ''}${Math.round(threshold)} MPa, dry button on block`;
    return { level, threshold, orMore, because, status: 'from memory; bands are ours', sources: ['AISI-GALL'] };
  }
  if (!metal(a) || !metal(b)) {
    return {
      level: 'low',
      because: 'plastics do not gall; they creep under load',
      status: 'common practice',
      sources: ['common-practice'],
    };
  }
  if (seizing) return { level: 'high', because: seizing.why, status: 'pair to avoid', sources: seizing.sources };
  const notes = [...new Set([`${a.commonName}: ${a.galling}`, `${b.commonName}: ${b.galling}`])].join('; ');
  const level = alike(a, b) ? 'medium' : 'not known';
  return {
    level,
    because: notes,
    status: 'no test printed for the pair; notes of the materials',
    sources: [...new Set([...a.sources, ...b.sources])],
  };
}

function galvanicVerdict(a: Material, b: Material): GalvanicVerdict | undefined {
  if (a.anodicIndex === undefined || b.anodicIndex === undefined) return undefined;
  // Rounded to the printed hundredths, so that a difference of exactly the limit is within it.
  const difference = Math.round(Math.abs(a.anodicIndex - b.anodicIndex) * 100) / 100;
  const attacked = a.anodicIndex < b.anodicIndex ? a.id : b.id;
  return {
    difference,
    ...(difference === 0 ? {} : { attacked }),
    allowed: {
      harsh: difference <= galvanicLimits.harsh,
      normal: difference <= galvanicLimits.normal,
      controlled: difference <= galvanicLimits.controlled,
    },
    sources: ['VK6', 'EICAC', 'materials-MEM'],
  };
}

/** What the pair gives cause to say, at a place of the job. */
export function pairFindings(
  a: Material,
  b: Material,
  { surroundings, at, stage }: { readonly surroundings: Surroundings; readonly at: string; readonly stage: Stage },
): Finding[] {
  const { galling, galvanic, avoid } = pairVerdict(a, b);
  const remedies = avoid.map((row) => row.better);
  const found: Finding[] = [];
  if (galling.level === 'high') {
    found.push({
      id: 'materials.galling',
      level: 'caution',
      stage,
      at,
      says: `${a.commonName} on ${b.commonName} is apt to seize${galling.because.startsWith('seizes') ? '' : `: ${galling.because}`}`,
      because:
        galling.threshold === undefined
          ? []
          : [{ what: 'threshold galling stress, dry', value: galling.threshold, unit: 'MPa', source: 'AISI-GALL' }],
      remedies: remedies.length > 0 ? remedies : [likeMetals.better],
    });
  }
  if (galvanic && !galvanic.allowed[surroundings]) {
    const eaten = galvanic.attacked === a.id ? a : b;
    found.push({
      id: 'materials.galvanic',
      level: 'caution',
      stage,
      at,
      says: `The ${eaten.commonName} corrodes where it touches ${(eaten === a ? b : a).commonName}: ${surroundingsSaid[surroundings]}.`,
      because: [
        {
          what: 'difference of anodic index',
          value: galvanic.difference,
          unit: 'V',
          limit: galvanicLimits[surroundings],
          source: 'VK6',
        },
      ],
      remedies: remedies.length > 0 ? remedies : ['isolate the two, or seal the joint with paste or paint'],
    });
  }
  return found;
}
