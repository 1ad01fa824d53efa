/** What becomes of a job when a recovered feature is settled: the value, the decision with its reason, and the pencil, in one edit. */
import type { Json } from '@sparewright/core/job/merge';
import type { RecoveredFeatureView, TakeView } from '@sparewright/output/present/job-view';
import { freeId, listAt, type Path, textAt, valueAt, withValue } from '../document.ts';

const decisions: Path = ['decisions'];
const leftOpen: Path = ['part', 'leftOpen'];
/** As long as a document takes them. */
const longestDecision = 500;
const longestReason = 1000;

type Feature = Pick<RecoveredFeatureView, 'of' | 'openAs' | 'ownAt'>;

/** The document with a recommendation taken. */
export function taken(document: Json, feature: Feature, take: TakeView): Json {
  const put = take.puts.reduce<Json>((changed, { at, value }) => withValue(changed, at, asJson(value)), document);
  return decided(settled(put, feature), feature, `${take.write}, ${lowered(take.name)}`, take.why);
}

/** The document with a value of one's own in its place. */
export function overridden(document: Json, feature: Feature, value: string, why: string): Json {
  const put = feature.ownAt === null ? document : withValue(document, feature.ownAt, value);
  return decided(settled(put, feature), feature, `${value}, chosen by hand`, why);
}

/** The document with the feature left open: what stands in the part stays, in pencil. */
export function heldOpen(document: Json, feature: Feature, why: string): Json {
  const open = listAt(document, leftOpen);
  const marked =
    feature.ownAt === null || open.includes(feature.openAs)
      ? document
      : withValue(document, leftOpen, [...open, feature.openAs]);
  return decided(marked, feature, 'left open', why);
}

function settled(document: Json, { openAs }: Pick<Feature, 'openAs'>): Json {
  const open = listAt(document, leftOpen);
  if (!open.includes(openAs)) return document;
  const others = open.filter((of) => of !== openAs);
  return withValue(document, leftOpen, others.length === 0 ? undefined : others);
}

/** A value typed into the part: whoever types a size settles it. */
export function typedInto(document: Json, at: Path, value: Json | undefined): Json {
  const id = textAt(valueAt(document, at.slice(0, -1)), ['id']);
  return settled(withValue(document, at, value), { openAs: `${id}.${at.at(-1) ?? ''}` });
}

/** A later decision about the same takes the place of the earlier one; the history keeps both. */
function decided(document: Json, { of }: Feature, what: string, why: string): Json {
  const all = listAt(document, decisions);
  const others = all.filter((d) => textAt(d, ['about']) !== of);
  return withValue(document, decisions, [
    ...others,
    {
      id: freeId('size', all),
      about: of,
      decided: what.slice(0, longestDecision),
      why: why.slice(0, longestReason),
    },
  ]);
}

const lowered = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** Views are plain data: what they put is JSON. */
function asJson(value: unknown): Json {
  return JSON.parse(JSON.stringify(value));
}
