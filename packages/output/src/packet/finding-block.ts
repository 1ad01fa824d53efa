/** A finding as it stands on a sheet. */
import type { Finding } from '@sparewright/core/finding';
import { presentFinding } from '../present/finding.ts';
import { presentPlace } from '../present/place.ts';
import type { FindingBlock } from './blocks.ts';
import type { PacketContext } from './context.ts';

export function findingBlock(finding: Finding, context: PacketContext, where: 'said' | 'clear' = 'said'): FindingBlock {
  const { level, headline, because, remedies } = presentFinding(finding, context.settings);
  return {
    kind: 'finding',
    level,
    at: where === 'said' ? presentPlace(finding.at, context.job, context.assessment) : '',
    headline,
    because: because.map((b) => ({ text: b.text, source: b.source ?? '' })),
    remedies,
  };
}
