/**
 * Gate: the core reaches nothing outside itself. The compiler sees to documents, processes and timers (no types for them);
 * this adds what the language itself brings: the clock, chance, and packages that are not the core's own.
 */

import { Visitor } from 'oxc-parser';
import { importsOf, isTest, packageOf } from './imports.ts';
import { parseJson } from './json.ts';
import { filesBelow, type Gate, lineOf, parse, read, type Violation } from './tree.ts';

export const purity: Gate = {
  name: 'purity',
  proves: 'the core has no input or output, no clock, no unseeded chance, and no packages beside its own two',
  check(root) {
    const dependencies = Object.keys(parseJson(read(root, 'packages/core/package.json')).dependencies ?? {});
    const foreign = importsOf(root)
      .filter((i) => packageOf(i.from) === 'core' && !isTest(i.from) && i.to === undefined)
      .filter((i) => !dependencies.some((name) => i.specifier === name || i.specifier.startsWith(`${name}/`)))
      .map((i) => ({ at: `${i.from}:${i.line}`, says: `the core may not import ${i.specifier}` }));
    const sources = filesBelow(root, 'packages/core/src', /\.ts$/).filter((path) => !isTest(path));
    return [...foreign, ...sources.flatMap((path) => clockAndChance(path, read(root, path)))];
  },
};

function clockAndChance(path: string, text: string): Violation[] {
  const found: Violation[] = [];
  const refuse = (start: number, says: string) => found.push({ at: `${path}:${lineOf(text, start)}`, says });
  new Visitor({
    MemberExpression(node) {
      if (node.object.type !== 'Identifier' || node.property.type !== 'Identifier') return;
      const name = `${node.object.name}.${node.property.name}`;
      if (name === 'Math.random') refuse(node.start, 'Math.random cannot be repeated: take a seed');
      if (name === 'Date.now') refuse(node.start, 'the core has no clock: hand the time in');
    },
    NewExpression(node) {
      const isDate = node.callee.type === 'Identifier' && node.callee.name === 'Date';
      if (isDate && node.arguments.length === 0) refuse(node.start, 'the core has no clock: hand the time in');
    },
  }).visit(parse(path, text).program);
  return found;
}
