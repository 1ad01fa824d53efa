/** Threads that do not go with their section. */
import type { Finding } from '../finding.ts';
import { round, stop } from './finding-words.ts';
import { called } from './gaps.ts';
import type { PlacedThread } from './part-result.ts';
import type { PlacedSection } from './place-sections.ts';
import type { ToJudge } from './to-judge.ts';

export function judgeThreads({ part, sections, threads }: ToJudge): Finding[] {
  return threads.flatMap((placed) => {
    const section = sections.find((s) => s.feature.id === placed.on);
    const entered = part.threads?.find((t) => t.id === placed.id);
    if (!section || !entered) return [];
    const whole = section.to - section.from;
    const length = entered.length?.nominal ?? 0;
    return [
      ...(length > whole + 1e-9 ? [tooLong(placed, section, length, whole)] : []),
      ...(isTapered(placed) || isStraight(section) ? [] : [onTaper(placed, section)]),
      ...(isStraight(section) ? diameterDiffers(placed, section) : []),
    ];
  });
}

const isTapered = ({ thread }: PlacedThread) => thread.family === 'npt' || thread.family === 'pipe-taper';
const isStraight = (s: PlacedSection) => ['cylinder', 'drilled', 'bored', 'undercut'].includes(s.feature.kind);

function tooLong(placed: PlacedThread, section: PlacedSection, length: number, whole: number): Finding {
  return stop(
    'part.thread-longer-than-section',
    `${placed.id}.length`,
    `The thread ${placed.thread.designation} is longer than the ${called(section.feature)} that carries it.`,
    [{ what: 'length of thread, against the section', value: round(length), unit: 'mm', limit: round(whole) }],
    ['make the thread shorter', `make the ${called(section.feature)} longer`],
  );
}

function onTaper(placed: PlacedThread, section: PlacedSection): Finding {
  return stop(
    'part.thread-on-uneven-section',
    `${placed.id}.on`,
    `The parallel thread ${placed.thread.designation} needs a cylinder; the ${called(section.feature)} is none.`,
    [
      { what: 'diameter at the left end', value: round(2 * section.startRadius), unit: 'mm' },
      { what: 'diameter at the right end', value: round(2 * section.endRadius), unit: 'mm' },
    ],
    ['put it on a cylinder', 'choose a taper thread'],
  );
}

/** A blank may be a little under the major diameter, a hole a little over the minor: by a share of the pitch [common practice]. */
const share = { under: 0.2, over: 0.05, holeOver: 0.35, holeUnder: 0.05 } as const;

function diameterDiffers(placed: PlacedThread, section: PlacedSection): Finding[] {
  const { thread } = placed;
  const diameter = 2 * section.startRadius;
  const isExternal = placed.side === 'external';
  const wanted = isExternal ? thread.majorDiameter : thread.minorDiameter;
  const [low, high] = isExternal
    ? [wanted - share.under * thread.pitch, wanted + share.over * thread.pitch]
    : [wanted - share.holeUnder * thread.pitch, wanted + share.holeOver * thread.pitch];
  if (diameter >= low - 1e-9 && diameter <= high + 1e-9) return [];
  const what = isExternal ? 'major diameter' : 'hole before threading (minor diameter)';
  return [
    {
      id: 'part.thread-major-differs',
      level: 'caution',
      stage: 'part',
      at: `${placed.on}.diameter`,
      says: `The ${called(section.feature)} does not have the diameter of the thread ${thread.designation} on it.`,
      because: [
        {
          what: `diameter of the section, against the ${what}`,
          value: round(diameter),
          unit: 'mm',
          limit: round(wanted),
        },
      ],
      remedies: [
        `make the ${called(section.feature)} ${round(wanted)} mm`,
        'leave its diameter out: it follows from the thread',
        'check the designation of the thread',
      ],
    },
  ];
}
