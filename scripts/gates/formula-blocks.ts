/** Gate: what is written above a formula is true of it. */
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { compileFunction } from 'node:vm';
import { hasUnit, sourceKeysOf } from './doc-block.ts';
import { type ExportedFunction, exportedFunctions, numberAliases } from './functions.ts';
import { isTest } from './imports.ts';
import { disagreement, readPrinted } from './printed.ts';
import { filesBelow, type Gate, parse, read, type Violation } from './tree.ts';

const quantities = 'packages/core/src/units/quantities.ts';
const register = 'packages/core/src/sources/register.ts';

/** Folders whose exported functions, when they return a number, are trade knowledge and must name a source. */
const formulaFolders = ['standards', 'materials', 'cutting', 'structure', 'duty'];

/** Solvers and quadrature take numbers of any unit. */
const unitless = 'numerics';

/** Files that build schemas: what their functions return is zod's to say. */
const schemaFile = /\/(?:[\w-]*schema|[\w-]*fields|questions)\.ts$/;

export const formulaBlocks: Gate = {
  name: 'formula blocks',
  proves:
    'each formula names its parameters with units, a known source, its validity, and an example that comes out as stated',
  async check(root) {
    const aliases = new Set(numberAliases(parse(quantities, read(root, quantities)).program));
    const sources = await importFrom(root, register);
    if (sources instanceof Error) throw sources;
    const keys = new Set(Array.isArray(sources.sourceKeys) ? sources.sourceKeys.map(String) : []);
    if (aliases.size === 0 || keys.size === 0) return [{ at: register, says: 'no units or no sources were found' }];

    const found: Violation[] = [];
    for (const path of filesBelow(root, 'packages/core/src', /\.ts$/).filter((p) => !isTest(p))) {
      const functions = exportedFunctions(path, read(root, path), aliases);
      const isFormulaFile = formulaFolders.some((folder) => path.startsWith(`packages/core/src/${folder}/`));
      const formulas = functions.filter((f) => f.tags.some(({ tag }) => tag === 'source'));
      const report = (f: ExportedFunction) => (says: string) => {
        found.push({ at: `${path}:${f.line}`, says: `${f.name}: ${says}` });
      };
      if (isFormulaFile) {
        for (const f of functions) if (!formulas.includes(f)) withoutSource(f, schemaFile.test(path), report(f));
      }
      const scope = formulas.length > 0 ? await exampleScope(root, path) : {};
      if (scope instanceof Error) {
        found.push({ at: path, says: `cannot be loaded: ${scope.message}` });
        continue;
      }
      for (const f of formulas) {
        signature(f, path.startsWith(`packages/core/src/${unitless}/`), report(f));
        knownSources(f, keys, report(f));
        for (const { text } of f.tags.filter(({ tag }) => tag === 'example')) example(text, scope, report(f));
      }
    }
    return found;
  },
};

type Report = (says: string) => void;

function withoutSource(f: ExportedFunction, isSchema: boolean, report: Report): void {
  if (f.returns === 'number') report('returns a number but names no @source');
  if (f.returns === 'unstated' && !isSchema)
    report('does not state what it returns, so nobody can see whether it needs a @source');
}

function signature(f: ExportedFunction, anyUnit: boolean, report: Report): void {
  const documented = f.tags.filter(({ tag }) => tag === 'param').map(({ text }) => text);
  const names = documented.map((text) => text.split(/\s/)[0] ?? '');
  const wanted = f.parameters.map((p, i) => p.name ?? names[i] ?? '');
  if (names.join() !== wanted.join()) {
    report(`@param names ${names.join(', ') || 'nothing'}, the function takes ${wanted.join(', ') || 'nothing'}`);
  }
  for (const p of f.parameters) {
    const text = documented.find((line) => line.split(/\s/)[0] === p.name);
    if (p.numeric && !anyUnit && text !== undefined && !hasUnit(text))
      report(`@param ${p.name} has no unit in square brackets`);
  }
  const returns = f.tags.find(({ tag }) => tag === 'returns');
  if (!returns) report('has no @returns');
  else if (f.returns === 'number' && !anyUnit && !hasUnit(returns.text))
    report('@returns has no unit in square brackets');
  for (const tag of ['valid', 'example']) if (!f.tags.some((t) => t.tag === tag)) report(`has no @${tag}`);
}

function knownSources(f: ExportedFunction, keys: ReadonlySet<string>, report: Report): void {
  for (const { text } of f.tags.filter(({ tag }) => tag === 'source')) {
    const named = sourceKeysOf(text);
    if (named.length === 0) report('@source names no key');
    for (const key of named)
      if (!keys.has(key))
        report(`@source ${key} is not in the register (each part after a semicolon begins with a key)`);
  }
}

/** Runs `expression → result` with the exports of the module and of its folder in scope. */
function example(text: string, scope: Readonly<Record<string, unknown>>, report: Report): void {
  const arrow = text.lastIndexOf('→');
  if (arrow < 0) {
    report(`@example "${text}" has no → result`);
    return;
  }
  const expression = text.slice(0, arrow).trim();
  const stated = text
    .slice(arrow + 1)
    .replace(/\s*\[[^\][,:\d]*\]\s*$/, '')
    .trim();
  const refusal = /^throws (\w+)$/.exec(stated)?.[1];
  const printed = readPrinted(stated);
  if (!refusal && !printed) {
    report(`@example result "${stated}" cannot be read: give a number, string, list, record or "throws NameOfError"`);
    return;
  }
  try {
    const actual: unknown = compileFunction(`return (${expression});`, Object.keys(scope))(...Object.values(scope));
    const wrong = refusal ? `did not throw ${refusal}` : printed && disagreement(printed, actual);
    if (wrong) report(`@example ${expression}: ${wrong}`);
  } catch (error) {
    const name = error instanceof Error ? error.name : 'something';
    if (name !== refusal)
      report(`@example ${expression} throws ${name}: ${error instanceof Error ? error.message : error}`);
  }
}

/** What an example may name: the exports of its module, and those of the modules beside it. */
async function exampleScope(root: string, path: string): Promise<Readonly<Record<string, unknown>> | Error> {
  const own = await importFrom(root, path);
  if (own instanceof Error) return own;
  const folder = path.slice(0, path.lastIndexOf('/'));
  const beside = filesBelow(root, folder, /\.ts$/).filter(
    (p) => !isTest(p) && !p.slice(folder.length + 1).includes('/'),
  );
  const modules = await Promise.all(beside.map((p) => importFrom(root, p)));
  return Object.assign({}, ...modules.filter((module) => !(module instanceof Error)), own);
}

/** The exports of a module, or why it cannot be loaded. */
async function importFrom(root: string, path: string): Promise<Readonly<Record<string, unknown>> | Error> {
  try {
    return { ...(await import(pathToFileURL(join(root, path)).href)) };
  } catch (error) {
    return error instanceof Error ? error : new Error(String(error));
  }
}
