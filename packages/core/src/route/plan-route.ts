/**
 * From bar to part: stock, setups, operations in a legal order, each with its cut and its table.
 */
import type { Finding } from '../finding.ts';
import type { Workshop } from '../lathe/schema.ts';
import type { PartResult } from '../part/part-result.ts';
import type { Second } from '../units/quantities.ts';
import type { Draft } from './draft.ts';
import { draftSetup } from './draft-setup.ts';
import {
  barFor,
  chuckFor,
  cutOff,
  firstHolding,
  type Holding,
  needsBlank,
  secondHolding,
  slender,
  takesCentre,
} from './hold.ts';
import { machiningOf } from './machining.ts';
import { setupHandling } from './practice.ts';
import { inOrder } from './precedence.ts';
import { type Realised, realise } from './realise.ts';
import type { RouteResult } from './route-result.ts';
import type { RouteWishes } from './schema.ts';
import { chooseStock } from './stock.ts';

/** A route for a part that has at least one section; undefined for an empty one. */
export function planRoute(
  part: PartResult,
  workshop: Workshop,
  wishes: RouteWishes | undefined,
): RouteResult | undefined {
  if (part.outside.length === 0 || part.outline.length <= 0) return undefined;
  const chuck = chuckFor(workshop.lathe, part.outline.largestDiameter, wishes?.chuck);
  if (!chuck) return undefined;
  const { stock, findings } = chooseStock(part, workshop, chuck, wishes, needsBlank(part, wishes));
  const first = firstHolding(part, workshop, chuck, stock.diameter, wishes);
  const second = secondHolding(part, workshop, first, wishes);
  const holdings = second ? [first, second] : [first];
  const ordered = inOrder(
    holdings.flatMap((h, i): Draft[] => draftSetup(part, h, workshop.drills, i === holdings.length - 1)),
    holdings.map((h) => h.setup.id),
  );
  const scene = { part, workshop, machining: part.material && machiningOf(part.material) };
  const realised: Realised[] = [];
  let work = barFor(part, first);
  for (const { operation, reasons } of ordered) {
    const holding = holdings.find((h) => h.setup.id === operation.setup) ?? first;
    if (holding === second && realised.at(-1)?.operation.setup === first.setup.id) work = cutOff(work, part);
    const done = realise(scene, operation, realised.length + 1, reasons, holding, work);
    realised.push(done);
    work = done.work;
  }
  const times = realised.map((r) => r.operation.time);
  const total = (key: 'low' | 'likely' | 'high'): Second =>
    times.reduce((sum, t) => sum + t[key], 0) + holdings.length * setupHandling;
  return {
    stock,
    setups: holdings.map((h) => h.setup),
    operations: realised.map((r) => r.operation),
    tables: realised.flatMap((r) => r.tables),
    time: { low: total('low'), likely: total('likely'), high: total('high') },
    needed: layOut(realised, workshop, holdings),
    findings: [...findings, ...holdingFindings(part, holdings, second), ...realised.flatMap((r) => r.findings)],
  };
}

function layOut(realised: readonly Realised[], workshop: Workshop, holdings: readonly Holding[]): string[] {
  return [
    ...new Set([
      ...holdings.map((h) => h.setup.chuck),
      ...(holdings.some((h) => h.setup.grip.protected)
        ? ['soft jaws, split bush or thin sheet to protect the grip', 'dial indicator on a stand']
        : []),
      ...(holdings.some((h) => h.setup.tailstock) ? [`${workshop.lathe.tailstock?.centre ?? 'dead'} centre`] : []),
      ...realised.flatMap((r) => r.needs),
    ]),
  ];
}

function holdingFindings(part: PartResult, holdings: readonly Holding[], second: Holding | undefined): Finding[] {
  const findings: Finding[] = [];
  if (!second)
    findings.push({
      id: 'route.nothing-to-grip',
      level: 'stop',
      stage: 'route',
      at: 'setup-2',
      says: 'No finished cylinder is long enough, and within the range of the chucks, to hold the part when it is turned round.',
      because: [{ what: 'length of the part', value: part.outline.length, unit: 'mm' }],
      remedies: [
        'Leave a stub to hold on and cut it off last',
        'Make a split bush or soft jaws for the part',
        'Turn it on a mandrel',
      ],
    });
  for (const holding of holdings) {
    const { setup } = holding;
    if (!setup.tailstock && slender(holding.sections, setup.endOut, holding.jaw))
      findings.push({
        id: 'route.slender-without-centre',
        level: 'caution',
        stage: 'route',
        at: setup.id,
        says: 'The work stands out further than three times its thickness without the tailstock: it will bend and sing.',
        because: [{ what: 'standing out', value: setup.out, unit: 'mm', source: 'common-practice' }],
        remedies: takesCentre(part, setup.endOut)
          ? ['Support the free end with the tailstock']
          : [
              'Leave a stub with a centre hole and cut it off last',
              'Turn it in short stretches, letting the bar out as you go',
              'Use a steady',
            ],
      });
    if (setup.tailstock)
      findings.push({
        id: 'route.centre-hole-stays',
        level: 'note',
        stage: 'route',
        at: setup.id,
        says: `A centre hole stays in the ${setup.endOut} end. If the original has none, leave a stub for it and cut the stub off last.`,
        because: [],
        remedies: [],
      });
    if (setup.grip.length < setup.grip.diameter / 2)
      findings.push({
        id: 'route.short-grip',
        level: 'caution',
        stage: 'route',
        at: setup.id,
        says: 'The jaws hold on less than half the diameter in length.',
        because: [
          {
            what: 'length of grip',
            value: setup.grip.length,
            unit: 'mm',
            limit: setup.grip.diameter / 2,
            source: 'common-practice',
          },
        ],
        remedies: [
          'Light cuts only',
          'Hold on a split bush that bears on more of the part',
          'Push the part against the jaw steps and support it with the tailstock',
        ],
      });
  }
  return findings;
}
