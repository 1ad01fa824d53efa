import { InputError } from '@sparewright/core/errors';
import { assess } from '@sparewright/core/job/assess';
import { readJob, readWorkshop } from '@sparewright/core/job/read-document';
import { nonFiniteAt } from '@sparewright/core/questions/non-finite';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dialTableLines } from '../src/show/dial-tables.ts';
import { summaryLines } from '../src/show/summary.ts';
import { exampleDocument, jobNames, mutated, mutation } from './mutations.ts';
import { silentTerminal as terminal } from './terminal.ts';

const runs = 400;
const workshopDocument = exampleDocument('bench-lathe.workshop.json');
const workshop = readWorkshop(workshopDocument);

/** What the document is read as; undefined when it is refused as it should be. */
function readOrRefuse<T>(read: () => T): T | undefined {
  try {
    return read();
  } catch (error) {
    expect(error).toBeInstanceOf(InputError);
    return undefined;
  }
}

function checkWhole(jobDocument: unknown, shop: unknown): boolean {
  const job = readOrRefuse(() => readJob(jobDocument));
  const made = shop === workshopDocument ? workshop : readOrRefuse(() => readWorkshop(shop));
  if (!job || !made) return false;
  const assessment = assess(job, made);
  expect(nonFiniteAt(assessment), 'a number that is none').toBeUndefined();
  const read = { file: 'x.job.json', job };
  const chosen = { file: 'x.workshop.json', workshop: made, told: '' };
  const lines = [
    ...summaryLines(read, chosen, assessment, terminal),
    ...(assessment.route ? dialTableLines(assessment.route, job, terminal) : []),
  ];
  // What was typed is quoted back, and may read like that.
  const typed = /NaN|undefined|Infinity|\[object/.test(JSON.stringify([jobDocument, shop]));
  for (const line of lines) {
    expect([...line].length, line).toBeLessThanOrEqual(100);
    expect(line).not.toMatch(/\p{Cc}/u);
    if (!typed) expect(line).not.toMatch(/\bNaN\b|\bundefined\b|\bInfinity\b|\[object/);
  }
  return true;
}

test.each(jobNames)(
  '%s with fields missing, doubled or spoiled is refused by name or assessed in finite numbers',
  (name) => {
    const document = exampleDocument(`${name}.job.json`);
    let assessed = 0;
    fc.assert(
      fc.property(fc.array(mutation, { minLength: 1, maxLength: 4 }), (mutations) => {
        if (checkWhole(mutated(document, mutations), workshopDocument)) assessed += 1;
      }),
      { numRuns: runs },
    );
    // A property over refusals alone would prove little.
    expect(assessed).toBeGreaterThan(runs / 10);
  },
);

test('a workshop with fields missing, doubled or spoiled is refused by name or planned with in finite numbers', () => {
  const documents = jobNames.map((name) => exampleDocument(`${name}.job.json`));
  let assessed = 0;
  fc.assert(
    fc.property(
      fc.constantFrom(...documents),
      fc.array(mutation, { minLength: 1, maxLength: 3 }),
      (document, mutations) => {
        if (checkWhole(document, mutated(workshopDocument, mutations))) assessed += 1;
      },
    ),
    { numRuns: runs },
  );
  expect(assessed).toBeGreaterThan(runs / 10);
});
