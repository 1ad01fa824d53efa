/**
 * A cut in time whose edge carries a land that rubs: each piece of the land presses on what the edge left there a moment before,
 * and the land leaves the surface levelled. Written apart from the program's own limits, as the second method they are held
 * against; force and surface are summed up piece by piece, without a wave or a phase.
 */

export interface SwingingMode {
  readonly frequency: number;
  /** [N/mm] */
  readonly stiffness: number;
  readonly damping: number;
  /** How far the edge goes away from the work, square to the chip, for a unit of the mode. */
  readonly away: number;
  /** Share of the force square to the chip, with all it brings along, that drives the mode. */
  readonly driven: number;
  /** The same of the force that rubs; as the chip's when left out. */
  readonly rubbed?: number | undefined;
}

export interface LandCut {
  /** [MPa] */
  readonly chipStiffness: number;
  /** [mm] */
  readonly width: number;
  /** One turn [s]. */
  readonly turn: number;
  /** [mm/s] */
  readonly speed: number;
  /** [mm/rev] */
  readonly feed: number;
  /** Length of the land [mm]. */
  readonly land: number;
  /** Force for each volume pressed aside [N/mm³]. */
  readonly pressedAside: number;
  /**
   * `even`: the land bears on the work throughout, pressing less where the work falls away, and leaves the mean of what it
   * passed over. `one-sided`: it presses only where it is lower than the work, and leaves the lowest it passed over.
   */
  readonly contact: 'even' | 'one-sided';
  /** Expected to sing at about this: its waves are cut finest [Hz]. */
  readonly frequency: number;
}

export type Heard = 'quiet' | 'sings' | 'undecided';

/** Whether a knock at the start dies away, grows, or neither within the turns looked at. */
export function simulateLand(modes: readonly SwingingMode[], cut: LandCut, turns: number): Heard {
  const { chipStiffness, width, turn, feed, contact } = cut;
  // The land bears like a spring too, and a mode on it rings higher.
  const bears = (m: SwingingMode) => (cut.pressedAside * cut.land * width * Math.abs(m.away * m.driven)) / m.stiffness;
  const fastest = Math.max(...modes.map((m) => m.frequency * Math.sqrt(1 + bears(m))));
  const crossing = cut.land / cut.speed;
  // Fine enough for the wave that may grow, for the fastest wave, for the land, and for what the land damps.
  const damping = (cut.pressedAside * cut.land ** 2) / (2 * cut.speed);
  const rate = Math.max(
    ...modes.map(
      (m) => ((2 * Math.PI * m.frequency) ** 2 * width * damping * Math.abs(m.away * m.driven)) / m.stiffness,
    ),
  );
  const perTurn = Math.ceil(turn * Math.max(cut.frequency * 120, fastest * 40, rate * 8, 10 / crossing));
  const dt = turn / perTurn;
  const pieces = Math.max(1, Math.round(crossing / dt));
  const piece = cut.land / pieces;
  const steady = modes.reduce((sum, m) => sum + (m.away * m.driven * chipStiffness * width * feed) / m.stiffness, 0);
  const x = modes.map((m) => (m.driven * chipStiffness * width * feed) / m.stiffness);
  const knock = 0.01 * feed;
  const v = modes.map((m) => ((m.away < 0 ? -1 : 1) * knock * 2 * Math.PI * m.frequency) / modes.length);
  const steps = modes.map((m) => ({
    ...stepOf(m, dt),
    driven: m.driven / m.stiffness,
    rubbed: (m.rubbed ?? m.driven) / m.stiffness,
  }));
  const away = modes.map((m) => m.away);
  // What earlier turns have left, one value for each step of a turn; the feed makes it a stair.
  const surface = new Float64Array(perTurn).fill(steady);
  // Heights of the edge over the last passage of the land, and the work under each piece of it.
  const passed = new Float64Array(pieces).fill(steady);
  const lowest = new Float64Array(pieces).fill(steady);
  let sum = steady * pieces;
  const level: number[] = [];
  let [most, jumps] = [0, 0];
  let [chipBefore, rubsBefore] = [width * chipStiffness * feed, 0];
  for (let step = 0; step < turns * perTurn; step++) {
    const at = step % perTurn;
    let y = 0;
    for (let i = 0; i < modes.length; i++) y += (away[i] ?? 0) * (x[i] ?? 0);
    const chip = feed + (surface[at] ?? 0) - y;
    let pressed = 0;
    if (contact === 'even') pressed = piece * (sum - pieces * y);
    else
      for (let i = 0; i < pieces; i++) {
        pressed += piece * Math.max(0, (passed[i] ?? 0) - y);
        lowest[i] = Math.min(lowest[i] ?? 0, y);
      }
    const chipNow = width * chipStiffness * Math.max(0, chip);
    const rubsNow = width * cut.pressedAside * pressed;
    // A force held over a step comes half a step late, which would feed the fast modes: it is carried on by half a step.
    const force = 1.5 * chipNow - 0.5 * chipBefore;
    const rubs = 1.5 * rubsNow - 0.5 * rubsBefore;
    chipBefore = chipNow;
    rubsBefore = rubsNow;
    // The edge out of the cut leaves what was there, a turn's feed higher.
    const left = chip > 0 ? y : feed + (surface[at] ?? 0);
    if (chip <= 0) jumps++;
    // The oldest piece comes out from under the land: what is left of it is the mean, or the lowest, of the passage.
    const oldest = step % pieces;
    const out = (step - pieces + perTurn) % perTurn;
    if (step >= pieces) surface[out] = contact === 'even' ? sum / pieces : (lowest[oldest] ?? 0);
    sum += left - (passed[oldest] ?? 0);
    passed[oldest] = left;
    lowest[oldest] = left;
    if (at === 0) sum = passed.reduce((a, b) => a + b, 0);
    for (let i = 0; i < steps.length; i++) {
      const s = steps[i];
      if (!s) continue;
      const rest = s.driven * force + s.rubbed * rubs;
      const u = (x[i] ?? 0) - rest;
      const w = v[i] ?? 0;
      x[i] = rest + s.xx * u + s.xv * w;
      v[i] = s.vx * u + s.vv * w;
    }
    most = Math.max(most, Math.abs(y - steady));
    if (at === perTurn - 1) {
      if (!Number.isFinite(y)) throw new Error('the simulation ran away');
      level.push(most);
      most = 0;
      if (jumps > perTurn / 20) return 'sings';
    }
  }
  const late = Math.max(...level.slice(-3));
  const early = Math.max(...level.slice(Math.floor(turns / 3), Math.floor(turns / 3) + 3));
  // What is left of a knock that died at once is the last figures of the numbers.
  if (late < 0.01 * knock || (late < 0.7 * early && late < knock)) return 'quiet';
  if (late > 1.4 * early) return 'sings';
  return 'undecided';
}

/** One step of a damped oscillator about its rest under a force that holds still during the step: exact. */
function stepOf({ frequency, damping: zeta }: SwingingMode, dt: number) {
  const w = 2 * Math.PI * frequency;
  const wd = w * Math.sqrt(1 - zeta * zeta);
  const decay = Math.exp(-zeta * w * dt);
  const [c, s] = [decay * Math.cos(wd * dt), decay * Math.sin(wd * dt)];
  return { xx: c + (zeta * w * s) / wd, xv: s / wd, vx: (-w * w * s) / wd, vv: c - (zeta * w * s) / wd };
}
