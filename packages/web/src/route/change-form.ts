/** What a person wants otherwise with one operation, as a form of its own over the job document. */
import type { Json } from '@sparewright/core/job/merge';
import { isObject, listAt, type Path, pathText, textAt, withValue } from '../document.ts';
import type { Form } from '../use-job.ts';

const changes: Path = ['route', 'changes'];

/** The document with one value of the change of an operation; a change that says nothing any more is taken out. */
export function withChange(document: Json, operation: string, path: Path, value: Json | undefined): Json {
  const list = listAt(document, changes);
  const at = placeOf(list, operation);
  const changed = withValue(list[at] ?? { operation }, path, value);
  const says = isObject(changed) && Object.keys(changed).some((key) => key !== 'operation');
  const rest = list.filter((_, i) => i !== at);
  const kept = says
    ? list.map((entry, i) => (i === at ? changed : entry)).concat(at < list.length ? [] : [changed])
    : rest;
  return withValue(document, changes, kept.length === 0 ? undefined : kept);
}

export function changeForm(job: Form, operation: string): Form {
  const list = listAt(job.document, changes);
  const at = placeOf(list, operation);
  const before = `${pathText([...changes, at])}.`;
  const put = (path: Path, value: Json | undefined): void =>
    job.edit((document) => withChange(document, operation, path, value));
  return {
    document: list[at] ?? {},
    refusals: Object.fromEntries(
      Object.entries(job.refusals).flatMap(([place, says]) =>
        place.startsWith(before) ? [[place.slice(before.length), says]] : [],
      ),
    ),
    put,
    edit: (change) =>
      job.edit((document) => {
        const own = listAt(document, changes);
        const changed = change(own[placeOf(own, operation)] ?? {});
        return isObject(changed)
          ? Object.entries(changed).reduce((d, [key, value]) => withChange(d, operation, [key], value), document)
          : document;
      }),
  };
}

/** The last of several counts, as for the planner; a place past the end when there is none. */
function placeOf(list: readonly Json[], operation: string): number {
  const at = list.findLastIndex((entry) => textAt(entry, ['operation']) === operation);
  return at < 0 ? list.length : at;
}
