import { describe, expect, test } from 'vitest';
import { exampleJob, exampleWorkshop } from '../../test/examples.ts';
import type { Evidence, Gauge, Reading } from '../evidence/schema.ts';
import { definePart } from '../part/define-part.ts';
import { parseTolerancedSize } from '../standards/fits/toleranced-size.ts';
import type { RecoverFeature } from './features.ts';
import { recover } from './recover.ts';
import type { RecoverInput } from './recover-input.ts';
import type { RecoverResult } from './recover-result.ts';

const gauges: Gauge[] = [
  { id: 'm', name: 'micrometer', kind: 'outside micrometer', resolution: 0.01 },
  { id: 'b', name: 'bore gauge', kind: 'three-point bore gauge', resolution: 0.005 },
  { id: 'c', name: 'calliper', kind: 'calliper', resolution: 0.01 },
];
const guide: RecoverFeature = {
  id: 'guide.diameter',
  title: 'diameter of the guide',
  kind: 'outside diameter',
  role: 'sliding',
};

const read = (value: number, more: Partial<Reading> = {}): Omit<Reading, 'id'> => ({
  of: 'guide.diameter',
  gauge: 'm',
  value,
  condition: 'protected',
  ...more,
});

function ask(
  readings: Omit<Reading, 'id'>[],
  more: Partial<RecoverInput> = {},
  rest: Partial<Evidence> = {},
): RecoverResult {
  const evidence = { readings: readings.map((r, i) => ({ id: `r${i + 1}`, ...r })), ...rest };
  return recover({ evidence, gauges, features: [guide], machine: { country: 'Germany', decade: 1930 }, ...more });
}

const idsOf = (result: RecoverResult) => result.findings.map((f) => f.id);
const finite = (value: unknown): boolean =>
  typeof value === 'number'
    ? Number.isFinite(value)
    : typeof value === 'object' && value !== null
      ? Object.values(value).every(finite)
      : true;

describe('one size', () => {
  test('protected readings inside 12 f7 (11.966 to 11.984, ISO 286-1) rank it first for a sliding surface', () => {
    const [size] = ask([read(11.975), read(11.977)]).sizes;
    expect(size?.designs[0]).toMatchObject({ written: '12 f7' });
    expect(size?.designs[0]?.min).toBeCloseTo(11.966, 6);
    expect(size?.designs[0]?.max).toBeCloseTo(11.984, 6);
    expect(size?.limits[0]).toMatchObject({ kind: 'as made', min: 11.966, max: 11.984 });
  });

  test('worn readings alone put the size as made above them', () => {
    const [size] = ask([read(11.93, { condition: 'worn' }), read(11.91, { condition: 'worn' })]).sizes;
    expect(size?.made[0]?.wide.low).toBeGreaterThan(11.92);
    expect(size?.nominals[0]?.written).toBe('12');
  });

  test('a bore wears the other way', () => {
    const bore: RecoverFeature = { ...guide, kind: 'inside diameter' };
    const [size] = ask([read(12.06, { condition: 'worn', gauge: 'b' })], { features: [bore] }).sizes;
    expect(size?.isShaft).toBe(false);
    expect(size?.made[0]?.wide.high).toBeLessThan(12.08);
    expect(size?.nominals[0]?.written).toBe('12');
  });

  test('a plated place reads large: the size as made lies at or below it', () => {
    const [size] = ask([read(12.03, { condition: 'plated' }), read(12.035, { condition: 'plated' })]).sizes;
    expect(size?.made[0]?.median).toBeLessThan(12.03);
  });

  test('the same reading by calliper leaves a wider interval than by micrometer', () => {
    const width = (gauge: string) => {
      const wide = ask([read(11.97, { gauge })]).sizes[0]?.made[0]?.wide;
      return (wide?.high ?? 0) - (wide?.low ?? 0);
    };
    expect(width('c')).toBeGreaterThan(width('m'));
  });

  test('limits in a manual are believed unless the readings speak against them', () => {
    const manual = [{ of: 'guide.diameter', size: parseTolerancedSize('12 e8', 'mm') }];
    expect(ask([read(11.95)], {}, { manual }).sizes[0]?.designs[0]?.written).toBe('12 e8 as stated');
    expect(ask([read(11.992), read(11.993)], {}, { manual }).sizes[0]?.designs[0]?.written).not.toContain('e8');
  });

  test('limits in a manual and the same limits by class are one design', () => {
    // ISO 286-2: f7 over 10 to 18 mm is −16/−34 µm.
    const manual = [{ of: 'guide.diameter', size: parseTolerancedSize('12 -0.016/-0.034', 'mm') }];
    const limits = ask([read(11.975)], {}, { manual }).sizes[0]?.designs.map(({ min, max }) => `${min} ${max}`);
    expect(limits?.filter((l) => l === '11.966 11.984')).toHaveLength(1);
  });
});

describe('neighbours and mates', () => {
  test('inch neighbours turn a doubtful size to inches', () => {
    const features = ['a', 'b', 'c'].map((id): RecoverFeature => ({ ...guide, id: `${id}.diameter` }));
    const doubtful = read(15.87, { gauge: 'c' });
    const alone = ask([doubtful], { machine: undefined }).inches;
    const readings = [
      doubtful,
      read(9.51, { of: 'a.diameter' }),
      read(12.69, { of: 'b.diameter' }),
      read(7.92, { of: 'c.diameter' }),
    ];
    const together = ask(readings, { features: [guide, ...features], machine: undefined });
    expect(together.inches).toBeGreaterThan(Math.max(0.9, alone));
    expect(together.sizes[0]?.nominals[0]?.written).toBe('5/8 in');
  });

  test('the bore tells which nominal size a badly worn shaft had', () => {
    const mates = [{ id: 'bush', name: 'bush', kind: 'bore' as const, with: 'guide.diameter' }];
    const bore = [read(12.01, { of: 'bush.size', gauge: 'b' }), read(12.012, { of: 'bush.size', gauge: 'b' })];
    const shaft = [read(11.6, { condition: 'worn' })];
    const chance = (result: RecoverResult) =>
      result.sizes[0]?.nominals.find((n) => n.written === '12')?.probability ?? 0;
    expect(chance(ask([...shaft, ...bore], { mates }))).toBeGreaterThan(0.85);
    expect(chance(ask(shaft))).toBeLessThan(0.6);
  });

  test('two lands in one bore: the sound one and the bore tell what the worn one was', () => {
    const land: RecoverFeature = { ...guide, id: 'land.diameter', title: 'land' };
    const bore = { id: 'bush', name: 'bush', kind: 'bore' as const, with: 'guide.diameter' };
    const again = { ...bore, id: 'bush-2', with: 'land.diameter' };
    const readings = [
      read(11.6, { condition: 'worn' }),
      read(11.975, { of: 'land.diameter' }),
      read(11.977, { of: 'land.diameter' }),
      read(12.01, { of: 'bush.size', gauge: 'b' }),
    ];
    const chance = (mates: readonly object[], of: string) =>
      ask(readings, { features: [guide, land], mates: mates as (typeof bore)[] })
        .sizes.find((s) => s.of === of)
        ?.nominals.find((n) => n.written === '12')?.probability ?? 0;
    const linked = [bore, { ...again, sameAs: 'bush' }];
    expect(chance(linked, 'guide.diameter')).toBeGreaterThan(chance([bore], 'guide.diameter'));
    expect(chance(linked, 'land.diameter')).toBeGreaterThan(0.95);
    // The bore was measured once and counts for both entries.
    const both = ask(readings, { features: [guide, land], mates: linked });
    expect(both.sizes.map((s) => s.of).toSorted()).toEqual([
      'bush-2.size',
      'bush.size',
      'guide.diameter',
      'land.diameter',
    ]);
  });

  test('a mate that is only entered, not measured, still tells the nominal size', () => {
    const size = parseTolerancedSize('12 H8', 'mm');
    const mates = [{ id: 'bush', name: 'bush', kind: 'bore' as const, with: 'guide.diameter', size }];
    const [shaft] = ask([read(11.6, { condition: 'worn' })], { mates }).sizes;
    expect(shaft?.nominals[0]?.written).toBe('12');
    expect(shaft?.nominals[0]?.probability).toBeGreaterThan(0.85);
  });

  test('a machine from Germany whose sizes are all inches is remarked on', () => {
    const features = ['a', 'b', 'c', 'd'].map((id): RecoverFeature => ({ ...guide, id: `${id}.diameter` }));
    const values = [9.515, 12.69, 7.928, 15.865];
    const readings = values.map((v, i) => read(v, { of: `${'abcd'[i]}.diameter` }));
    expect(idsOf(ask(readings, { features }))).toContain('evidence.other-system');
  });

  test('a worn bore calls for a new part matched to it', () => {
    const wanted = { least: 0.01, most: 0.05 };
    const mates = [{ id: 'bush', name: 'bush', kind: 'bore' as const, with: 'guide.diameter', wanted }];
    const bore = [12.09, 12.1].map((v) => read(v, { of: 'bush.size', gauge: 'b', condition: 'worn' }));
    const [size] = ask([read(11.975), read(11.977), ...bore], { mates }).sizes;
    expect(size?.limits[0]?.kind).toBe('matched to the mate');
    expect(size?.limits[0]?.max).toBeCloseTo(12.09 - wanted.least, 3);
  });

  test('a BSF thread, 16 to the inch with flanks of 55°, speaks for inches', () => {
    const pitch: Omit<Reading, 'id'> = { of: 'screw.pitch', gauge: 'c', value: 15.88, crests: 10 };
    const crest: Omit<Reading, 'id'> = { of: 'screw.crest', gauge: 'm', value: 12.65, condition: 'protected' };
    const result = ask([crest, pitch], { machine: undefined }, { flankAngles: [{ of: 'screw', angle: 55 }] });
    expect(result.threads[0]?.designs[0]?.designation).toBe('1/2 BSF');
    expect(result.inches).toBeGreaterThan(0.85);
  });
});

describe('bad input stays sane and is said', () => {
  test('no evidence: nothing recovered, nothing wrong', () => {
    expect(recover({ evidence: undefined, gauges: [] })).toMatchObject({ sizes: [], threads: [], findings: [] });
  });

  test('one reading is enough for an answer', () => {
    const result = ask([read(11.97)]);
    expect(result.sizes[0]?.designs.length).toBeGreaterThan(0);
    expect(finite(result.sizes)).toBe(true);
  });

  test('a reading 25.4 times off is named as a wrong unit and left out', () => {
    const result = ask([read(11.975), read(11.977), read(304.2)]);
    expect(idsOf(result)).toContain('evidence.wrong-unit');
    expect(result.findings.find((f) => f.id === 'evidence.wrong-unit')?.at).toBe('r3');
    expect(result.sizes[0]?.nominals[0]?.written).toBe('12');
  });

  test('two readings 25.4 times apart and nothing to tell which is right: said, and neither used', () => {
    const result = ask([read(12), read(304.8)]);
    expect(idsOf(result)).toContain('evidence.wrong-unit');
    expect(result.sizes).toEqual([]);
  });

  test('two protected readings that contradict each other are named', () => {
    const result = ask([read(11.975), read(11.8)]);
    const finding = result.findings.find((f) => f.id === 'evidence.readings-contradict');
    expect(finding?.says).toContain('cannot both be right');
    expect(finite(result.sizes)).toBe(true);
  });

  test('a worn place with more metal than the unworn one is named', () => {
    expect(idsOf(ask([read(11.9), read(11.97, { condition: 'worn' })]))).toContain('evidence.readings-contradict');
  });

  test('the same place measured twice counts once', () => {
    const at = { along: 5, angle: 0, condition: 'worn' as const };
    const result = ask([read(11.95, at), read(11.952, at)]);
    expect(idsOf(result)).toContain('evidence.same-place-twice');
    expect(result.sizes[0]?.wear).toHaveLength(2);
  });

  test('readings of damaged places alone: said', () => {
    const result = ask([read(11.9, { condition: 'damaged' })]);
    expect(idsOf(result)).toContain('evidence.nothing-to-go-by');
    expect(result.sizes).toEqual([]);
  });

  test('wear larger than the part, a size of nought, a size of kilometres: finite answers all the same', () => {
    for (const values of [
      [12, 0.5],
      [0, 0],
      [1e6, 1e6],
      [2999, 2999.5],
      [0.02, 0.02],
      [12, 11, 10, 9, 8, 7],
    ]) {
      const result = ask(values.map((v) => read(v, { condition: 'worn' })));
      expect(finite(result), `${values}`).toBe(true);
    }
  });

  test('readings of a thread that is not there, and of unknown sizes, are taken for what their names say', () => {
    const result = ask([
      read(8.1, { of: 'some-bore.diameter', gauge: 'c' }),
      read(3.1, { of: 'slot.width', gauge: 'c' }),
    ]);
    expect(result.sizes.map((s) => s.isShaft)).toEqual([false, false]);
  });
});

describe('the demonstration jobs', () => {
  const workshop = exampleWorkshop();
  const of = (name: 'valve-guide-pin' | 'plunger' | 'gland-spindle') => {
    const job = exampleJob(name);
    return recover({
      evidence: job.evidence,
      gauges: workshop.gauges ?? [],
      part: job.part && definePart(job.part),
      mates: job.mates,
      machine: job.machine,
    });
  };

  test('the German pin is metric, its guide 6 f7, its lands 14 and 10', () => {
    const result = of('valve-guide-pin');
    expect(result.inches).toBeLessThan(0.01);
    const first = (id: string) => result.sizes.find((s) => s.of === id)?.nominals[0]?.written;
    expect(result.sizes.find((s) => s.of === 'guide.diameter')?.designs[0]?.written).toBe('6 f7');
    expect([first('upper-land.diameter'), first('lower-land.diameter')]).toEqual(['14', '10']);
  });

  test('the English spindle is in inches, and its pitch is what to measure next', () => {
    const result = of('gland-spindle');
    expect(result.inches).toBeGreaterThan(0.99);
    expect(result.sizes.find((s) => s.of === 'gland-length.diameter')?.nominals[0]?.written).toBe('3/8 in');
    expect(result.next[0]?.says).toContain('pitch');
  });

  test('every answer is finite and every probability a share', () => {
    for (const name of ['valve-guide-pin', 'plunger', 'gland-spindle'] as const) {
      const result = of(name);
      expect(finite(result)).toBe(true);
      for (const { designs } of result.sizes) {
        const total = designs.reduce((sum, d) => sum + d.probability, 0);
        expect(total).toBeLessThanOrEqual(1 + 1e-9);
        expect(total).toBeGreaterThan(0.5);
      }
    }
  });
});
