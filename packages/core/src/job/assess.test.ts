import { describe, expect, test } from 'vitest';
import { type ExampleName, exampleDocument, exampleJob, exampleNames, exampleWorkshop } from '../../test/examples.ts';
import { assess, createAssessor } from './assess.ts';
import { memo, same } from './memo.ts';
import { readJob } from './read-document.ts';
import type { JobDocument } from './schema.ts';

const workshop = exampleWorkshop();

describe('assess', () => {
  test.each(exampleNames)('%s: every stage answers, nothing stops it', (name: ExampleName) => {
    const answer = assess(exampleJob(name), workshop);
    expect(answer.part?.complete).toBe(true);
    expect(answer.route?.operations.length).toBeGreaterThan(10);
    expect(answer.route?.tables.length).toBeGreaterThan(4);
    expect(answer.inspection.rows.length).toBeGreaterThan(8);
    expect(answer.evidence.gathered.length).toBeGreaterThan(3);
    expect(answer.findings.filter((f) => f.level === 'stop')).toEqual([]);
  });

  test('findings come worst first', () => {
    const rank = { stop: 0, caution: 1, note: 2 };
    const levels = assess(exampleJob('valve-guide-pin'), workshop).findings.map((f) => rank[f.level]);
    expect(levels).toEqual(levels.toSorted((a, b) => a - b));
  });

  test('an empty job says what is missing and answers nothing else', () => {
    const empty = readJob({ sparewright: 'job', version: 1, title: 'new', units: 'mm', hazard: 'ordinary' });
    const answer = assess(empty, undefined);
    expect(answer.part).toBeUndefined();
    expect(answer.route).toBeUndefined();
    expect(answer.missing.length).toBe(6);
  });

  test('without a workshop there is a part and a duty, but no route', () => {
    const answer = assess(exampleJob('plunger'), undefined);
    expect(answer.part?.complete).toBe(true);
    expect(answer.duty.checks.length).toBe(1);
    expect(answer.route).toBeUndefined();
  });

  test('a job above ordinary hazard carries its cautions, first', () => {
    const { cautions } = assess(exampleJob('plunger'), workshop);
    expect(cautions[0]?.about).toBe('pressure');
    expect(cautions.map((c) => c.about)).toContain('lathe work');
  });
});

describe('what changed is computed again, and nothing else', () => {
  const document = exampleDocument('plunger.job.json') as JobDocument;

  test('a new note leaves every stage as it was', () => {
    const assessor = createAssessor();
    const before = assessor(readJob(document), workshop);
    const after = assessor(readJob({ ...document, notes: 'another note' }), workshop);
    expect(after.part).toBe(before.part);
    expect(after.route).toBe(before.route);
    expect(after.duty).toBe(before.duty);
  });

  test('a new reading leaves part and route as they were', () => {
    const assessor = createAssessor();
    const before = assessor(readJob(document), workshop);
    const readings = [...(document.evidence?.readings ?? []), { id: 'new', of: 'body.diameter', value: '31.95' }];
    const after = assessor(readJob({ ...document, evidence: { ...document.evidence, readings } }), workshop);
    expect(after.evidence).not.toBe(before.evidence);
    expect(after.route).toBe(before.route);
  });

  test('the answer after a change is the answer of a fresh start', () => {
    const assessor = createAssessor();
    assessor(readJob(document), workshop);
    const changed = readJob({ ...document, route: { firstEndOut: 'left' } });
    expect(assessor(changed, workshop)).toEqual(assess(changed, workshop));
  });
});

describe('memo', () => {
  test('calls again only for arguments that differ in content', () => {
    let calls = 0;
    const twice = memo((x: { readonly a: readonly number[] }) => {
      calls++;
      return x.a.length;
    });
    twice({ a: [1, 2] });
    twice({ a: [1, 2] });
    expect(calls).toBe(1);
    twice({ a: [1, 3] });
    expect(calls).toBe(2);
  });

  test.each([
    [{ a: 1 }, { a: 1, b: undefined }, false],
    [[1], { 0: 1 }, false],
    [null, {}, false],
    [{ a: [1, { b: 2 }] }, { a: [1, { b: 2 }] }, true],
  ])('same(%j, %j) is %s', (a, b, expected) => {
    expect(same(a, b)).toBe(expected);
  });
});
