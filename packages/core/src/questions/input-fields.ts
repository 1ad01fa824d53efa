/** What a question takes, field by field, for people. */
import { z } from 'zod';
import type { Question } from '../question.ts';

export interface InputField {
  readonly name: string;
  readonly meaning: string;
  /** The values it may have, where they can be counted. */
  readonly choices: readonly string[];
  /** Taken when it is left out, as JSON. */
  readonly whenLeftOut: string | undefined;
  readonly optional: boolean;
}

type Shape = z.core.JSONSchema.JSONSchema;

export function inputFields(question: Question): InputField[] {
  const whole = z.toJSONSchema(question.input, { io: 'input', unrepresentable: 'any' });
  const shapes = [whole, ...(whole.anyOf ?? []), ...(whole.oneOf ?? [])].filter((s) => typeof s === 'object');
  const fields = shapes.flatMap((shape) =>
    Object.entries(shape.properties ?? {}).flatMap(([name, field]) =>
      typeof field === 'boolean' ? [] : [fieldOf(name, field, !shape.required?.includes(name))],
    ),
  );
  // Alternatives may share a field; it is told once.
  return [...new Map(fields.map((field) => [field.name, field])).values()];
}

function fieldOf(name: string, field: Shape, optional: boolean): InputField {
  const { description = '', enum: choices = [], default: preset } = field;
  return {
    name,
    meaning: description,
    choices: choices.map(String),
    whenLeftOut: preset === undefined ? undefined : JSON.stringify(preset),
    optional,
  };
}
