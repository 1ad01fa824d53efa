import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { exampleWorkshop } from '../../test/examples.ts';
import { assess } from './assess.ts';
import { readJob } from './read-document.ts';
import { newJob, shapes } from './templates.ts';

const workshop = exampleWorkshop();
const start = { title: 'Part of a pump', machine: 'Pump', units: 'mm', hazard: 'ordinary' } as const;

describe('a new job', () => {
  test.each([
    ['pin', 60, 16],
    // In a thinner one the hole is too small for the boring bars of that workshop, which is then said.
    ['plunger', 48, 32],
    ['bush', 30, 22],
    ['spindle', 90, 14],
    ['plug', 30, 18],
  ] as const)(
    '%s: reads as a job, is drawn, and nothing stops it on the demonstration lathe',
    (shape, longest, thickest) => {
      const job = readJob(newJob({ ...start, shape, longest, thickest }));
      const { part, findings } = assess(job, workshop);
      expect(findings.filter((f) => f.level === 'stop')).toEqual([]);
      expect(part?.outside.length).toBeGreaterThan(0);
    },
  );

  test.each(shapes)('%s: is as long and as thick as was said, in either unit, whatever the sizes', (shape) => {
    const length = fc.double({ min: 8, max: 250, noNaN: true });
    fc.assert(
      fc.property(length, fc.double({ min: 4, max: 80, noNaN: true }), fc.constantFrom('mm', 'in'), (l, d, units) => {
        const job = readJob(newJob({ ...start, units, shape, longest: l, thickest: d }));
        const { part, findings } = assess(job, undefined);
        expect(findings.filter((f) => f.level === 'stop')).toEqual([]);
        const diameters = (job.part?.outside ?? []).map((s) => ('diameter' in s ? (s.diameter?.nominal ?? 0) : 0));
        const lengths = (job.part?.outside ?? []).map((s) => s.length?.nominal ?? 0);
        expect(Math.max(...diameters)).toBeCloseTo(d, 2);
        // Each length is rounded to what one would type: 0.05 mm or 0.005 in off at most.
        expect(Math.abs(lengths.reduce((sum, x) => sum + x, 0) - l)).toBeLessThanOrEqual(lengths.length * 0.13);
        expect(part?.outside.length).toBeGreaterThan(0);
      }),
      { numRuns: 40 },
    );
  });

  test('only what was given is drawn in ink: all other sizes are proportions, left open', () => {
    const pin = readJob(newJob({ ...start, shape: 'pin', longest: 60, thickest: 16 }));
    expect(pin.part?.leftOpen).toEqual(['head.length', 'shank.diameter', 'shank.length']);
    const { part } = assess(pin, undefined);
    expect(part?.complete).toBe(false);
    expect(
      part?.findings
        .filter((f) => f.id === 'part.size-open')
        .map((f) => f.at)
        .toSorted(),
    ).toEqual(pin.part?.leftOpen?.toSorted());
    const plunger = readJob(newJob({ ...start, shape: 'plunger', longest: 48, thickest: 32 }));
    expect(plunger.part?.leftOpen).toEqual(['cavity.diameter', 'cavity.depth']);
  });

  test('no machine and an over-long title still make a job', () => {
    const job = readJob(
      newJob({ ...start, title: 'x'.repeat(160), machine: '', shape: 'pin', longest: 60, thickest: 16 }),
    );
    expect(job.machine).toBeUndefined();
    expect(job.part?.name.length).toBe(120);
  });
});
