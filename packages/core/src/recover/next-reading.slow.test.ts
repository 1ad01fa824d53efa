import { expect, test } from 'vitest';
import type { Gauge } from '../evidence/schema.ts';
import { seeded } from '../numerics/seeded.ts';
import { recover } from './recover.ts';
import type { RecoverInput } from './recover-input.ts';
import type { Design, RecoverResult } from './recover-result.ts';

const gauges: Gauge[] = [{ id: 'm', name: 'micrometer', kind: 'outside micrometer', resolution: 0.01 }];
const features = [{ id: 'a.diameter', title: 'pin', kind: 'outside diameter' as const, role: 'sliding' as const }];

function ask(values: readonly [number, 'protected' | 'worn' | 'unsure'][]): RecoverResult {
  const readings = values.map(([value, condition], i) => ({
    id: `r${i}`,
    of: 'a.diameter',
    value,
    condition,
    gauge: 'm',
  }));
  const input: RecoverInput = { evidence: { readings }, gauges, features, machine: { country: 'Germany' } };
  return recover(input);
}

const entropy = (designs: readonly Design[]) =>
  -designs.reduce((sum, d) => sum + (d.probability > 0 ? d.probability * Math.log2(d.probability) : 0), 0);

test('the gain expected of a reading is, near enough, what such readings bring on the average', () => {
  const start: [number, 'worn' | 'unsure'][] = [
    [11.95, 'worn'],
    [11.962, 'unsure'],
  ];
  const now = ask(start);
  const [best] = now.next;
  const made = now.sizes[0]?.made[0];
  if (!best || !made) throw new Error('no reading proposed');
  // Sizes from the density of the size as made, readings on them with the micrometer's error.
  const random = seeded(5);
  const { from, step, values } = made.density;
  const total = values.reduce((a, b) => a + b, 0);
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const rounds = 300;
  let gained = 0;
  for (let i = 0; i < rounds; i++) {
    let left = random() * total;
    const at = values.findIndex((v) => {
      left -= v;
      return left <= 0;
    });
    const size = from + (at + random() - 0.5) * step;
    const then = ask([...start, [size + 0.0042 * normal(), 'protected']]);
    gained += entropy(now.sizes[0]?.designs ?? []) - entropy(then.sizes[0]?.designs ?? []);
  }
  // The gauge's own error is shared by old and new readings, which the forecast leaves out: a third either way.
  expect(gained / rounds).toBeGreaterThan(0.6 * best.gain);
  expect(gained / rounds).toBeLessThan(1.5 * best.gain);
});
