/** What a job's drawing sheet is told besides the part. */
import { type DrawingSettings, plainSettings } from '@sparewright/core/drawing/settings';
import type { Job } from '@sparewright/core/job/schema';

export function drawingSettings(job: Job): DrawingSettings {
  const { part, sheet, hazard } = job;
  return {
    paper: sheet?.paper ?? plainSettings.paper,
    projection: sheet?.projection ?? plainSettings.projection,
    decimalSign: sheet?.decimalSign ?? plainSettings.decimalSign,
    units: job.units,
    title: part?.name ?? job.title,
    partNumber: part?.number,
    material: part?.material,
    machine: job.machine?.name,
    drawnBy: sheet?.drawnBy,
    date: sheet?.date,
    scale: sheet?.scale,
    hazard: hazard === 'ordinary' ? undefined : hazard,
    invented: job.invented,
    generalTolerance: part?.generalTolerance,
    finish: part?.finish,
    edgeBreak: part?.edgeBreak,
  };
}
