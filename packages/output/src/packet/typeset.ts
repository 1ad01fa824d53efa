/** The one place that knows the typesetter. Files are handed over in memory; only the bundled face is at its disposal. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler';
import { fontFiles } from '../fonts.ts';

const template = new URL('packet.typ', import.meta.url);
const workspace = fileURLToPath(new URL('.', import.meta.url));

/** What is set, and the pictures in it, by name. */
export type Files = Readonly<Record<string, string | Uint8Array>>;

/** Packets after which what was laid out for one is forgotten, if it was not wanted again. */
const remembered = 6;

interface Ready {
  readonly compiler: NodeCompiler;
  readonly template: string;
}

// Kept from one packet to the next: making one costs a tenth of a second and memory that is not given back.
let ready: Ready | undefined;

function getReady(): Ready {
  ready ??= {
    compiler: NodeCompiler.create({
      workspace,
      fontArgs: [{ fontBlobs: fontFiles.map((f) => readFileSync(f.url)) }],
    }),
    template: readFileSync(template, 'utf8'),
  };
  return ready;
}

type Laid = NonNullable<ReturnType<NodeCompiler['compile']>['result']>;

/** As PDF: the same files give the same bytes. @throws Error with what the typesetter says when it refuses */
export function typeset(files: Files): Uint8Array {
  return laidOut(files, (compiler, document) => compiler.pdf(document));
}

/** As one picture, all pages below each other. @throws Error with what the typesetter says when it refuses */
export function typesetPicture(files: Files): string {
  return laidOut(files, (compiler, document) => compiler.plainSvg(document));
}

function laidOut<T>(files: Files, write: (compiler: NodeCompiler, document: Laid) => T): T {
  const { compiler, template: mainFileContent } = getReady();
  compiler.resetShadow();
  for (const [name, content] of Object.entries(files)) compiler.mapShadow(`${workspace}${name}`, Buffer.from(content));
  const done = compiler.compile({ mainFileContent, resetRead: true });
  const document = done.result;
  if (document === null) {
    const reasons = done.takeDiagnostics()?.shortDiagnostics ?? [];
    throw new Error(`The packet could not be set: ${JSON.stringify(reasons)}`);
  }
  const written = write(compiler, document);
  compiler.resetShadow();
  compiler.evictCache(remembered);
  return written;
}
