/** Why a route is as it is, for a terminal: ways to hold the work against each other, and the reasons of every operation. */
import type { Job } from '@sparewright/core/job/schema';
import type { Workshop } from '@sparewright/core/lathe/schema';
import type { RouteResult } from '@sparewright/core/route/route-result';
import { presentProse } from '@sparewright/output/present/prose';
import { presentSettings } from '@sparewright/output/present/settings';
import type { Terminal } from '../terminal.ts';
import { paragraph } from './text.ts';

/** Those that are taken; with `all` the others too, and what makes up their cost. */
export function holdingLines(route: RouteResult, { width, ink }: Terminal, all: boolean): string[] {
  return route.setups.flatMap((setup) => {
    const own = route.holdings.filter((h) => h.setup === setup.id);
    const others = own.filter((h) => !h.taken).length;
    return own
      .filter((h) => all || h.taken)
      .flatMap((h) => [
        ...paragraph(`Setup ${setup.number}: ${h.how}${h.taken ? (all ? ' — taken' : moreWords(others)) : ''}`, {
          width,
          indent: 2,
          ink: h.taken ? ink.reset : ink.dim,
        }),
        ...(all ? h.why.flatMap((w) => paragraph(w, { width, indent: 4, mark: '· ' })) : []),
      ]);
  });
}

function moreWords(others: number): string {
  if (others === 0) return '; the only way there was to weigh';
  return `; cheapest of ${others + 1} ways in time and risk`;
}

export function reasonLines(route: RouteResult, job: Job, { width, ink }: Terminal): string[] {
  const settings = presentSettings(job);
  return route.operations.flatMap((o) => [
    ...paragraph(`${o.number} ${presentProse(o.title, settings)}`, { width, indent: 2, ink: ink.reset }),
    ...o.why.flatMap((w) => paragraph(presentProse(w, settings), { width, indent: 4, mark: '· ', ink: ink.dim })),
  ]);
}

/** What the owner named stands as he named it; the rest speaks the job's unit. */
export function layOutLines(
  route: RouteResult,
  job: Job,
  workshop: Workshop | undefined,
  { width }: Terminal,
): string[] {
  const settings = presentSettings(job);
  const named = new Set([...(workshop?.cutters ?? []), ...(workshop?.lathe.chucks ?? [])].map((t) => t.name));
  return route.needed.flatMap((n) =>
    paragraph(named.has(n) ? n : presentProse(n, settings), { width, indent: 2, mark: '☐ ' }),
  );
}
