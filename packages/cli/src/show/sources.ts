/** What an answer rests on, for a terminal: title and whether it was read, remembered or is common practice. */
import type { Reference } from '@sparewright/core/questions/ask';
import type { Terminal } from '../terminal.ts';
import { paragraph } from './text.ts';

export function sourceLines(sources: readonly Reference[], { width, ink }: Terminal): string[] {
  return [
    '',
    ...paragraph('Rests on', { width, ink: ink.bold }),
    ...sources.flatMap(({ title, kind }) => paragraph(`${title} (${kind})`, { width, indent: 2, mark: '· ' })),
  ];
}
