/** The recovered design for a terminal: size by size, the likeliest first, and what to measure next. */
import type { Job } from '@sparewright/core/job/schema';
import type { Interval } from '@sparewright/core/recover/posterior';
import type { CurveShape, RecoveredSize, RecoverResult } from '@sparewright/core/recover/recover-result';
import { presentLength } from '@sparewright/output/present/length';
import { presentSettings } from '@sparewright/output/present/settings';
import type { Terminal } from '../terminal.ts';
import { paragraph } from './text.ts';

/** Designs less likely than this are not worth a line. */
const leastShown = 0.03;
const mostDesigns = 3;
const mostNext = 5;

export function recoveredLines(result: RecoverResult, job: Job, terminal: Terminal): string[] {
  const { width, ink } = terminal;
  const { units, decimalSign } = presentSettings(job);
  const decimals = units === 'in' ? 4 : 3;
  const length = (mm: number) => presentLength(mm, units, decimalSign, decimals);
  const between = ({ low, high }: Interval) => `${length(low)} to ${length(high)}`;
  const heading = (text: string) => ['', ...paragraph(text, { width, ink: ink.bold })];
  const line = (text: string, mark = '· ') => paragraph(text, { width, indent: 2, mark });
  const named = (list: readonly { readonly name: string; readonly probability: number }[]) =>
    list
      .filter((d, i) => i === 0 || d.probability >= leastShown)
      .slice(0, mostDesigns)
      .map((d) => `${d.name} ${percent(d.probability)}`)
      .join(', ');

  const worn = ({ wear }: RecoveredSize): string[] =>
    wear.length === 0
      ? []
      : line(`worn by, reading by reading: ${wear.map((w) => `${w.reading} ${length(w.likely)}`).join(', ')}`);
  const size = (s: RecoveredSize): string[] => [
    ...heading(s.title),
    ...line(`designed as: ${named(s.designs.map((d) => ({ name: d.written, probability: d.probability })))}`),
    ...s.made.flatMap((m) =>
      line(
        `${m.specimen === '' ? '' : `${m.specimen}: `}${length(m.median)} as made; half likely ${between(m.half)}, with 95 % ${between(m.wide)}`,
      ),
    ),
    ...worn(s),
    ...s.limits
      .slice(0, 1)
      .flatMap((l) => line(`make the new one ${length(l.min)} to ${length(l.max)} (${l.written}): ${l.why}`)),
  ];
  return [
    ...heading(
      `The machine was drawn in inches with ${percent(result.inches)}, in millimetres with ${percent(1 - result.inches)}`,
    ),
    ...result.sizes.flatMap(size),
    ...result.threads.flatMap((t) => [
      ...heading(`thread ${t.of}`),
      ...line(named(t.designs.map((d) => ({ name: d.designation, probability: d.probability })))),
      ...(t.lookAlike === undefined ? [] : line(t.lookAlike)),
    ]),
    ...result.tapers.flatMap((t) => [
      ...heading(`cone ${t.of}`),
      ...line(`half angle ${degrees(t.halfAngle)} ± ${degrees(2 * t.uncertainty)}`),
      ...(t.matches.length === 0 ? [] : line(named(t.matches))),
    ]),
    ...result.curves.flatMap((c) => [
      ...heading(`curve ${c.of}`),
      ...line(named(c.shapes.map((s) => ({ name: curveName(s, length), probability: s.probability })))),
    ]),
    ...result.rings.flatMap((r) => [
      ...heading(`groove ${r.of}`),
      ...line(`${r.ring} ${percent(r.probability)}: ${r.why}`),
    ]),
    ...(result.next.length === 0 ? [] : heading('Worth measuring next')),
    ...result.next.slice(0, mostNext).flatMap((n) => line(n.says)),
  ];
}

function curveName({ shape, radius }: CurveShape, length: (mm: number) => string): string {
  const name = shape === 'free' ? 'free curve' : shape;
  return radius === undefined ? name : `${name} of radius ${length(radius)}`;
}

/** Nothing is quite certain, nor quite impossible. */
function percent(share: number): string {
  if (share > 0 && share < 0.01) return 'under 1 %';
  if (share < 1 && share > 0.99) return 'over 99 %';
  return `${Math.round(100 * share)} %`;
}

function degrees(radians: number): string {
  return `${((radians * 180) / Math.PI).toFixed(2)}°`;
}
