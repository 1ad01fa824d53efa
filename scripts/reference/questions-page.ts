/** The reference page of all questions, as Markdown. */
import type { Question } from '../../packages/core/src/question.ts';
import type { Source } from '../../packages/core/src/sources/source.ts';
import { type Field, fieldsOf } from './fields.ts';

export function questionsPage(questions: readonly Question[], source: (key: string) => Source): string {
  const sorted = questions.toSorted((a, b) => (a.name < b.name ? -1 : 1));
  return `${[
    '# Questions',
    'Everything that can be asked, on the command line (`sparewright ask NAME --json …`), over HTTP and on the screens. This page is made from the code by `npm run docs`; do not edit it by hand.',
    sorted.map((q) => `- [${q.name}](#${q.name}): ${q.asks}`).join('\n'),
    ...sorted.map((q) => section(q, source)),
  ].join('\n\n')}\n`;
}

function section(q: Question, source: (key: string) => Source): string {
  const sources = q.sources.map((key) => {
    const { title, kind, address, note } = source(key);
    return `- ${address ? `[${title}](${address})` : title}, ${kind} \`${key}\`${note ? `. ${note}` : ''}`;
  });
  return [
    `## ${q.name}`,
    q.asks,
    '**Put in**',
    table(fieldsOf(q.input, 'input')),
    '**Comes out**',
    table(fieldsOf(q.output, 'output')),
    `**Example**, known from ${q.example.from}:`,
    `\`\`\`sh\nsparewright ask ${q.name} --json '${JSON.stringify(q.example.input).replace(/'/g, `'\\''`)}'\n\`\`\``,
    `gives ${/^[[{]/.test(JSON.stringify(q.example.gives) ?? '') ? 'among other things' : 'exactly'}`,
    `\`\`\`json\n${JSON.stringify(q.example.gives, undefined, 2)}\n\`\`\``,
    ...(sources.length > 0 ? ['**Sources**', sources.join('\n')] : []),
  ].join('\n\n');
}

function table(fields: readonly Field[]): string {
  if (fields.length === 0) return 'nothing';
  const cell = (text: string) => text.replace(/\|/g, '\\|').replace(/\s*\n\s*/g, ' ');
  const rows = fields.map(
    (f) => `| \`${f.path}\` | ${cell(f.kind)}${f.optional ? ', optional' : ''} | ${cell(f.meaning)} |`,
  );
  return ['| Field | Kind | Meaning |', '|---|---|---|', ...rows].join('\n');
}
