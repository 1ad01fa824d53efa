/** The one place that knows the typesetter. Files are handed over in memory; only the bundled face is at its disposal. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler';
import { fontFiles } from '../fonts.ts';

const template = new URL('packet.typ', import.meta.url);
const workspace = fileURLToPath(new URL('.', import.meta.url));

let read: { readonly fonts: Buffer[]; readonly template: string } | undefined;

/** The same files give the same bytes. @throws Error with what the typesetter says when it refuses */
export function typeset(files: Readonly<Record<string, string>>): Uint8Array {
  read ??= { fonts: fontFiles.map((f) => readFileSync(f.url)), template: readFileSync(template, 'utf8') };
  const compiler = NodeCompiler.create({ workspace, fontArgs: [{ fontBlobs: read.fonts }] });
  for (const [name, content] of Object.entries(files)) compiler.mapShadow(`${workspace}${name}`, Buffer.from(content));
  const done = compiler.compile({ mainFileContent: read.template });
  const document = done.result;
  if (document === null) {
    const error = done.takeDiagnostics();
    throw new Error(`The packet could not be set: ${JSON.stringify(error?.shortDiagnostics ?? 'no reason given')}`);
  }
  const pdf = compiler.pdf(document);
  compiler.evictCache(0);
  return pdf;
}
