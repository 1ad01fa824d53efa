import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { exampleWorkshop } from '../../test/invented-lathe.ts';
import { elementsKnown, latheKnowledge, learnt } from './knowledge.ts';
import { testsSchema } from './test-schema.ts';

const page = readFileSync(new URL('../../../../docs/users/test-your-lathe.md', import.meta.url), 'utf8');
const blocks = [...page.matchAll(/```json\n([\s\S]*?)```/g)].map((m) => m[1] ?? '');

/** The examples of the page put together into one record of tests. */
function documented(): unknown {
  const parts: unknown[] = blocks.map((block) => JSON.parse(`{${block}}`));
  return Object.assign(
    {},
    ...parts.map((part) => (typeof part === 'object' && part !== null && 'tests' in part ? part.tests : part)),
  );
}

test('the tests written in the user’s page are accepted as they stand, and teach something', () => {
  expect(blocks.length).toBe(4);
  const tests = testsSchema('mm').parse(documented());
  const workshop = exampleWorkshop();
  const knowledge = latheKnowledge({ ...workshop, lathe: { ...workshop.lathe, tests } });
  expect(knowledge.seen.length).toBe(7);
  expect(knowledge.findings.filter((f) => f.id === 'lathe.tests-disagree')).toEqual([]);
  expect(elementsKnown(knowledge).filter((e) => e.left < 0.95).length).toBeGreaterThan(4);
  const taught = learnt(knowledge, tests.states ?? []);
  expect(taught.map((l) => l.test)).toContain('edge-1');
  for (const { changed } of taught)
    for (const { to } of changed) expect(to.low < to.middle && to.middle < to.high).toBe(true);
});
