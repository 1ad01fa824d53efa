/** What the planner has to say about a cut: which limit it breaks, and what would lift it. */
import type { Cutter } from '../cutting/cutter.ts';
import { minimumChip, rubbingFinding } from '../cutting/rubbing.ts';
import type { Finding } from '../finding.ts';
import type { ChosenCut, Limit } from './choose-cut.ts';
import type { Draft } from './draft.ts';
import { usablePower } from './practice.ts';

const remedies: Record<Limit, readonly string[]> = {
  bending: [
    'Support the free end with the tailstock',
    'Take less depth and more passes',
    'Use a cutter with a smaller nose radius and a sharper edge',
    'Leave more out of the jaws only where it must be',
  ],
  power: ['Slower speed or smaller feed', 'Less depth'],
  cutter: ['More passes', 'A stronger cutter'],
  chip: ['A sharper edge (stoned, not moulded)', 'A larger feed'],
  finish: ['A smaller feed or a larger nose radius', 'Finish with abrasive paper'],
};

const says: Record<Limit, string> = {
  bending: 'The work gives way more than this cut allows, whatever depth and feed are chosen.',
  power: 'The drive is not strong enough for any cut here.',
  cutter: 'The cutter does not stand this depth.',
  chip: 'The chip is thinner than the edge is sharp: it rubs instead of cutting.',
  finish: 'No feed of this lathe leaves the roughness asked for.',
};

export function cutFindings(draft: Draft, chosen: ChosenCut, cutter: Cutter, hardens: boolean): Finding[] {
  const { numbers } = chosen;
  const findings = chosen.broken
    .filter((limit) => limit !== 'chip')
    .map(
      (limit): Finding => ({
        id: `route.limit-${limit}`,
        level: limit === 'finish' ? 'caution' : limit === 'bending' ? 'caution' : 'stop',
        stage: 'route',
        at: draft.id,
        says: says[limit],
        because:
          limit === 'power'
            ? [{ what: 'share of the drive', value: numbers.powerShare, unit: '', limit: usablePower }]
            : limit === 'bending'
              ? [{ what: 'gives way on the diameter', value: numbers.bending, unit: 'mm' }]
              : [{ what: 'depth of cut', value: numbers.depth, unit: 'mm', limit: cutter.maxDepth }],
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

export function missingDrill(draft: Draft, diameter: number): Finding {
  return {
    id: 'route.no-drill',
    level: 'caution',
    stage: 'route',
    at: draft.id,
    says: 'The workshop has no drill of this size.',
    because: [{ what: 'drill', value: diameter, unit: 'mm' }],
    remedies: ['Enter the drill if you have it', 'Drill the next smaller size and bore'],
  };
}
