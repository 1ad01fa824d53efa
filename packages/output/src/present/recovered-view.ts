/** What the readings say the part was meant to be, size by size and shape by shape: finished words and pictures for the evidence screen. */
import type { RecoverResult } from '@sparewright/core/recover/recover-result';
import { featurePlaces } from './document-places.ts';
import { findingView } from './finding-view.ts';
import type { RecoveredView } from './job-view.ts';
import { presentProse } from './prose.ts';
import type { RecoveredFrom, ViewContext } from './recovered-context.ts';
import { curveViews } from './recovered-curves.ts';
import { shapeViews } from './recovered-shapes.ts';
import { sizeView } from './recovered-size.ts';
import type { PresentSettings } from './settings.ts';
import { sureness } from './size-line.ts';

/** @param result  the recovered design */
export function recoveredView(result: RecoverResult, from: RecoveredFrom): RecoveredView {
  const context: ViewContext = { ...from, places: featurePlaces(from.document) };
  const { job, assessment, settings } = from;
  const readings = new Map((job.evidence?.readings ?? []).map((r) => [r.id, r.of]));
  const conflicts = result.findings.map((f) => ({
    of: readings.get(f.at) ?? f.at,
    view: findingView(f, job, assessment, settings),
  }));
  const features = [
    ...result.sizes.map((s) => sizeView(s, context)),
    ...shapeViews(result, context),
    ...curveViews(result, context),
  ].map((f) => ({
    ...f,
    conflicts: conflicts.filter((c) => c.of === f.of).map((c) => c.view),
  }));
  const shown = new Set(features.map((f) => f.of));
  return {
    habit: habitWords(result, settings),
    features,
    next: result.next.slice(0, mostNext).map((n) => presentProse(n.says, settings)),
    conflicts: conflicts.filter((c) => !shown.has(c.of)).map((c) => c.view),
  };
}

const mostNext = 3;

function habitWords({ inches, shaftBasis }: RecoverResult, settings: PresentSettings): string {
  const isInch = inches > 0.5;
  const [unit, basis] = [isInch ? inches : 1 - inches, shaftBasis > 0.5 ? shaftBasis : 1 - shaftBasis];
  return `Drawn in ${isInch ? 'inches' : 'millimetres'} (${sureness(unit, settings)}), its fits ${shaftBasis > 0.5 ? 'on plain shafts' : 'on plain holes'} (${sureness(basis, settings)}), by all sizes and threads together.`;
}
