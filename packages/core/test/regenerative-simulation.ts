/**
 * A turning cut in time: the edge cuts what it and all turns before it have left, and may jump out of the cut. Written
 * apart from the program's own stability formulas, as the second method they are held against.
 */

export interface SimulatedMode {
  readonly frequency: number;
  /** [N/mm] */
  readonly stiffness: number;
  readonly damping: number;
  readonly direction: number;
}

export interface SimulatedCut {
  /** [MPa] */
  readonly chipStiffness: number;
  /** [mm] */
  readonly width: number;
  /** [rpm] */
  readonly speed: number;
  /** [mm/rev] */
  readonly feed: number;
  /** C / v: rubbing force over breadth and velocity of the edge [N·s/mm²]. */
  readonly rubbing: number;
}

/** Whether a knock at the start dies away (`quiet`), grows (`sings`), or neither within the turns looked at. */
export function simulate(
  modes: readonly SimulatedMode[],
  cut: SimulatedCut,
  turns: number,
): 'quiet' | 'sings' | 'undecided' {
  const period = 60 / cut.speed;
  const fastest = Math.max(...modes.map((m) => m.frequency));
  // Fine enough for the fastest wave, and for the rubbing not to turn a velocity round within a step.
  const rate = Math.max(
    ...modes.map(
      (m) => ((2 * Math.PI * m.frequency) ** 2 * cut.width * cut.rubbing * Math.abs(m.direction)) / m.stiffness,
    ),
  );
  const perTurn = Math.ceil(period * Math.max(fastest * 150, rate * 12));
  const dt = period / perTurn;
  const meanForce = cut.chipStiffness * cut.width * cut.feed;
  // Modes start at the deflection of the steady cut, one of them knocked by a hundredth of the feed.
  const x = modes.map((m) => (m.direction * meanForce) / m.stiffness);
  const steady = x.reduce((a, b) => a + b, 0);
  const knock = 0.01 * cut.feed;
  const v = modes.map((m) => (knock / modes.length) * 2 * Math.PI * m.frequency);
  // The surface behind the edge, one value for each step of a turn, as the edge would have left it without vibration.
  const surface = new Float64Array(perTurn);
  for (let i = 0; i < perTurn; i++) surface[i] = steady + cut.feed - (cut.feed * i) / perTurn;
  const level: number[] = [];
  let most = 0;
  let jumps = 0;
  for (let step = 0; step < turns * perTurn; step++) {
    const at = step % perTurn;
    let [y, dy] = [0, 0];
    for (let i = 0; i < modes.length; i++) {
      y += x[i] ?? 0;
      dy += v[i] ?? 0;
    }
    const edge = y - (cut.feed * step) / perTurn;
    const behind = surface[at] ?? 0;
    const chip = Math.max(0, behind - edge);
    if (chip === 0) jumps++;
    surface[at] = Math.min(behind, edge);
    const force = chip > 0 ? cut.width * (cut.chipStiffness * chip - cut.rubbing * dy) : 0;
    modes.forEach((m, i) => {
      const w = 2 * Math.PI * m.frequency;
      const load = ((m.direction * force) / m.stiffness) * w * w;
      const [next, speed] = advance(x[i] ?? 0, v[i] ?? 0, w, m.damping, load / (w * w), dt);
      x[i] = next;
      v[i] = speed;
    });
    most = Math.max(most, Math.abs(y - steady));
    if (at === perTurn - 1) {
      level.push(most);
      most = 0;
      if (!Number.isFinite(y)) throw new Error('the simulation ran away');
    }
  }
  if (jumps > perTurn / 20) return 'sings';
  const late = Math.max(...level.slice(-3));
  const early = Math.max(...level.slice(Math.floor(turns / 3), Math.floor(turns / 3) + 3));
  if (late < 0.7 * early && late < knock) return 'quiet';
  if (late > 1.4 * early) return 'sings';
  return 'undecided';
}

/** One step of a damped oscillator under a force that holds still during the step: exact. */
function advance(x: number, v: number, w: number, zeta: number, rest: number, dt: number): [number, number] {
  const wd = w * Math.sqrt(1 - zeta * zeta);
  const decay = Math.exp(-zeta * w * dt);
  const [c, s] = [Math.cos(wd * dt), Math.sin(wd * dt)];
  const u = x - rest;
  const b = (v + zeta * w * u) / wd;
  return [rest + decay * (u * c + b * s), decay * (v * c - (w * w * u + zeta * w * v) * (s / wd))];
}
