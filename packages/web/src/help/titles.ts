/** What each piece of help is called, apart from its text: links need no more than this. */

export const measuring = {
  before: 'Before you start',
  condition: 'Wear: protected and worn places',
  outside: 'Outside diameters',
  lobes: 'Round or only of equal width',
  bores: 'Inside diameters',
  lengths: 'Lengths and depths',
  tapers: 'Tapers and cones',
  runout: 'Run-out',
  threads: 'Threads',
  crown: 'Crowned ends',
  grooves: 'Grooves',
  'seal-grooves': 'Grooves for rings that seal',
  hexagon: 'Hexagon sockets and flats',
} as const;

export const meaning = {
  uncertainty: 'u and U: how sure a reading is',
  'as-made': 'As made, 95 %: the interval',
  probability: 'Probability of a design',
  limits: 'Least, most, and by',
  clearance: 'Clearance and interference',
  squeeze: 'Squeeze, stretch, fill, gap',
  verdict: 'Good, marginal, bad',
  margin: 'Margin',
  weight: 'Stop, caution, note',
  hazard: 'Hazard class',
  proof: 'Proof test',
  cutting: 'Speed, feed, force, power, pushes away',
  gives: 'What gives how much, and the doubt left',
  goes: 'Goes, goes if, not on this lathe',
  sings: 'Depth against speed: when a cut sings',
  times: 'Times and their spread',
  dial: 'Turns and divisions',
  'stop-point': 'Where to stop cutting',
  cusp: 'Cusp',
  accept: 'Accept from … to',
  roughness: 'Roughness Ra',
  pencil: 'Pencil and ink',
} as const;

export type MeasuringId = keyof typeof measuring;
export type MeaningId = keyof typeof meaning;
export type TopicId = MeasuringId | MeaningId;

export function titleOf(id: TopicId): string {
  return { ...measuring, ...meaning }[id];
}

export const isMeaning = (id: TopicId): id is MeaningId => Object.hasOwn(meaning, id);
