/** One operation in the list: its handle, its name that unfolds it, how it stands, and where it may be moved. */
import type { LevelName, OperationView } from '@sparewright/output/present/job-view';
import { type ComponentProps, type KeyboardEvent, useId, useLayoutEffect, useRef } from 'react';
import { levelMarks, levelWords } from '../parts/levels.ts';
import { OperationDetail } from './operation-detail.tsx';
import { canMove } from './order.ts';
import type { Drag } from './use-drag.ts';

interface Props extends ComponentProps<typeof OperationDetail> {
  readonly at: number;
  readonly drag: Drag;
  readonly isOpen: boolean;
  readonly toggle: () => void;
  /** It cuts what is chosen on the drawing. */
  readonly isChosen: boolean;
  readonly isKept: boolean;
  readonly move: (from: number, to: number) => void;
  readonly keep: () => void;
  readonly free: () => void;
}

export function OperationRow({ at, drag, isOpen, toggle, isChosen, isKept, move, keep, free, ...shown }: Props) {
  const { operation, route } = shown;
  const id = useId();
  const row = useRef<HTMLLIElement>(null);
  const name = useRef<HTMLButtonElement>(null);
  const held = useRef<Element | null>(null);
  const { operations } = route;
  const go = (to: number): void => {
    if (!canMove(operations, at, to)) return;
    held.current = document.activeElement;
    move(at, to);
  };
  const place = useRef(at);
  // The row is the same one at another place, once it is worked out anew; what had the focus gets it back.
  useLayoutEffect(() => {
    if (place.current === at) return;
    place.current = at;
    const before = held.current;
    held.current = null;
    if (!(before instanceof HTMLElement) || !row.current?.contains(before)) return;
    // Who went on to something else meanwhile stays there.
    if (document.activeElement !== document.body && document.activeElement !== before) return;
    before.focus({ preventScroll: true });
    if (document.activeElement !== before) name.current?.focus({ preventScroll: true });
    row.current.scrollIntoView({ block: 'nearest' });
  });
  const onKeyDown = (event: KeyboardEvent): void => {
    const step = { ArrowUp: -1, ArrowDown: 1 }[event.key];
    if (step === undefined || !event.altKey) return;
    event.preventDefault();
    go(at + step);
  };
  const tool = (words: string, to: number) => (
    <button
      type="button"
      disabled={!canMove(operations, at, to)}
      onClick={() => go(to)}
      aria-label={`${words}: ${operation.title}`}
    >
      {words}
    </button>
  );
  return (
    <li
      ref={row}
      data-place={at}
      className={[
        'op',
        isOpen ? 'open' : '',
        isChosen ? 'chosen' : '',
        operation.wish?.skipped ? 'left-out' : '',
        drag.from === at ? 'dragged' : '',
        drag.to === at && drag.from !== undefined && drag.from !== at
          ? at < drag.from
            ? 'drop-over'
            : 'drop-under'
          : '',
      ]
        .filter((c) => c !== '')
        .join(' ')}
    >
      <div className="op-row">
        <span className="handle" aria-hidden="true" title="Drag to another place" {...drag.handle(at)}>
          ⋮⋮
        </span>
        <span className="op-number">{operation.number}</span>
        <button
          ref={name}
          type="button"
          className="op-name"
          aria-expanded={isOpen}
          aria-controls={isOpen ? id : undefined}
          onClick={toggle}
          onKeyDown={onKeyDown}
        >
          {operation.title}
        </button>
        <span className="op-stands">
          <Stands operation={operation} isKept={isKept} />
        </span>
        <span className="op-time">
          {operation.time}
          {operation.cutter !== '' && <span className="secondary">{operation.cutter}</span>}
        </span>
      </div>
      {isOpen && (
        <div id={id}>
          <p className="op-tools">
            {tool('Earlier', at - 1)}
            {tool('Later', at + 1)}
            <button
              type="button"
              aria-pressed={isKept}
              onClick={isKept ? free : keep}
              aria-label={`${isKept ? 'Let it move' : 'Keep it here'}: ${operation.title}`}
            >
              {isKept ? 'Let it move' : 'Keep it here'}
            </button>
            <span className="secondary">Or drag it by its handle, or Alt and an arrow key on its name.</span>
          </p>
          <OperationDetail {...shown} />
        </div>
      )}
    </li>
  );
}

const weights: readonly LevelName[] = ['stop', 'caution'];

function Stands({
  operation: { wish, notices },
  isKept,
}: {
  readonly operation: OperationView;
  readonly isKept: boolean;
}) {
  const worst = weights.find((level) => notices.some((n) => n.level === level));
  const words = [
    ...(wish?.skipped ? ['left out'] : []),
    ...(wish && wish.instead !== '' ? ['done otherwise'] : []),
    ...(wish && wish.cutter !== '' ? ['own cutter'] : []),
    ...(wish && wish.infeed !== '' ? [wish.infeed === 'straight' ? 'fed straight' : 'fed along the flank'] : []),
    ...(isKept ? ['kept here'] : []),
  ];
  return (
    <>
      {words.length > 0 && <span className="op-wish">{words.join(', ')}</span>}
      {worst && (
        <span className={`op-found ${worst}`}>
          {levelMarks[worst]} {levelWords[worst]}
        </span>
      )}
    </>
  );
}
