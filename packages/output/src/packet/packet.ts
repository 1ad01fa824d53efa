/** The packet for the workshop: everything a job has come to, as one PDF to print and write on. */
import { drawPartSheets } from '@sparewright/core/drawing/part-sheet';
import type { Scene } from '@sparewright/core/drawing/scene';
import { withTriedRemedies } from '@sparewright/core/job/tried';
import { drawingSettings } from '../present/drawing-settings.ts';
import { presentSettings } from '../present/settings.ts';
import type { PacketDocument, Sheet } from '../sheets/blocks.ts';
import { heading, lacking, words } from '../sheets/blocks.ts';
import type { PacketContext, PacketInput } from '../sheets/context.ts';
import { dutySheet } from '../sheets/duty.ts';
import { inspectionSheet, recordSheet } from '../sheets/inspection.ts';
import { type PrintedPhotographs, photographsOf, withoutPictures } from '../sheets/photographs.ts';
import { setupSheet } from '../sheets/setup.ts';
import { setupScene } from '../sheets/setup-sketch.ts';
import { sizesSheet } from '../sheets/sizes.ts';
import { noRoute, stockSheet } from '../sheets/stock.ts';
import { stopPointSheet } from '../sheets/stop-points.ts';
import { summarySheet } from '../sheets/summary.ts';
import { paintSvg } from '../svg/paint.ts';
import { splitPages } from './pages.ts';
import { printable, printableScene } from './printable.ts';
import { type Files, typeset, typesetPicture } from './typeset.ts';

export type { PacketInput } from '../sheets/context.ts';

export function makePacket(input: PacketInput): Uint8Array {
  return setWith(input, typeset);
}

/** The same packet as pictures, one a page. */
export function packetPages(input: PacketInput): string[] {
  return splitPages(setWith(input, typesetPicture));
}

/** A photograph that is damaged is told from a sound one only by the typesetter. */
function setWith<T>(input: PacketInput, set: (files: Files) => T): T {
  const context: PacketContext = {
    ...input,
    assessment: withTriedRemedies(input.assessment, input.workshop),
    settings: presentSettings(input.job),
  };
  const photographs = photographsOf(context);
  try {
    return set(packetFiles(context, photographs));
  } catch (error) {
    if (Object.keys(photographs.files).length === 0) throw error;
    return set(packetFiles(context, withoutPictures(photographs)));
  }
}

function packetFiles(context: PacketContext, photographs: PrintedPhotographs): Files {
  const pictures: Record<string, string> = {};
  const put = (file: string, scene: Scene): void => {
    pictures[file] = paintSvg(printableScene(scene));
  };
  const rest = gathered([
    ...drawingSheets(context, put),
    sizesSheet(context, put),
    dutySheet(context),
    stockSheet(context),
    ...setupSheets(context, put),
    stopPointSheet(context),
    inspectionSheet(context),
    recordSheet(context, photographs.blocks),
  ]);
  const { lost } = printable([summarySheet(context, ''), rest]);
  const document = printable(documentOf(context, [summarySheet(context, lostWords(lost)), ...rest])).value;
  return { ...pictures, ...photographs.files, 'packet.json': JSON.stringify(document) };
}

function documentOf({ job }: PacketContext, sheets: readonly Sheet[]): PacketDocument {
  const foot = [
    job.part?.number,
    job.hazard === 'ordinary' ? undefined : `hazard class: ${job.hazard}`,
    job.invented ? 'all figures invented' : undefined,
    job.sheet?.date,
  ];
  return {
    title: job.title,
    foot: foot.filter(Boolean).join(' · '),
    paper: job.sheet?.paper ?? 'A4',
    sheets: sheets.map(onPaper),
  };
}

/** Paper has no room for how each figure comes about; that is asked for on the screen. */
function onPaper(sheet: Sheet): Sheet {
  return sheet.kind === 'text' ? { ...sheet, blocks: sheet.blocks.filter(({ kind }) => kind !== 'why') } : sheet;
}

/** Sheets with nothing on them yet stand together on one, each with a sentence on what is missing. */
function gathered(sheets: readonly Sheet[]): Sheet[] {
  const empty = sheets.flatMap((s) => (s.kind === 'text' && s.lacks !== undefined ? [{ ...s, lacks: s.lacks }] : []));
  const full = sheets.filter((s) => s.kind === 'drawing' || s.lacks === undefined);
  if (empty.length === 0) return full;
  const blocks = empty.flatMap((s) => [heading(s.heading), words(s.lacks)]);
  return [...full, { kind: 'text', heading: 'Sheets that are still missing', blocks }];
}

function lostWords(lost: ReadonlySet<string>): string {
  if (lost.size === 0) return '';
  const codes = [...lost].map((c) => `U+${(c.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`);
  return `The face of this packet cannot print ${codes.join(', ')}; a question mark stands in the place of each.`;
}

function drawingSheets({ job, assessment }: PacketContext, put: (file: string, scene: Scene) => void): Sheet[] {
  if (!assessment.part || assessment.part.outside.length === 0)
    return [lacking('Drawing', 'No section of the part is entered yet, so there is nothing to draw.')];
  const scenes = drawPartSheets(assessment.part, drawingSettings(job));
  return scenes.map((scene, i) => {
    const file = `drawing-${i + 1}.svg`;
    put(file, scene);
    return {
      kind: 'drawing',
      heading: i === 0 ? 'Drawing' : `Drawing, sheet ${i + 1}`,
      file,
      describes: scene.description,
      landscape: scene.width > scene.height,
    };
  });
}

function setupSheets(context: PacketContext, put: (file: string, scene: Scene) => void): Sheet[] {
  const { part, route } = context.assessment;
  if (!part || !route || route.setups.length === 0) return [lacking('Setups and operations', noRoute(context))];
  return route.setups.map((setup) => {
    const scene = setupScene(setup, part, route, context.settings);
    const file = `setup-${setup.number}.svg`;
    put(file, scene);
    return setupSheet(setup, { file, describes: scene.description }, context);
  });
}
