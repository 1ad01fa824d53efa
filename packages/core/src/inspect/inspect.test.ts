import { describe, expect, test } from 'vitest';
import { exampleJob, exampleWorkshop } from '../../test/examples.ts';
import type { Reading } from '../evidence/schema.ts';
import { definePart } from '../part/define-part.ts';
import { inspect } from './inspect.ts';

const job = exampleJob('plunger');
if (!job.part) throw new Error('the example has a part');
const part = definePart(job.part);
const { gauges } = exampleWorkshop();

function inspected(...readings: Partial<Reading>[]) {
  const full = readings.map((r, i) => ({
    id: `i${i}`,
    of: 'body.diameter',
    value: 31.962,
    gauge: 'micrometer-50',
    ...r,
  }));
  return inspect(part, job.duty, gauges, { readings: full });
}

const body = (result: ReturnType<typeof inspect>) => result.rows.find((r) => r.dimension === 'body.diameter');

describe('inspection', () => {
  test('every size of the part has its row, unmeasured to begin with', () => {
    const { rows } = inspect(part, job.duty, gauges, undefined);
    expect(rows.map((r) => r.dimension)).toEqual(part.dimensions.map((d) => d.id));
    expect(new Set(rows.map((r) => r.decision))).toEqual(new Set(['not measured']));
  });

  test('the gauge with the smallest error that reaches the size is named', () => {
    expect(body(inspected())?.gauge).toBe('outside micrometer 25–50');
  });

  test('the acceptance limits lie within the limits by the guard band', () => {
    const row = body(inspected());
    expect(row?.acceptMax).toBeLessThan(row?.max ?? 0);
    expect(row?.acceptMin).toBeGreaterThan(row?.min ?? 0);
  });

  test('a reading in the middle conforms, one beyond the limits does not', () => {
    expect(body(inspected({}))?.decision).toBe('conforms');
    const out = inspected({ value: 31.93 });
    expect(body(out)?.decision).toBe('does not conform');
    expect(out.findings.map((f) => [f.id, f.level])).toContainEqual(['inspection.out-of-limits', 'stop']);
  });

  test('the worst place of a surface decides', () => {
    const row = body(inspected({ along: 5 }, { along: 40, value: 31.93 }));
    expect(row?.decision).toBe('does not conform');
    expect(row?.value).toBeCloseTo(31.93, 3);
  });

  test('a radius has no acceptance limits and raises no finding', () => {
    const row = inspected().rows.find((r) => r.dimension === 'seal-groove.floorRadius');
    expect(row?.acceptMax).toBeUndefined();
    expect(inspected().findings.filter((f) => f.at === 'seal-groove.floorRadius')).toEqual([]);
  });

  test('a pressure part is to be proved with liquid at one and a half times the pressure', () => {
    const test_ = inspected().proofTests.find((t) => t.id === 'pressure');
    expect(test_?.how).toContain('4.50 MPa');
    expect(test_?.how).toContain('Never test with compressed air');
  });
});
