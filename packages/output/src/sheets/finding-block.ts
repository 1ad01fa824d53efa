/** A finding as it stands on a sheet. */
import type { Finding } from '@sparewright/core/finding';
import { presentFinding } from '../present/finding.ts';
import { presentPlace } from '../present/place.ts';
import { capital, type FindingBlock } from './blocks.ts';
import type { PacketContext } from './context.ts';

export function findingBlock(finding: Finding, context: PacketContext, where: 'said' | 'clear' = 'said'): FindingBlock {
  const { level, headline, because, remedies } = presentFinding(finding, context.settings);
  return {
    kind: 'finding',
    level,
    at: where === 'said' ? capital(presentPlace(finding.at, context.job, context.assessment)) : '',
    headline,
    because: because.map((b) => ({ text: b.text, source: b.source ?? '' })),
    helps: oneOf(remedies),
  };
}

/** `This; or that.` Words that begin large only because they began a sentence begin small after the first. */
function oneOf(remedies: readonly string[]): string {
  const [first, ...rest] = remedies.map((r) => r.replace(/\.$/, ''));
  if (first === undefined) return '';
  const inside = rest.map((r) => (/^[A-Z][a-z]+ /.test(r) ? r.charAt(0).toLowerCase() + r.slice(1) : r));
  return `${[capital(first), ...inside].join('; or ')}.`;
}
