/** How far a tabled value can be trusted; goes through to every answer that rests on it. */
export type Standing =
  | 'read'
  | 'read in part, rest from memory'
  | 'from memory'
  | 'common practice'
  | 'computed'
  | 'doubtful';

const trust: Record<Standing, number> = {
  read: 0,
  computed: 1,
  'common practice': 2,
  'read in part, rest from memory': 3,
  'from memory': 4,
  doubtful: 5,
};

/** The least trusted of several: what an answer that rests on all of them may claim. */
export function weakest(standings: readonly Standing[]): Standing {
  return standings.reduce<Standing>((worst, next) => (trust[next] > trust[worst] ? next : worst), 'read');
}
