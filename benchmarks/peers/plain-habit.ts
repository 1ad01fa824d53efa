/** What people do without this tool: round the mean, take the usual class; for a thread, the nearest diameter. */
import { standardThreads } from '@sparewright/core/standards/threads/catalogue';
import type { Thread } from '@sparewright/core/standards/threads/thread';

const mmPerInch = 25.4;

/** Mean of the readings, rounded to the nearest half millimetre or thirty-second of an inch. */
export function roundedMean(readings: readonly number[], isInch: boolean): number {
  const mean = readings.reduce((a, b) => a + b, 0) / readings.length;
  const step = isInch ? mmPerInch / 32 : 0.5;
  return Math.round(mean / step) * step;
}

/** The same with the reading that has most metal left, as a careful person would. */
export function roundedBest(readings: readonly number[], isInch: boolean, isShaft: boolean): number {
  return roundedMean([isShaft ? Math.max(...readings) : Math.min(...readings)], isInch);
}

function ofSystem(isInch: boolean): Thread[] {
  return standardThreads().filter(
    (t) => (t.family === 'metric') !== isInch && t.family !== 'pipe-taper' && t.family !== 'npt',
  );
}

/** The listed thread of the system whose major diameter lies nearest; of several, the coarsest. */
export function nearestThread(crest: number, isInch: boolean): Thread | undefined {
  return ofSystem(isInch).toSorted(
    (a, b) => Math.abs(a.majorDiameter - crest) - Math.abs(b.majorDiameter - crest) || b.pitch - a.pitch,
  )[0];
}

/** With the pitch measured as well: nearest in both, each as a part of itself, the pitch counted four times. */
export function nearestByPitchToo(crest: number, pitch: number, isInch: boolean): Thread | undefined {
  const off = (t: Thread) => Math.abs(t.majorDiameter / crest - 1) + 4 * Math.abs(t.pitch / pitch - 1);
  return ofSystem(isInch).toSorted((a, b) => off(a) - off(b))[0];
}
