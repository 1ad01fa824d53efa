/** What the planner has to say about a cut: which limit it breaks, and what would lift it. */
import type { Cutter } from '../cutting/cutter.ts';
import { minimumChip, rubbingFinding } from '../cutting/rubbing.ts';
import type { Finding } from '../finding.ts';
import type { Mm, Rpm } from '../units/quantities.ts';
import type { ChosenCut } from './choose-cut.ts';
import type { Limit } from './cut-candidate.ts';
import type { Draft } from './draft.ts';
import { roughBending, singingBorne, usablePower } from './practice.ts';
import type { CutNumbers } from './route-result.ts';

/** What is left to do once no depth, feed or speed of this lathe keeps the limit. */
const remedies: Record<Limit, readonly string[]> = {
  bending: [
    'Support the free end with the tailstock',
    'Let no more stand out of the jaws than must',
    'Use a cutter with a smaller nose radius and a sharper edge',
  ],
  sings: [
    'Let less stand out of the jaws, or support the free end',
    'A smaller nose radius or a sharper edge',
    'Ask what would help with this cut: every remedy is tried on the model of this lathe',
  ],
  power: ['More rake and a sharper edge', 'Saw or drill away the greater part first'],
  cutter: ['More passes', 'A stronger cutter'],
  chip: ['A sharper edge (stoned, not moulded)', 'A larger feed'],
  finish: ['A smaller feed or a larger nose radius', 'Finish with abrasive paper'],
  feed: ['Feed by hand, more finely', 'A cutter with a larger nose radius'],
};

const says: Record<Limit, string> = {
  bending: 'The work gives way more than this cut allows, whatever depth and feed are chosen.',
  sings: 'The cut is likely to sing on this lathe, whatever depth, feed and speed are chosen.',
  power: 'The drive is not strong enough for any cut here.',
  cutter: 'The cutter does not stand this depth.',
  chip: 'The chip is thinner than the edge is sharp: it rubs instead of cutting.',
  finish: 'No feed of this lathe leaves the roughness asked for.',
  feed: 'Every feed of this lathe is coarser than published for this cut, or than its nose stands.',
};

const whats: Record<Limit, { readonly what: string; readonly unit: string }> = {
  bending: { what: 'error of size from giving way, on the diameter', unit: 'mm' },
  sings: { what: 'probability that it sings', unit: '' },
  power: { what: 'share of the drive', unit: '' },
  cutter: { what: 'depth of cut', unit: 'mm' },
  chip: { what: 'chip thickness', unit: 'mm' },
  finish: { what: 'roughness Ra', unit: 'µm' },
  feed: { what: 'feed', unit: 'mm/rev' },
};

export function cutFindings(draft: Draft, chosen: ChosenCut, cutter: Cutter, hardens: boolean): Finding[] {
  const { numbers } = chosen;
  const findings = chosen.broken
    .filter((limit) => limit !== 'chip')
    .map(
      (limit): Finding => ({
        id: `route.limit-${limit}`,
        level: limit === 'power' || limit === 'cutter' ? 'stop' : 'caution',
        stage: 'route',
        at: draft.id,
        says: says[limit],
        because: chosen.passed
          .filter((m) => m.limit === limit && Number.isFinite(m.value))
          .map((m) => ({ what: whats[limit].what, value: m.value, unit: whats[limit].unit, limit: m.most })),
        remedies: remedies[limit],
      }),
    );
  if (chosen.broken.includes('chip')) {
    const finding = rubbingFinding(draft.id, chosen.force.chipThickness, cutter.edge, hardens);
    if (finding) findings.push(finding);
    else
      findings.push({
        id: 'route.limit-chip',
        level: 'caution',
        stage: 'route',
        at: draft.id,
        says: says.chip,
        because: [
          {
            what: 'chip thickness',
            value: chosen.force.chipThickness,
            unit: 'mm',
            limit: minimumChip(cutter.edge).usual,
          },
        ],
        remedies: remedies.chip,
      });
  }
  if (chosen.tooFast)
    findings.push({
      id: 'route.slowest-too-fast',
      level: 'caution',
      stage: 'route',
      at: draft.id,
      says: "Even the lathe's slowest speed is faster than published for this material and cutter.",
      because: [{ what: 'cutting speed', value: numbers.cuttingSpeed, unit: 'm/min' }],
      remedies: ['Use carbide', 'Fit a slower pulley step'],
    });
  return findings;
}

export function missingCutter(draft: Draft, what: string): Finding {
  return {
    id: 'route.no-cutter',
    level: 'stop',
    stage: 'route',
    at: draft.id,
    says: `The workshop has no cutter for this: it takes ${what}.`,
    because: [],
    remedies: [
      'Enter the cutter if you have it',
      'Grind or buy one before starting',
      'Change the feature so that a cutter on hand makes it',
    ],
  };
}

export function missingBar(draft: Draft, hole: Mm): Finding {
  if (hole > 0) {
    const missing = missingCutter(draft, `a boring bar that goes into a hole of ${hole.toFixed(1)} mm`);
    return { ...missing, remedies: ['Drill a little under size and ream', ...missing.remedies] };
  }
  return missingCutter(draft, 'a drill that opens a hole for the boring bar, or a cutter that plunges from the face');
}

/** A drilled hole keeps the size of its drill; one that is bored only needs something near. */
export function missingDrill(draft: Draft, diameter: Mm): Finding {
  return {
    id: 'route.no-drill',
    level: 'stop',
    stage: 'route',
    at: draft.id,
    says: 'The workshop has no drill of this size.',
    because: [{ what: 'drill', value: diameter, unit: 'mm' }],
    remedies: ['Enter the drill if you have it', 'Buy it', 'Drill the next smaller size and bore'],
  };
}

export function noTailstock(draft: Draft): Finding {
  return {
    id: 'route.no-tailstock',
    level: 'stop',
    stage: 'route',
    at: draft.id,
    says: 'No tailstock is entered: there is nothing to hold the drill in line with the spindle.',
    because: [],
    remedies: ['Enter the tailstock', 'Hold the drill in the tool post, centred with an indicator'],
  };
}

export function barTooShort(draft: Draft, cutter: Cutter, reach: Mm): Finding {
  return {
    id: 'route.bar-too-short',
    level: 'caution',
    stage: 'route',
    at: draft.id,
    says: `The ${cutter.name} as entered does not reach the bottom of the bore.`,
    because: [{ what: 'overhang of the bar', value: cutter.overhang, unit: 'mm', limit: reach }],
    remedies: ['Set it further out and take lighter cuts', 'Use a longer, thicker bar'],
  };
}

export function noseTooLarge(draft: Draft, cutter: Cutter, fillet: Mm): Finding {
  return {
    id: 'route.nose-too-large',
    level: 'caution',
    stage: 'route',
    at: draft.id,
    says: `The nose of the ${cutter.name} leaves a larger fillet in the corner than the part has.`,
    because: [{ what: 'nose radius', value: cutter.noseRadius, unit: 'mm', limit: fillet }],
    remedies: [
      'Finish the corner with a cutter of a smaller nose radius',
      'Allow the larger fillet, if the mate clears it',
    ],
  };
}

/** Cutters are not entered as made for inside work. */
export function insideCutter(draft: Draft, hole: Mm): Finding {
  return {
    id: 'route.inside-cutter',
    level: 'caution',
    stage: 'route',
    at: draft.id,
    says: 'This is cut inside a bore: check that you have a cutter of this shape that goes in, on a bar.',
    because: [{ what: 'hole it has to go into', value: hole, unit: 'mm' }],
    remedies: ['Grind one from a round tool bit held in a boring bar', 'For a thread: use a tap'],
  };
}

export function curveHidden(draft: Draft, reached: Mm, length: Mm): Finding {
  return {
    id: 'route.curve-hidden',
    level: 'stop',
    stage: 'route',
    at: draft.id,
    says: 'Steps cut from the free end do not reach all of this curve: it narrows towards the chuck or stands behind thicker work.',
    because: [{ what: 'length reached from the free end', value: reached, unit: 'mm', limit: length }],
    remedies: [
      'Turn the rest by both slides to a template, with a round-nosed cutter',
      'Grind a form cutter to the curve',
      'Turn it from the other end, if the part can be held there',
    ],
  };
}

/** Power, singing and give of a plunge, whose feed is the least a hand keeps up. */
export function plungeFindings(draft: Draft, cut: CutNumbers, slowest: Rpm): Finding[] {
  return handFedFindings(draft, cut, slowest, {
    called: 'plunge',
    lighter: 'Use a narrower cutter and widen the groove',
    otherwise: 'Saw the greater part by hand',
  });
}

/** The same of a stroke by hand along a cone or across a step. */
export function strokeFindings(draft: Draft, cut: CutNumbers, slowest: Rpm): Finding[] {
  return handFedFindings(draft, cut, slowest, {
    called: 'stroke',
    lighter: 'Take lighter strokes, more of them',
    otherwise: 'A smaller nose radius or a sharper edge',
  });
}

interface HandFedWords {
  readonly called: string;
  readonly lighter: string;
  readonly otherwise: string;
}

function handFedFindings(
  draft: Draft,
  cut: CutNumbers,
  slowest: Rpm,
  { called, lighter, otherwise }: HandFedWords,
): Finding[] {
  const findings: Finding[] = [];
  const add = (id: string, says: string, because: Finding['because']) =>
    findings.push({
      id,
      level: 'caution',
      stage: 'route',
      at: draft.id,
      says,
      because,
      remedies: [lighter, ...(cut.speed > slowest + 1e-9 ? ['Slower speed'] : []), otherwise],
    });
  if (cut.powerShare > usablePower)
    add('route.limit-power', `The drive is hardly strong enough for this ${called}.`, [
      { what: 'share of the drive', value: cut.powerShare, unit: '', limit: usablePower },
    ]);
  if ((cut.sings ?? 0) > singingBorne)
    add('route.limit-sings', `This ${called} is likely to sing on this lathe.`, [
      { what: 'probability that it sings', value: cut.sings ?? 0, unit: '', limit: singingBorne },
    ]);
  if (cut.bending > roughBending)
    add('route.limit-bending', `Work and cutter give way under this ${called}: it will dig in or sing.`, [
      { what: 'gives way on the diameter', value: cut.bending, unit: 'mm', limit: roughBending },
    ]);
  return findings;
}
