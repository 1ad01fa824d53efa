/** Where a figure comes from, and how far it is to be trusted, in one line. */
import { type SourceKey, source } from '@sparewright/core/sources/register';

/** The title, followed by its standing unless it was read in print. */
export function presentSource(key: SourceKey): string {
  const { title, kind } = source(key);
  return kind === 'read' ? title : `${title} [${kind}]`;
}
