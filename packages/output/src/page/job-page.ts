/** A job, its assessment and its drawing as the page shows them: whole, or part by part as the stages answer. */
import { drawPart } from '@sparewright/core/drawing/part-sheet';
import type { Answered, StagedAssessor } from '@sparewright/core/job/assess';
import type { Assessment } from '@sparewright/core/job/assessment';
import { memo } from '@sparewright/core/job/memo';
import type { Job } from '@sparewright/core/job/schema';
import type { Workshop } from '@sparewright/core/lathe/schema';
import type { PartResult } from '@sparewright/core/part/part-result';
import type { RecoverResult } from '@sparewright/core/recover/recover-result';
import { drawingSettings } from '../present/drawing-settings.ts';
import { findingView } from '../present/finding-view.ts';
import type { JobPage, StageName } from '../present/job-view.ts';
import { recoveredView } from '../present/recovered-view.ts';
import { type PresentSettings, presentSettings } from '../present/settings.ts';
import { presentStages } from '../present/stages.ts';
import { paintSvg } from '../svg/paint.ts';
import { routeView } from './route-view.ts';
import { sizeRows } from './size-rows.ts';
import { sheetsOf } from './stage-sheets.ts';

export interface Assessed {
  readonly document: unknown;
  readonly job: Job;
  readonly workshop: Workshop | undefined;
  readonly assessment: Assessment;
}

/** Some of what the page shows; what is not in it stays as it was. */
export type PageParts = Partial<Omit<JobPage, 'sheets'>> & { readonly sheets?: Partial<JobPage['sheets']> };

const names: Readonly<Record<StageName, string>> = {
  evidence: 'Evidence',
  part: 'Part',
  duty: 'Duty',
  route: 'Route',
  bench: 'Bench',
  inspection: 'Inspection',
  record: 'Record',
};

export function jobPage(
  { document, job, workshop, assessment }: Assessed,
  recovered: RecoverResult | undefined,
): JobPage {
  const settings = presentSettings(job);
  // The evidence screen shows the recovered design in its own way.
  const context = { job, workshop, assessment, recovered: undefined, settings };
  const sheets = sheetsOf(context);
  return {
    ...headOf(document, job),
    drawing: drawingOf(job, assessment.part, 'screen') ?? null,
    sizes: sizeRows(document, assessment.part?.dimensions ?? [], settings),
    spans: spansOf(assessment.part),
    ...foundIn(job, assessment, settings),
    sheets: {
      evidence: sheets.evidence(),
      part: sheets.part(),
      duty: sheets.duty(),
      route: sheets.route(),
      bench: sheets.bench(),
      inspection: sheets.inspection(),
      record: sheets.record(),
    },
    routing: routeView(context),
    recovered: recovered ? recoveredView(recovered, { document, job, assessment, settings }) : null,
  };
}

/**
 * What the page shows, the drawing first, each part as soon as it can be told. After each, it may be left off. The recovered
 * design is not among it: it takes as long as all the rest together, see recovered-part.ts.
 */
export type PageMaker = (document: unknown, job: Job, workshop: Workshop | undefined) => Generator<PageParts, void>;

/** @param staged  its memory is that of the page maker */
export function createPageMaker(staged: StagedAssessor): PageMaker {
  const drawn = memo(drawingOfPart);
  return function* (document, job, workshop) {
    const settings = presentSettings(job);
    const sheetsFrom = (assessment: Assessment) =>
      sheetsOf({ job, workshop, assessment, recovered: undefined, settings });

    function after({ stage, soFar }: Answered): PageParts {
      const sheets = sheetsFrom(soFar);
      if (stage === 'part')
        return {
          ...headOf(document, job),
          drawing: drawn(soFar.part, drawingSettings(job), 'screen') ?? null,
          sizes: sizeRows(document, soFar.part?.dimensions ?? [], settings),
          spans: spansOf(soFar.part),
          sheets: { part: sheets.part() },
        };
      if (stage === 'evidence') return { sheets: { evidence: sheets.evidence() } };
      // Of the later ones the sheets show findings, too, which are known at the end.
      return stage === 'duty' ? { sheets: { duty: sheets.duty() } } : {};
    }

    const stages = staged(job, workshop);
    let next = stages.next();
    for (; next.done !== true; next = stages.next()) yield after(next.value);
    const assessment = next.value;
    yield foundIn(job, assessment, settings);
    const sheets = sheetsFrom(assessment);
    yield {
      routing: routeView({ job, workshop, assessment, recovered: undefined, settings }),
      sheets: { route: sheets.route() },
    };
    yield { sheets: { bench: sheets.bench(), inspection: sheets.inspection(), record: sheets.record() } };
  };
}

function headOf(document: unknown, job: Job) {
  return {
    title: job.title,
    machine: machineWords(job),
    hazard: job.hazard,
    invented: job.invented ?? false,
    units: job.units,
    document,
  };
}

/** Where sections and grooves lie along the part. */
function spansOf(part: PartResult | undefined): JobPage['spans'] {
  const placed = part ? [...part.outside, ...part.inside, ...part.grooves] : [];
  return placed.map(({ feature, from, to }) => ({ feature: feature.id, from, to }));
}

/** The drawing; undefined while there is nothing to draw. */
export function drawingOf(job: Job, part: PartResult | undefined, theme: 'paper' | 'screen'): string | undefined {
  return drawingOfPart(part, drawingSettings(job), theme);
}

function drawingOfPart(
  part: PartResult | undefined,
  settings: ReturnType<typeof drawingSettings>,
  theme: 'paper' | 'screen',
): string | undefined {
  if (!part || part.outside.length === 0) return undefined;
  return paintSvg(drawPart(part, settings), { theme, interactive: theme === 'screen' });
}

/** What is known once every stage has answered. */
function foundIn(job: Job, assessment: Assessment, settings: PresentSettings) {
  return {
    stages: [
      ...presentStages(job, assessment).map(({ stage, stands }) => ({ stage, name: names[stage], stands })),
      { stage: 'record' as const, name: names.record, stands: 'packet ready to print' },
    ],
    findings: assessment.findings.map((f) => findingView(f, job, assessment, settings)),
    cautions: cautionsOf(assessment),
    missing: assessment.missing,
  };
}

function cautionsOf({ cautions }: Assessment): JobPage['cautions'] {
  const abouts = [...new Set(cautions.map((c) => c.about))];
  return abouts.map((about) => ({ about, lines: cautions.filter((c) => c.about === about).map((c) => c.says) }));
}

function machineWords({ machine }: Job): string {
  if (!machine) return 'not entered';
  const built = [machine.country, machine.decade === undefined ? undefined : `${machine.decade}s`].filter(Boolean);
  return built.length === 0 ? machine.name : `${machine.name} (${built.join(', ')})`;
}
