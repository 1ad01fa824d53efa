/**
 * Brings documents of earlier versions to the present one, a step at a time; a newer one is refused untouched.
 */
import { InputError } from '../errors.ts';

export type DocumentKind = 'job' | 'workshop';
type Fields = Readonly<Record<string, unknown>>;
/** Turns the fields of one version into those of the next. */
export type MigrationStep = (document: Fields) => Fields;

/** `steps[kind][0]` turns version 1 into version 2, and so on. Documents start at version 1. */
const released: Record<DocumentKind, readonly MigrationStep[]> = { job: [], workshop: [] };

/**
 * The document in its present version.
 *
 * @param kind  what it must be
 * @param document  parsed JSON
 * @param steps  the steps from version to version; those released unless told otherwise
 * @throws InputError when it is no such document, or of a newer version
 */
export function migrate(kind: DocumentKind, document: unknown, steps = released[kind]): Fields {
  const present = steps.length + 1;
  const example = `{"sparewright":"${kind}","version":${present}, …}`;
  if (typeof document !== 'object' || document === null || Array.isArray(document))
    throw new InputError([{ path: '', value: document, expected: `a ${kind} document`, example }]);
  const { sparewright, version } = { sparewright: undefined, version: undefined, ...document };
  if (sparewright !== kind)
    throw new InputError([
      { path: 'sparewright', value: sparewright, expected: `"${kind}", for this must be a ${kind} document` },
    ]);
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1)
    throw new InputError([
      { path: 'version', value: version, expected: 'a whole number from 1', example: String(present) },
    ]);
  if (version > present)
    throw new InputError([
      {
        path: 'version',
        value: version,
        expected: `at most ${present}: it was written by a newer program, which is needed to open it`,
      },
    ]);
  return steps
    .slice(version - 1)
    .reduce<Fields>((fields, step, i) => ({ ...step(fields), version: version + i + 1 }), { ...document });
}
