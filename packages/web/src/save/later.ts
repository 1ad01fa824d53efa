/** Work that is put off, one of each kind at a time. */

export interface Later {
  /**
   * Does a kind of work after a delay [ms]. A later one takes the place of an earlier one that is not done yet, but puts the work off
   * no longer than `most` since the first of them [ms].
   */
  in(delay: number, what: string, work: () => void, most?: number): void;
  isPlanned(what: string): boolean;
  /** Leaves it until it is planned anew, when it still counts as put off. */
  hold(what: string): void;
  /** Leaves it for good. */
  drop(what: string): void;
  /** Leaves all of it; nothing can be planned any more. */
  close(): void;
}

export function openLater(): Later {
  const timers = new Map<string, ReturnType<typeof setTimeout>>();
  /** When what is put off was planned first. */
  const since = new Map<string, number>();
  let closed = false;

  function hold(what: string): void {
    clearTimeout(timers.get(what));
    timers.delete(what);
  }

  return {
    in(delay, what, work, most = Number.POSITIVE_INFINITY) {
      hold(what);
      if (closed) return;
      const now = performance.now();
      const first = since.get(what) ?? now;
      since.set(what, first);
      const begin = (): void => {
        timers.delete(what);
        since.delete(what);
        work();
      };
      timers.set(what, setTimeout(begin, Math.max(0, Math.min(delay, first + most - now))));
    },
    isPlanned: (what) => timers.has(what),
    hold,
    drop(what) {
      hold(what);
      since.delete(what);
    },
    close() {
      closed = true;
      for (const what of [...timers.keys()]) hold(what);
    },
  };
}
