/** What is said of the blade of a grooving or parting cutter: that it digs in, that it may break, or that its height was not told. */
import { bladeStress } from '../cutting/blade.ts';
import type { Finding } from '../finding.ts';
import type { Setup } from './chain.ts';
import type { CutForces } from './cut-forces.ts';
import { bladeOf, edgeAway, hasBlade } from './plunging-blade.ts';

/** Bending stress a blade is worked at: half of what hardened steel bears in print, since it is struck; judgement [MPa]. */
const borne = 700;
/** Chip growing by the digging in over the growth that began it: from here it is felt, and at 1 it runs away; judgement below 1. */
const diggingFelt = 0.3;

/** What to say of the blade under a plunge. `give`: of edge and work together, for each newton of push. */
export function bladeFindings({ cutter }: Pick<Setup, 'cutter'>, forces: CutForces, give: number): Finding[] {
  if (!hasBlade(cutter)) return [];
  const blade = bladeOf(cutter);
  const findings: Finding[] = [];
  const shown = (value: number) => Number(value.toPrecision(2));
  const perChip = forces.chipStiffness * forces.chipWidth;
  const alone = -edgeAway(cutter) * perChip;
  const whole = -give * perChip;
  const shorter = [
    'let the blade stand out no further than the cut is deep',
    'use a higher or a thicker blade',
    'cut with less rake or at a lower feed',
    'turn the cutter over and cut from behind, where a blade that bends leaves the work',
  ];
  if (alone > diggingFelt)
    findings.push({
      id: 'lathe.blade-digs-in',
      level: whole >= 1 ? 'stop' : 'caution',
      stage: 'route',
      at: 'cut',
      says:
        whole >= 1
          ? 'The blade digs in: as it bends down its edge goes into the work by more than the chip grew.'
          : 'The blade bends down and its edge goes into the work: it may snatch.',
      because: [
        { what: 'chip added by the bending for each unit it grows', value: shown(alone), unit: '', limit: diggingFelt },
      ],
      remedies: shorter,
    });
  const stress = bladeStress(blade, forces.cutting);
  if (stress > borne)
    findings.push({
      id: 'lathe.blade-stress',
      level: 'stop',
      stage: 'route',
      at: 'cut',
      says: 'The blade may break off at its holder.',
      because: [{ what: 'bending stress', value: shown(stress), unit: 'MPa', limit: borne }],
      remedies: shorter,
    });
  if (cutter.bladeHeight === undefined)
    findings.push({
      id: 'lathe.blade-assumed',
      level: 'note',
      stage: 'route',
      at: 'cut',
      says: 'The height of the blade was not told: the usual one is taken.',
      because: [
        { what: 'height', value: blade.height, unit: 'mm' },
        { what: 'thickness', value: shown(blade.thickness), unit: 'mm' },
        { what: 'stands out', value: shown(blade.reach), unit: 'mm' },
      ],
      remedies: ['measure the blade from top to bottom and enter it with the cutter'],
    });
  return findings;
}
