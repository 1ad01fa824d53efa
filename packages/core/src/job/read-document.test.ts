import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { InputError } from '../errors.ts';
import { migrate } from './migrate.ts';
import { parseJson, readJob, readWorkshop } from './read-document.ts';
import type { JobDocument } from './schema.ts';

const job: JobDocument = {
  sparewright: 'job',
  version: 1,
  title: 'A pin',
  units: 'mm',
  hazard: 'ordinary',
  part: { name: 'Pin', outside: [{ id: 'shank', kind: 'cylinder', diameter: '12 f7', length: '30' }] },
};

/** The one-sentence refusal of a document. */
function refusal(document: unknown): string {
  try {
    readJob(document);
  } catch (error) {
    if (error instanceof InputError) return error.message;
    throw error;
  }
  return 'accepted';
}

const shank = (fields: object) => ({
  ...job,
  part: { name: 'Pin', outside: [{ id: 'shank', kind: 'cylinder', ...fields }] },
});

describe('a job document', () => {
  test('sizes are read with their tolerance, in millimetres', () => {
    const section = readJob(job).part?.outside[0];
    expect(section?.kind === 'cylinder' && section.diameter).toMatchObject({
      nominal: 12,
      tolerance: { toleranceClass: 'f7' },
    });
  });

  test('bare numbers of an inch job are inches', () => {
    const inch = readJob({ ...shank({ length: '1/2' }), units: 'in' });
    expect(inch.part?.outside[0]?.length?.nominal).toBe(12.7);
  });

  test.each([
    [{ diameter: 0 }, 'part.outside[0].diameter: got 0, expected'],
    [{ diameter: -4 }, 'part.outside[0].diameter: got -4, expected'],
    [{ diameter: 1e9 }, 'part.outside[0].diameter: got 1000000000, expected'],
    [{ diameter: 'NaN' }, 'part.outside[0].diameter: got "NaN", expected'],
    [{ diameter: '40 Q7' }, 'part.outside[0].diameter: got "40 Q7", expected'],
    [{ diameter: true }, 'part.outside[0].diameter: got true, expected a size, for example'],
    [{ diamater: 4 }, 'part.outside[0]: got'],
  ])('refuses %j with place, value and what was expected', (fields, says) => {
    expect(refusal(shank(fields))).toContain(says);
  });

  test('an unknown field is named', () => {
    expect(refusal({ ...job, colour: 'red' })).toContain('no field named colour');
  });

  test('an unknown kind lists the kinds there are', () => {
    expect(refusal({ ...job, part: { name: 'x', outside: [{ id: 'a', kind: 'sphere' }] } })).toContain('cylinder');
  });

  test.each([null, 4, 'job', [], {}])('%j is no job', (document) => {
    expect(refusal(document)).toContain('expected');
  });

  test('a workshop is not taken for a job', () => {
    expect(refusal({ ...job, sparewright: 'workshop' })).toContain('must be a job document');
  });

  test('a refusal is one line each and never longer than a screen', () => {
    const lines = refusal(shank({ diameter: 'x'.repeat(50), length: {} })).split('\n');
    expect(lines.length).toBe(2);
    for (const line of lines) expect(line.length).toBeLessThan(300);
  });

  test('broken JSON is refused with its line', () => {
    expect(() => parseJson('{\n"a": 1,\n}', 'job.json')).toThrow(/job\.json: got .*line 3/);
  });
});

describe('versions', () => {
  test('an earlier document is brought forward step by step', () => {
    const steps = [
      (d: Readonly<Record<string, unknown>>) => ({ ...d, title: `${d.name}` }),
      ({ title, ...rest }: Readonly<Record<string, unknown>>) => ({ ...rest, heading: title }),
    ];
    const old = { sparewright: 'job', version: 1, name: 'Pin' };
    expect(migrate('job', old, steps)).toEqual({ sparewright: 'job', version: 3, name: 'Pin', heading: 'Pin' });
    expect(migrate('job', { ...old, version: 2, title: 'T' }, steps)).toMatchObject({ version: 3, heading: 'T' });
  });

  test('a newer document is refused, not guessed at', () => {
    expect(refusal({ ...job, version: 2 })).toContain('newer program');
  });

  test('a version that is none is refused', () => {
    for (const version of [0, 1.5, '1', undefined])
      expect(refusal({ ...job, version })).toContain('a whole number from 1');
  });
});

test('the demonstration documents are read', () => {
  const read = (name: string) =>
    JSON.parse(readFileSync(new URL(`../../../../examples/${name}`, import.meta.url), 'utf8'));
  for (const name of ['valve-guide-pin', 'plunger', 'gland-spindle'])
    expect(readJob(read(`${name}.job.json`)).invented).toBe(true);
  expect(readWorkshop(read('bench-lathe.workshop.json')).lathe.drive.power).toBe(450);
});
