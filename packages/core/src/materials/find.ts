/** Finds a material by any name a person types. */
import { InputError } from '../errors.ts';
import type { Mm } from '../units/quantities.ts';
import { allMaterials, type Material, materialsOfGrade } from './material.ts';
import { gradeSpellings, plain } from './names.ts';
import { otherNames, secondMeanings } from './other-names.ts';

/** What is known of the bar beside its name. */
export interface Wanted {
  /** Diameter of the bar, where strength depends on it. */
  readonly diameter?: Mm | undefined;
  /** Words of the condition: `cold drawn`, `H900`. */
  readonly condition?: string | undefined;
}

interface Index {
  /** Grades by plain spelling; more than one makes the name ambiguous. */
  readonly exact: Map<string, Set<string>>;
  readonly near: Map<string, Set<string>>;
  readonly ids: Map<string, Material>;
  /** As printed, for candidates and suggestions. */
  readonly printed: Map<string, string>;
  /** Words of a grade's names and family, for a search by description. */
  readonly words: Map<string, Set<string>>;
}

let index: Index | undefined;

function lookUp(): Index {
  index ??= buildIndex();
  return index;
}

/**
 * The material of that name. Where several conditions or sizes are held and none is asked for, the usual condition in its weakest
 * size is given, and `remarks` says so.
 * @throws InputError when the name fits several alloys (they are listed) or none (the nearest names are)
 */
export function findMaterial(name: string, wanted: Wanted = {}): Material {
  const { exact, near, ids } = lookUp();
  const typed = plain(name);
  if (typed === '') throw refuse(name, 'the name of a material', '303');
  const forms = [typed, ...withoutPrefix(typed)];
  for (const form of forms) {
    const id = ids.get(form);
    if (id && !exact.has(form)) return id;
    const found = exact.get(form);
    if (found) return settle(name, found, wanted, secondMeanings[form]);
  }
  const other = otherNames.find((o) => forms.includes(plain(o.name)));
  if (other)
    throw refuse(
      name,
      `a material of this table; ${other.name} is ${other.is}; nearest here: ${summary(other.near)}`,
      other.near,
    );
  for (const form of forms) {
    const found = near.get(form);
    if (found) return settle(name, found, wanted, `${name.trim()} is a near neighbour, not the same alloy`);
  }
  const letters = enLetters(typed);
  if (letters) throw refuse(name, letters.says, letters.example);
  const described = byWords(name);
  if (described.size > 0) return settle(name, described, wanted, undefined);
  const close = nearest(typed);
  throw refuse(name, `a known material; nearest names: ${close.join(', ')}`, close[0] ?? '303');
}

/** One of several materials that a name may mean. */
export interface Candidate {
  /** A name that means this one alone. */
  readonly name: string;
  readonly is: string;
}

/**
 * What a name may mean when it means more than one material: `brass`, `EN 58`. Empty when it means one or none.
 */
export function candidatesOf(name: string): Candidate[] {
  const { exact } = lookUp();
  const typed = plain(name);
  const found =
    [typed, ...withoutPrefix(typed)].map((form) => exact.get(form)).find((f) => f !== undefined) ?? byWords(name);
  if (found.size > 1) return [...found].map((grade) => ({ name: grade, is: summary(grade) }));
  return found.size === 0 ? lettersOf(typed) : [];
}

function settle(name: string, found: ReadonlySet<string>, wanted: Wanted, remark: string | undefined): Material {
  const [grade, ...others] = found;
  if (grade === undefined || others.length > 0) {
    const list = [...found].map(summary).join('; ');
    throw refuse(name, `one of the materials of that name: ${list}`, grade ?? '303');
  }
  const states = ofCondition(materialsOfGrade(grade), wanted.condition);
  const { chosen, said } = ofSize(states, wanted.diameter);
  const remarks = [remark, said].filter((r) => r !== undefined);
  return remarks.length === 0 ? chosen : { ...chosen, remarks };
}

function ofCondition(states: readonly Material[], condition: string | undefined): readonly Material[] {
  if (condition === undefined) return states.filter((m) => m.condition === states[0]?.condition);
  const asked = plain(condition);
  const fits = states.filter((m) => plain(m.condition).includes(asked) || plain(m.id).endsWith(asked));
  if (fits.length > 0) return fits.filter((m) => m.condition === fits[0]?.condition);
  const held = [...new Set(states.map((m) => m.condition))];
  throw new InputError([
    { path: 'condition', value: condition, expected: `a condition held of it: ${held.join('; ')}`, example: held[0] },
  ]);
}

function ofSize(states: readonly Material[], diameter: Mm | undefined): { chosen: Material; said: string | undefined } {
  const weakest = states.toSorted((a, b) => strength(a) - strength(b))[0];
  if (!weakest) throw new Error('a grade without a condition');
  if (diameter === undefined) {
    return states.length === 1 || !weakest.size
      ? { chosen: weakest, said: undefined }
      : { chosen: weakest, said: `no diameter given: strength of the weakest size, ${range(weakest.size)} mm` };
  }
  const fit = states.find((m) => !m.size || (diameter > m.size[0] && diameter <= m.size[1]));
  if (fit) return { chosen: fit, said: undefined };
  const sizes = states.flatMap((m) => (m.size ? [range(m.size)] : [])).join(', ');
  return { chosen: weakest, said: `strength is held for ${sizes} mm, not for ${diameter} mm` };
}

function strength(material: Material): number {
  return (
    material.proofStrength ?? material.proofStrengthTypical ?? material.tensileStrength ?? Number.POSITIVE_INFINITY
  );
}

function range([over, upTo]: readonly [Mm, Mm]): string {
  return over === 0 ? `to ${upTo}` : `${over} to ${upTo}`;
}

/** `AISI 303`, `BS 303S31`, `EN 1.4305`, `W.Nr. 1.4305` without their first word. */
function withoutPrefix(typed: string): string[] {
  const bare = typed.replace(
    /^(aisi|sae|uns|jis|bs970|bs|wnr|werkstoffnr|werkstoff|din|astm|alloy|type|cda|ss|stainless)/,
    '',
  );
  const number = typed.replace(/^en(?=[1-5]\d{4}$)/, '');
  return [bare, number].filter((form) => form !== typed && form !== '');
}

/** `EN 58` alone: the letters that exist and what each is. */
function lettersOf(typed: string): Candidate[] {
  if (!/^en\d+$/.test(typed)) return [];
  const letter = new RegExp(`^${typed}[a-z]{1,2}$`);
  const { exact, printed } = lookUp();
  const held = [...exact].flatMap(([form, grades]) =>
    letter.test(form) ? [{ name: printed.get(form) ?? form, is: [...grades].map(summary).join(' or ') }] : [],
  );
  const known = otherNames.filter((o) => letter.test(plain(o.name)));
  const all = [...held, ...known.map((o) => ({ name: o.name, is: `${o.is}; not in this table, nearest ${o.near}` }))];
  return all.toSorted((a, b) => a.name.localeCompare(b.name));
}

/** How a name with letters missing is refused. */
function enLetters(typed: string): { says: string; example: string } | undefined {
  const letters = lettersOf(typed);
  if (letters.length === 0) return undefined;
  const list = letters.map((o) => `${o.name} = ${o.is}`);
  const held = letters.find((o) => !o.is.includes('not in this table')) ?? letters[0];
  return { says: `its letter too: ${list.join('. ')}. (Letters from memory.)`, example: held?.name ?? '' };
}

const filler = new Set(['steel', 'bar', 'rod', 'alloy', 'type', 'metal', 'ss', 'a', 'the']);

/** Grades whose names and family hold every word typed. */
function byWords(name: string): Set<string> {
  const { words } = lookUp();
  const typed = name.split(/[\s,;]+/).map(plain);
  const telling = typed.filter((w) => w !== '' && !filler.has(w));
  const found = new Set<string>();
  const asked = telling.length > 0 ? telling : typed.filter((w) => w !== '');
  if (asked.length === 0) return found;
  for (const [grade, held] of words) if (asked.every((w) => held.has(w))) found.add(grade);
  return found;
}

function nearest(typed: string): string[] {
  const { printed } = lookUp();
  return [...printed]
    .map(([form, text]) => ({ text, far: distance(typed, form) / Math.max(typed.length, form.length) }))
    .toSorted((a, b) => a.far - b.far)
    .slice(0, 5)
    .map((n) => n.text);
}

/** Edit distance: letters to put in, take out or change. */
function distance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(change, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    row = next;
  }
  return row[b.length] ?? 0;
}

function summary(grade: string): string {
  const first = materialsOfGrade(grade)[0];
  return first ? `${grade} (${first.commonName}, ${first.names.en ?? first.names.enName ?? first.family})` : grade;
}

function refuse(name: string, expected: string, example: string): InputError {
  return new InputError([{ path: 'material', value: name, expected, example }]);
}

function buildIndex(): Index {
  const built: Index = { exact: new Map(), near: new Map(), ids: new Map(), printed: new Map(), words: new Map() };
  for (const m of allMaterials()) {
    built.ids.set(plain(m.id), m);
    built.ids.set(plain(m.grade + m.condition), m);
    // Conditions of one grade share their names, save where a condition adds its own.
    if (built.words.has(m.grade) && materialsOfGrade(m.grade)[0]?.names === m.names) continue;
    const words = built.words.get(m.grade) ?? new Set();
    built.words.set(m.grade, words);
    for (const word of `${m.commonName} ${m.family}`.split(/[\s/-]+/)) words.add(plain(word));
    for (const { text, near } of gradeSpellings(m)) {
      const form = plain(text);
      const into = near ? built.near : built.exact;
      into.set(form, (into.get(form) ?? new Set()).add(m.grade));
      if (!built.printed.has(form)) built.printed.set(form, text);
      if (!near) words.add(form);
    }
  }
  return built;
}
