/** What cannot be: features that contradict each other or leave no metal between them. */
import type { Finding } from '../finding.ts';
import { judgeNotTurned } from './feasible-not-turned.ts';
import { judgeThreads } from './feasible-threads.ts';
import { round, stop } from './finding-words.ts';
import { called } from './gaps.ts';
import type { Part } from './schema.ts';
import type { ToJudge } from './to-judge.ts';
import { thinnestWalls, type Wall } from './walls.ts';

/** Thinner than this is pointed out where the part does not say what it needs [mm]. */
const usualLeastWall = 0.5;

export function feasibility(judged: ToJudge): Finding[] {
  return [
    ...names(judged.part),
    ...holes(judged),
    ...walls(judged),
    ...judgeThreads(judged),
    ...judgeNotTurned(judged),
  ];
}

/** Everything of the part that has an id. */
function everything(part: Part) {
  return [
    ...part.outside,
    ...(part.inside?.left ?? []),
    ...(part.inside?.right ?? []),
    ...(part.grooves ?? []),
    ...(part.threads ?? []),
    ...(part.notTurned ?? []),
  ];
}

/** `the valve guide`, `the edge of the head`: what a segment of the outline belongs to, in words. */
function nameOf(part: Part, feature: string): string {
  const [id, edge] = feature.split('.');
  const found = everything(part).find((f) => f.id === id);
  return `${edge === undefined ? '' : 'the edge of '}the ${found ? called(found) : feature}`;
}

function names(part: Part): Finding[] {
  const all = everything(part);
  const ids = all.map((f) => f.id);
  const twice = [...new Set(ids.filter((id, i) => ids.indexOf(id) !== i))].map((id) =>
    stop(
      'part.id-used-twice',
      id,
      `More than one feature is called “${id}”; readings and sizes cannot be told apart.`,
      [{ what: `features called ${id}`, value: ids.filter((other) => other === id).length, unit: '', limit: 1 }],
      ['give each feature an id of its own'],
    ),
  );
  const sections = new Set(
    [...part.outside, ...(part.inside?.left ?? []), ...(part.inside?.right ?? [])].map((s) => s.id),
  );
  const stray = all.flatMap((f) =>
    'on' in f && !sections.has(f.on)
      ? [
          stop(
            'part.unknown-feature',
            `${f.id}.on`,
            `The ${called(f)} belongs on “${f.on}”, which is not a section of this part; it is left out of the drawing.`,
            [],
            [`choose one of: ${[...sections].join(', ') || 'no section is entered yet'}`],
          ),
        ]
      : [],
  );
  return [...twice, ...stray];
}

function holes({ part, built }: ToJudge): Finding[] {
  const { length } = built.outline;
  const { left, right } = built.reach;
  const found: Finding[] = built.missed.map((end) => {
    const sections = part.inside?.[end] ?? part.inside?.[end === 'left' ? 'right' : 'left'] ?? [];
    const face = end === 'left' ? built.outline.outside[0] : built.outline.outside.at(-1);
    const rim = face ? [face.from.r, face.to.r] : [0, 0];
    const [hole, outside] = end === 'left' ? rim : rim.toReversed();
    const first = sections[0];
    return stop(
      'part.bore-through-outside',
      first ? first.id : 'part.inside',
      `The hole in the ${end} end is wider than the end itself.`,
      [
        {
          what: 'diameter of the hole, against the end',
          value: round(2 * (hole ?? 0)),
          unit: 'mm',
          limit: round(2 * (outside ?? 0)),
        },
      ],
      ['make the hole smaller', `make the ${end} end larger`],
    );
  });
  for (const end of ['left', 'right'] as const) {
    for (const s of part.inside?.[end] ?? []) {
      if (s.depth === undefined || s.depth === 'through' || s.depth.nominal <= length + 1e-9) continue;
      found.push(
        stop(
          'part.bore-deeper-than-part',
          `${s.id}.depth`,
          `The ${called(s)} is deeper than the part is long.`,
          [{ what: 'depth, against the length of the part', value: s.depth.nominal, unit: 'mm', limit: round(length) }],
          ['make it less deep', 'enter “through” if it is to come out on the other side'],
        ),
      );
    }
  }
  const isMeant = [...(part.inside?.left ?? []), ...(part.inside?.right ?? [])].some(
    (s) => s.depth === 'through' || (s.depth !== undefined && s.depth.nominal >= length - 1e-9),
  );
  const web = length - left - right;
  const least = part.minimumWall ?? usualLeastWall;
  if (left > 0 && right > 0 && !built.outline.through && web < least - 1e-9) found.push(thinWeb(web, least, part));
  if (built.outline.through && !isMeant) {
    const both = left > 0 && right > 0;
    found.push(
      stop(
        'part.bores-meet',
        'part.inside',
        both
          ? 'The holes from the two ends meet, drill points included, though neither is entered as going through.'
          : 'The hole breaks out on the other side with the point of the drill, though it is not entered as going through.',
        [
          {
            what: both
              ? 'depth of both holes together, against the length'
              : 'depth with the point, against the length',
            value: round(left + right),
            unit: 'mm',
            limit: round(length),
          },
        ],
        [
          'make a hole less deep',
          'enter “through” as its depth if it is to go through',
          'give the bottom a flat or blunter point',
        ],
      ),
    );
  }
  return found;
}

function walls({ part, built, threads }: ToJudge): Finding[] {
  if (built.missed.length > 0) return [];
  const grooves = new Set((part.grooves ?? []).map((g) => g.id));
  const threadIds = new Set(threads.map((t) => t.id));
  const found: Finding[] = [];
  for (const wall of thinnestWalls(built.outline, threads)) {
    if (wall.distance <= 1e-9) {
      const kind =
        [wall.outer, wall.inner].find((f) => grooves.has(f)) ?? [wall.outer, wall.inner].find((f) => threadIds.has(f));
      const id =
        kind === undefined
          ? 'part.bore-through-outside'
          : grooves.has(kind)
            ? 'part.groove-deeper-than-wall'
            : 'part.thread-deeper-than-wall';
      if (!found.some((f) => f.id === id && f.at === (kind ?? wall.inner)))
        found.push(noWall(part, wall, id, kind ?? wall.inner));
    } else {
      const limit = part.minimumWall ?? usualLeastWall;
      if (wall.distance < limit - 1e-9) found.push(thin(part, { ...wall, at: wall.onB.z }, limit));
    }
  }
  return found;
}

function noWall(part: Part, wall: Wall, id: string, at: string): Finding {
  return stop(
    id,
    at,
    `Between ${nameOf(part, wall.outer)} and ${nameOf(part, wall.inner)} there is no metal left.`,
    [
      { what: 'position along the part at which they meet', value: round(wall.onB.z), unit: 'mm' },
      { what: 'wall', value: 0, unit: 'mm', limit: 0 },
    ],
    [
      'make the hole smaller or less deep',
      'make the outside larger',
      ...(id === 'part.bore-through-outside' ? [] : ['make the groove or thread shallower, or move it']),
    ],
  );
}

function thin(part: Part, wall: Omit<Wall, 'onA' | 'onB'> & { readonly at?: number }, limit: number): Finding {
  const isUsual = part.minimumWall === undefined;
  return {
    id: 'part.wall-too-thin',
    level: isUsual ? 'caution' : 'stop',
    stage: 'part',
    at: wall.inner,
    says: `The wall between ${nameOf(part, wall.outer)} and ${nameOf(part, wall.inner)} is only ${wall.distance.toFixed(2)} mm thick${isUsual ? '' : ', thinner than the part allows'}.`,
    because: [
      {
        what: isUsual
          ? 'wall, against what usually stands clamping and cutting (common practice)'
          : 'wall, against the least the part allows',
        value: round(wall.distance),
        unit: 'mm',
        limit: round(limit),
        ...(isUsual ? { source: 'thin-wall-practice' } : {}),
      },
      ...(wall.at === undefined ? [] : [{ what: 'position along the part', value: round(wall.at), unit: 'mm' }]),
    ],
    remedies: [
      'make the hole smaller or less deep',
      'make the outside larger',
      ...(isUsual ? ['enter the least wall the part needs'] : []),
    ],
  };
}

/** The metal between the bottoms of two holes. */
function thinWeb(web: number, limit: number, part: Part): Finding {
  const inner = part.inside?.right?.at(-1)?.id ?? 'part.inside';
  const outer = part.inside?.left?.at(-1)?.id ?? 'part.inside';
  return thin(part, { distance: web, outer, inner }, limit);
}
