/** One sheet for each setup: how the work is held, then every operation in order with its table. */
import type { StopPoint } from '@sparewright/core/bench/bench-result';
import type { CutNumbers, Operation, Setup } from '@sparewright/core/route/route-result';
import { type Mm, mmPerInch } from '@sparewright/core/units/quantities';
import { presentSize } from '../present/length.ts';
import { presentNumber, presentShare } from '../present/number.ts';
import { presentPlace } from '../present/place.ts';
import { presentProse } from '../present/prose.ts';
import { presentQuantity } from '../present/quantity.ts';
import type { PresentSettings } from '../present/settings.ts';
import { presentLearned, presentTime } from '../present/time.ts';
import { type Block, type FactRow, heading, type Sheet, words } from './blocks.ts';
import type { PacketContext } from './context.ts';
import { dialBlock } from './dial.ts';
import { findingBlock } from './finding-block.ts';

/** File name of the sketch of a setup, and what it shows. */
export interface Sketch {
  readonly file: string;
  readonly describes: string;
}

export function setupSheet(setup: Setup, sketch: Sketch, context: PacketContext): Sheet {
  const { route, findings } = context.assessment;
  const operations = route?.operations.filter((o) => o.setup === setup.id) ?? [];
  return {
    kind: 'text',
    heading: `Setup ${setup.number}: ${presentProse(setup.title, context.settings)}`,
    blocks: [
      { kind: 'picture', ...sketch, height: 85 },
      words('Numbers in the sketch are those of the operations.', 'pencil'),
      { kind: 'facts', rows: holding(setup, context), columns: 2 },
      ...(setup.cautions.length > 0
        ? [{ kind: 'notice' as const, title: 'Caution: this setup', lines: setup.cautions }]
        : []),
      ...findings.filter((f) => f.at === setup.id).map((f) => findingBlock(f, context, 'clear')),
      ...(setup.why.length > 0
        ? [
            {
              kind: 'list' as const,
              items: setup.why.map((w) => presentProse(w, context.settings)),
              mark: 'dash' as const,
            },
          ]
        : []),
      heading('Operations, in this order'),
      ...operations.map((o) => operationBlock(o, context)),
    ],
  };
}

function holding(setup: Setup, { job, assessment, settings }: PacketContext): FactRow[] {
  const { grip, held, drive } = setup;
  const centres = held === 'between centres';
  const moment = (value: number) => `${presentNumber(value / 1000, settings.decimalSign, 1)} N·m`;
  const over = `${presentPlace(grip.on, job, assessment)}, Ø${presentSize(grip.diameter, settings)} over ${presentSize(grip.length, settings)}`;
  const between = grip.with === undefined ? '' : `, ${grip.with === 'mandrel' ? 'on a mandrel' : `with ${grip.with}`}`;
  return [
    { what: centres ? 'Driven by' : 'Chuck', is: centres ? `${setup.chuck} and dog` : setup.chuck },
    { what: centres ? 'Dog' : 'Grip', is: `${over}${between}` },
    {
      what: centres ? 'Between centres' : 'End out',
      is: centres
        ? `${presentSize(setup.out, settings)}, ${setup.endOut} end at the tailstock`
        : `${setup.endOut} end, ${presentSize(setup.out, settings)} from the jaws`,
    },
    { what: 'Tailstock', is: setup.tailstock ? `supports the ${setup.mandrel ? 'mandrel' : 'free end'}` : 'not used' },
    { what: 'Dial in to', is: dialInWords(setup, settings) },
    ...(setup.gripNeeded === undefined
      ? []
      : [{ what: 'Grip needed', is: `${presentNumber(setup.gripNeeded / 1000, settings.decimalSign, 1)} kN in all` }]),
    ...(drive?.asked === undefined
      ? []
      : [{ what: 'Slips at', is: `${moment(drive.holds)}; the cuts ask ${moment(drive.asked)}, with safety` }]),
    { what: 'Run-out found', is: '' },
  ];
}

function dialInWords({ held, dialIn }: Setup, settings: PresentSettings): string {
  if (held === 'between centres') return 'nothing: it runs on its centres';
  if (held === 'on a mandrel') return 'nothing: the mandrel is turned in place';
  return dialIn === undefined ? 'as the chuck holds' : `${presentSize(dialIn, settings)} total run-out`;
}

function operationBlock(operation: Operation, context: PacketContext): Block {
  const { settings, assessment } = context;
  const tables = assessment.route?.tables.filter((t) => t.operation === operation.id) ?? [];
  const stop = assessment.bench.stopPoints.find((s) => s.operation === operation.id);
  return {
    kind: 'operation',
    number: String(operation.number),
    title: `${presentProse(operation.title, settings)}${wishWords(operation)}`,
    time: presentLearned(presentTime(operation.time.likely), operation.planned, operation.learnedFrom),
    cutter: operation.cutter ?? '',
    numbers: operation.cut ? cutNumbers(operation, operation.cut, settings) : [],
    cautions: operation.cautions.map((c) => presentProse(c, settings)),
    findings: assessment.findings.filter((f) => f.at === operation.id).map((f) => findingBlock(f, context, 'clear')),
    aim: stop ? aimWords(stop, settings) : '',
    why: operation.why.map((w) => presentProse(w, settings)),
    tables: tables.map((t, i) =>
      dialBlock(t, `${operation.number}${tables.length > 1 ? ('abcdefgh'[i] ?? '') : ''}`, settings),
    ),
  };
}

/** What the person wanted otherwise, behind the title. */
function wishWords({ wish }: Operation): string {
  if (wish?.skipped) return ' — left out';
  return wish?.instead === undefined ? '' : ` — instead: ${wish.instead}`;
}

function aimWords(stop: StopPoint, settings: PresentSettings): string {
  const decimals = settings.units === 'in' ? 4 : 3;
  const leave = stop.leave === 0 ? '' : `, leaving ${presentSize(stop.leave, settings, decimals)} for abrasive paper`;
  return `Aim the last cut at ${presentSize(stop.stopAt, settings, decimals)}${leave}; the stop point is on the sheet “Coming to size”.`;
}

function cutNumbers({ kind }: Operation, cut: CutNumbers, settings: PresentSettings): FactRow[] {
  const { decimalSign } = settings;
  // A face gives way along the spindle, and so do the steps of a curve, which are cut like faces.
  const gives = kind === 'face' || kind === 'turn curve' ? 'gives way, on length' : 'gives way, on dia.';
  const whole = (value: number) => presentNumber(value, decimalSign, 0);
  return [
    { what: 'speed', is: `${whole(cut.speed)} rpm` },
    { what: 'cutting speed', is: presentQuantity(cut.cuttingSpeed, 'm/min', settings, cut.cuttingSpeed < 10 ? 1 : 0) },
    { what: cut.byHand ? 'feed by hand' : 'feed', is: presentQuantity(cut.feed, 'mm/rev', settings) },
    { what: 'depth', is: presentQuantity(cut.depth, 'mm', settings) },
    { what: 'passes', is: whole(cut.passes) },
    { what: 'cutting force', is: `${whole(cut.cuttingForce)} N` },
    { what: 'pushes away', is: `${whole(cut.radialForce)} N` },
    { what: 'power', is: `${whole(cut.power)} W, ${presentShare(cut.powerShare, decimalSign)}` },
    { what: gives, is: bendingWords(cut.bending, settings) },
    ...(cut.sings === undefined ? [] : [{ what: 'chance of singing', is: presentShare(cut.sings, decimalSign) }]),
  ];
}

/** Less than the last place shown is said to be so, not shown as nought. */
function bendingWords(bending: Mm, settings: PresentSettings): string {
  const last = settings.units === 'in' ? mmPerInch / 10_000 : 0.001;
  return bending < last / 2
    ? `< ${presentQuantity(last, 'mm', settings, 3)}`
    : presentQuantity(bending, 'mm', settings, 3);
}
