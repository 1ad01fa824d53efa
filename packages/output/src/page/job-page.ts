/** A job, its assessment and its drawing as the page shows them. */
import { drawPart } from '@sparewright/core/drawing/part-sheet';
import type { Assessment } from '@sparewright/core/job/assessment';
import type { Job } from '@sparewright/core/job/schema';
import type { Workshop } from '@sparewright/core/lathe/schema';
import { drawingSettings } from '../present/drawing-settings.ts';
import { presentFinding } from '../present/finding.ts';
import type { FindingView, JobPage, StageName } from '../present/job-view.ts';
import { presentPlace } from '../present/place.ts';
import { type PresentSettings, presentSettings } from '../present/settings.ts';
import { presentStages } from '../present/stages.ts';
import { paintSvg } from '../svg/paint.ts';
import { sizeRows } from './size-rows.ts';
import { sheetsOf } from './stage-sheets.ts';

export interface Assessed {
  readonly document: unknown;
  readonly job: Job;
  readonly workshop: Workshop | undefined;
  readonly assessment: Assessment;
}

const names: Readonly<Record<StageName, string>> = {
  evidence: 'Evidence',
  part: 'Part',
  duty: 'Duty',
  route: 'Route',
  bench: 'Bench',
  inspection: 'Inspection',
  record: 'Record',
};

export function jobPage({ document, job, workshop, assessment }: Assessed): JobPage {
  const settings = presentSettings(job);
  return {
    title: job.title,
    machine: machineWords(job),
    hazard: job.hazard,
    invented: job.invented ?? false,
    units: job.units,
    document,
    drawing: drawingOf(job, assessment, 'screen') ?? null,
    sizes: sizeRows(document, assessment.part?.dimensions ?? [], settings),
    stages: [
      ...presentStages(job, assessment).map(({ stage, stands }) => ({ stage, name: names[stage], stands })),
      { stage: 'record', name: names.record, stands: 'packet ready to print' },
    ],
    findings: assessment.findings.map((f) => findingView(f, job, assessment, settings)),
    cautions: cautionsOf(assessment),
    missing: assessment.missing,
    sheets: sheetsOf({ job, workshop, assessment, settings }),
  };
}

/** The drawing; undefined while there is nothing to draw. */
export function drawingOf(job: Job, { part }: Assessment, theme: 'paper' | 'screen'): string | undefined {
  if (!part || part.outside.length === 0) return undefined;
  return paintSvg(drawPart(part, drawingSettings(job)), { theme, interactive: theme === 'screen' });
}

function findingView(
  finding: Assessment['findings'][number],
  job: Job,
  assessment: Assessment,
  settings: PresentSettings,
): FindingView {
  const { level, headline, because, remedies } = presentFinding(finding, settings);
  const operation = assessment.route?.operations.find((o) => o.id === finding.at);
  const mate = job.mates?.find((m) => m.id === finding.at);
  return {
    level,
    stage: finding.stage,
    where: presentPlace(finding.at, job, assessment),
    says: headline,
    because: because.map((b) => ({ text: b.text, source: b.source ?? '' })),
    remedies,
    marks: operation?.features ?? (mate?.with === undefined ? [finding.at] : [mate.with]),
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
