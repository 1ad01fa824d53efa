/** Drags operations by pointer: mouse, pen or finger alike. The keyboard has its own ways. */
import { type DOMAttributes, type PointerEvent, type RefObject, useRef, useState } from 'react';
import { canMove, type Placed } from './order.ts';

export interface Drag {
  /** Place of what is dragged; undefined while nothing is. */
  readonly from: number | undefined;
  /** Place it would come to. */
  readonly to: number | undefined;
  handle(at: number): DOMAttributes<HTMLElement>;
}

/** Nearer to the upper or lower edge of the screen than this, the page goes along [px]. */
const nearEdge = 60;
const scrollStep = 14;

export function useDrag(
  operations: readonly Placed[],
  move: (from: number, to: number) => void,
): { readonly drag: Drag; readonly list: RefObject<HTMLElement | null> } {
  const list = useRef<HTMLElement>(null);
  const [{ from, to }, setDrag] = useState<{ from?: number; to?: number }>({});

  const placeUnder = (event: PointerEvent, at: number): number => {
    const rows = [...(list.current?.querySelectorAll<HTMLElement>('[data-place]') ?? [])];
    const under = rows.findLast((row) => row.getBoundingClientRect().top <= event.clientY) ?? rows[0];
    const place = Number(under?.dataset.place ?? at);
    return canMove(operations, at, place) ? place : at;
  };
  const handle = (at: number): DOMAttributes<HTMLElement> => ({
    onPointerDown: (event) => {
      if (event.button !== 0) return;
      event.preventDefault();
      event.currentTarget.setPointerCapture(event.pointerId);
      setDrag({ from: at, to: at });
    },
    onPointerMove: (event) => {
      if (from !== at) return;
      setDrag({ from, to: placeUnder(event, at) });
      // A list is longer than a screen.
      if (event.clientY < nearEdge) scrollBy(0, -scrollStep);
      if (event.clientY > innerHeight - nearEdge) scrollBy(0, scrollStep);
    },
    onPointerUp: (event) => {
      if (from !== at) return;
      const there = placeUnder(event, at);
      setDrag({});
      if (there !== at) move(at, there);
    },
    onPointerCancel: () => setDrag({}),
  });
  return { drag: { from, to, handle }, list };
}
