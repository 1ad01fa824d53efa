/** Keeps the screen from going dark while the log is open at the machine. */
import { useEffect, useState } from 'react';

/** `not offered`: browsers let only pages of this computer itself, or of a secure address, keep the screen awake. */
export type Awake = 'awake' | 'asleep' | 'not offered';

export function useStayAwake(wanted: boolean): Awake {
  const [awake, setAwake] = useState<Awake>('asleep');
  useEffect(() => {
    if (!wanted) return;
    if (!('wakeLock' in navigator)) {
      setAwake('not offered');
      return;
    }
    let lock: WakeLockSentinel | undefined;
    let over = false;
    const ask = (): void => {
      if (document.visibilityState !== 'visible') return;
      navigator.wakeLock.request('screen').then(
        (given) => {
          if (over) return void given.release();
          lock = given;
          setAwake('awake');
          given.addEventListener('release', () => setAwake('asleep'));
        },
        // A battery that is nearly empty, for one.
        () => setAwake('asleep'),
      );
    };
    // The browser lets go of it when the page is out of sight.
    document.addEventListener('visibilitychange', ask);
    ask();
    return () => {
      over = true;
      document.removeEventListener('visibilitychange', ask);
      void lock?.release();
    };
  }, [wanted]);
  return awake;
}
