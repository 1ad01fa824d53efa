/** One field of a form: its value as typed, and why it is not taken. */
import { useId, useState } from 'react';
import { type Path, pathText, valueAt, withValue } from '../document.ts';
import type { Form } from '../use-job.ts';
import { type FieldSpec, shownValue, typedValue } from './fields.ts';

interface Props {
  readonly form: Form;
  /** Place of the record in the document. */
  readonly at: Path;
  readonly spec: FieldSpec;
  /** What the record is called, for a field whose title alone does not say what it is of. */
  readonly of?: string | undefined;
  /** In a table the heading says what it is; then its title is for readers only. */
  readonly titled: boolean;
}

export function Field({ form, at, spec, of, titled }: Props) {
  const id = useId();
  const [typed, setTyped] = useState<string>();
  const path = [...at, ...spec.path];
  const shown = typed ?? shownValue(spec.kind, valueAt(form.document, path));
  const refusal = refusalAt(form, path);
  const name = of === undefined ? spec.title : `${spec.title}, ${of}`;
  const common = {
    id,
    value: shown,
    'aria-label': titled ? undefined : name,
    'aria-invalid': refusal !== undefined,
    'aria-describedby': refusal === undefined ? undefined : `${id}-says`,
  };
  const change = (value: string): void => {
    if (spec.become) {
      const { become } = spec;
      form.edit((document) => withValue(document, at, become(valueAt(document, at) ?? {}, value)));
    } else form.put(path, value === '' && spec.kind === 'choice' ? undefined : typedValue(spec.kind, value));
  };
  const type = (text: string): void => {
    setTyped(text);
    change(text);
  };
  const leave = (): void => {
    // An emptied field is taken out only when it is left, for typing anew begins with emptying.
    if (typed !== undefined && typed.trim() === '' && !spec.needed) form.put(path, undefined);
    setTyped(undefined);
  };
  return (
    <span className={`field ${spec.kind}${spec.wide ? ' wide' : ''}`}>
      {titled && (
        <label htmlFor={id}>
          {spec.title}
          {spec.unit !== undefined && <span className="unit">, {spec.unit}</span>}
          {of !== undefined && <span className="unseen">, {of}</span>}
        </label>
      )}
      {spec.kind === 'choice' || spec.kind === 'yes' ? (
        <select {...common} onChange={(e) => change(e.target.value)}>
          {choicesOf(spec, shown).map((c) => (
            <option key={c.value} value={c.value}>
              {c.words}
            </option>
          ))}
        </select>
      ) : spec.kind === 'prose' ? (
        <textarea {...common} rows={4} onChange={(e) => type(e.target.value)} onBlur={leave} />
      ) : (
        <input
          {...common}
          autoComplete="off"
          spellCheck={false}
          onChange={(e) => type(e.target.value)}
          onBlur={leave}
        />
      )}
      {refusal !== undefined && (
        <span id={`${id}-says`} className="refusal" aria-live="polite">
          {refusal}
        </span>
      )}
    </span>
  );
}

function choicesOf(spec: FieldSpec, shown: string): readonly { value: string; words: string }[] {
  if (spec.kind === 'yes') return ['yes', 'no'].map((value) => ({ value, words: value }));
  const choices = spec.choices ?? [];
  const known = choices.some((c) => c.value === shown);
  return [
    ...(spec.needed && known ? [] : [{ value: '', words: '–' }]),
    ...(known || shown === '' ? [] : [{ value: shown, words: shown }]),
    ...choices,
  ];
}

/** A refusal of something inside the value stands at the field too. */
function refusalAt({ refusals }: Form, path: Path): string | undefined {
  const at = pathText(path);
  const found = Object.entries(refusals).find(([place]) => place === at || place.startsWith(`${at}[`));
  return found?.[1];
}
