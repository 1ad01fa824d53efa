/** How a thread is drawn: crests thick as they are, roots as a thin line, the end of the full thread as a thick one. */
import type { PartResult, PlacedThread } from '../part/part-result.ts';
import type { Board } from './board.ts';
import { isOpen, type Opening, openings } from './cut-open.ts';
import { place, type View } from './view.ts';

export function drawThreads(board: Board, part: PartResult, view: View): void {
  const opened = openings(part);
  for (const thread of part.threads) {
    if (thread.side === 'external') drawExternal(board, part, thread, view, opened);
    else drawInternal(board, thread, view);
  }
}

function drawExternal(
  board: Board,
  part: PartResult,
  thread: PlacedThread,
  view: View,
  opened: readonly Opening[],
): void {
  const root = thread.thread.rootDiameterExternal / 2;
  const crest = thread.thread.majorDiameter / 2;
  for (const half of ['upper', 'lower'] as const) {
    const [a, b] = [place(view, { z: thread.from, r: root }, half), place(view, { z: thread.to, r: root }, half)];
    board.path(
      [
        { to: 'start', ...a },
        { to: 'line', ...b },
      ],
      'thin',
      thread.id,
    );
    board.edges.push({ a, b });
  }
  const end = thread.entersAt === 'left' ? thread.to : thread.from;
  if (end <= 1e-9 || end >= part.outline.length - 1e-9) return;
  const [a, b] = [
    place(view, { z: end, r: isOpen(opened, end) ? 0 : crest }),
    place(view, { z: end, r: crest }, 'lower'),
  ];
  board.path(
    [
      { to: 'start', ...a },
      { to: 'line', ...b },
    ],
    'outline',
    thread.id,
  );
  board.edges.push({ a, b });
}

/** In section the hole's edge is the crest, and the thin line lies in the material at the major diameter. */
function drawInternal(board: Board, thread: PlacedThread, view: View): void {
  const major = thread.thread.majorDiameter / 2;
  const [a, b] = [place(view, { z: thread.from, r: major }), place(view, { z: thread.to, r: major })];
  board.path(
    [
      { to: 'start', ...a },
      { to: 'line', ...b },
    ],
    'thin',
    thread.id,
  );
  board.edges.push({ a, b });
  const end = thread.entersAt === 'left' ? thread.to : thread.from;
  const [top, axis] = [place(view, { z: end, r: major }), place(view, { z: end, r: 0 })];
  board.path(
    [
      { to: 'start', ...top },
      { to: 'line', ...axis },
    ],
    'outline',
    thread.id,
  );
  board.edges.push({ a: top, b: axis });
}
