import { expect, test } from 'vitest';
import { exampleJob, exampleWorkshop } from '../../test/examples.ts';
import { assess } from '../job/assess.ts';
import { withTriedRemedies } from '../job/tried.ts';
import { whatWouldHelp } from '../lathe/remedies.ts';
import { judgedCuts } from './judged-cuts.ts';
import { triedRemedies } from './tried-remedies.ts';

const workshop = exampleWorkshop();
const assessment = assess(exampleJob('gland-spindle'), workshop);
const { route, part } = assessment;
if (!route || !part) throw new Error('the spindle has a route');
const tried = triedRemedies(route, part, workshop);

test('a cut that sings names the limit with its number, and only remedies that the model finds to lower it, best first', () => {
  expect(tried.size).toBeGreaterThan(0);
  for (const [finding, words] of tried) {
    expect(finding.because[0]?.value).toBeGreaterThan(finding.because[0]?.limit ?? Number.POSITIVE_INFINITY);
    const cut = judgedCuts(route, part, workshop).find((c) => c.id === finding.at);
    if (!cut) throw new Error(`${finding.at} is no cut`);
    const { asItStands, remedies } = whatWouldHelp(cut, cut.material, workshop.lathe);
    const order = words.map((w) => remedies.findIndex((r) => w.startsWith(`${r.name} (${r.effort}): `)));
    expect(order.every((at) => at >= 0)).toBe(true);
    expect(order).toEqual(order.toSorted((a, b) => a - b));
    for (const at of order) expect(remedies[at]?.chatter).toBeLessThan(asItStands.chatter);
  }
});

test('a part without cuts beyond a limit asks for nothing', () => {
  expect(triedRemedies({ ...route, findings: [] }, part, workshop).size).toBe(0);
});

test('findings of the whole assessment say the same as those of the route, and the others stay as they are', () => {
  const whole = withTriedRemedies(assessment, workshop);
  expect(whole.findings.map((f) => f.id)).toEqual(assessment.findings.map((f) => f.id));
  const said = new Set(whole.route?.findings.map((f) => JSON.stringify(f)));
  for (const [i, f] of whole.findings.entries()) {
    const words = [...tried].find(([at]) => at === assessment.findings[i])?.[1];
    expect(f.remedies).toEqual(words ?? assessment.findings[i]?.remedies);
    if (words) expect(said.has(JSON.stringify(f))).toBe(true);
  }
  expect(withTriedRemedies(assessment, undefined)).toBe(assessment);
});
