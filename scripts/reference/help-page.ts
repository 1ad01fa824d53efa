/** The help of the screens as pages of the documentation: the same pieces, written as Markdown, with their drawings. */
import type { Scene } from '../../packages/core/src/drawing/scene.ts';
import type { Source } from '../../packages/core/src/sources/source.ts';

/** A piece of help, as packages/web/src/help/topic.ts has it. */
export interface Piece {
  readonly id: string;
  readonly lead: string;
  readonly picture?: Scene | undefined;
  readonly steps: readonly string[];
  readonly beware: readonly string[];
  readonly formula?: string | undefined;
  readonly enter?: string | undefined;
  readonly sources: readonly string[];
}

export interface HelpParts {
  readonly pieces: readonly Piece[];
  readonly titleOf: (id: string) => string;
  readonly source: (key: string) => Source;
  readonly numbered: boolean;
}

export function helpPage(
  title: string,
  intro: readonly string[],
  { pieces, titleOf, source, numbered }: HelpParts,
): string {
  const parts = pieces.flatMap((piece) => [
    `## ${titleOf(piece.id)}`,
    piece.lead,
    ...(piece.picture ? [`![${piece.picture.title}](../pictures/help/${piece.id}.svg)`] : []),
    piece.steps.map((step, i) => `${numbered ? `${i + 1}.` : '-'} ${step}`).join('\n'),
    ...(piece.formula === undefined ? [] : [`\`\`\`\n${piece.formula.replaceAll(';   ', '\n')}\n\`\`\``]),
    ...(piece.beware.length > 0 ? [`**Beware.** ${piece.beware.join(' ')}`] : []),
    ...(piece.enter === undefined ? [] : [`**Where to type it.** ${piece.enter}`]),
    ...(piece.sources.length > 0 ? [`*From:* ${piece.sources.map((key) => cited(source(key))).join('; ')}.`] : []),
  ]);
  return `${[`# ${title}`, ...intro, ...parts].join('\n\n')}\n`;
}

const cited = ({ title, kind }: Source): string => (kind === 'read' ? title : `${title} (${kind})`);
