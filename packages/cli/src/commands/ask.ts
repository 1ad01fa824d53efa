/** `ask`: one question, the list of all, or a stream of them. */
import { InputError } from '@sparewright/core/errors';
import { parseJson } from '@sparewright/core/job/read-document';
import { ask, questionNamed } from '@sparewright/core/questions/ask';
import { inputFields } from '@sparewright/core/questions/input-fields';
import { questions } from '@sparewright/core/questions/registry';
import { type ExitCode, exitCodes } from '../exit-codes.ts';
import { paragraph } from '../show/text.ts';
import type { Terminal } from '../terminal.ts';
import { answerLines } from './ask-lines.ts';

export interface AskOptions {
  readonly json?: string;
  readonly list?: true;
  readonly lines?: true;
}

export async function askCommand(name: string | undefined, options: AskOptions, terminal: Terminal): Promise<ExitCode> {
  if (options.lines) await answerLines(terminal);
  else if (options.list) await terminal.out(`${listLines(terminal).join('\n')}\n`);
  else if (name === undefined) {
    throw new InputError([
      {
        path: 'NAME',
        value: undefined,
        expected: 'the name of a question; sparewright ask --list shows them',
        example: 'limits',
      },
    ]);
  } else if (options.json === undefined) await terminal.out(`${questionLines(name, terminal).join('\n')}\n`);
  else {
    const answered = ask(name, parseJson(options.json, '--json'));
    await terminal.out(`${JSON.stringify(answered, undefined, 2)}\n`);
  }
  return exitCodes.fine;
}

function listLines({ width, ink }: Terminal): string[] {
  const margin = Math.max(...questions.map((q) => q.name.length)) + 2;
  return questions.flatMap(({ name, asks }) => {
    const [first = '', ...rest] = paragraph(asks, { width, indent: margin });
    return [ink.bold(name) + first.slice(name.length), ...rest];
  });
}

/** What a question takes, with an example to copy. */
function questionLines(name: string, { width, ink }: Terminal): string[] {
  const question = questionNamed(name);
  const fields = inputFields(question);
  const margin = Math.max(0, ...fields.map((f) => f.name.length)) + 4;
  const example = JSON.stringify(question.example.input).replaceAll("'", "'\\''");
  return [
    ...paragraph(question.asks, { width, ink: ink.bold }),
    '',
    'It takes',
    ...fields.flatMap(({ name: field, meaning, choices, whenLeftOut, optional }) => {
      const extra = [
        ...(choices.length > 0 ? [`one of ${choices.join(', ')}`] : []),
        ...(whenLeftOut !== undefined ? [`${whenLeftOut} when left out`] : optional ? ['may be left out'] : []),
      ];
      const text = [meaning, ...extra].join('; ');
      return paragraph(text, { width, mark: `  ${field}`.padEnd(margin) });
    }),
    '',
    // Not wrapped: it is to be copied.
    'For example',
    `  sparewright ask ${name} --json '${example}'`,
  ];
}
