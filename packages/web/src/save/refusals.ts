/** What a failed request means to the one who types. */
import { Refused } from '../ask-server.ts';

/** Nobody answered, or something between here and the server did. */
export const isSilence = (error: unknown): boolean =>
  error instanceof Refused && (error.status === 0 || error.status >= 502);

/** The program's own: what was typed may be quite right. */
export const isFault = (error: unknown): boolean => !(error instanceof Refused);

/** Why each value is not taken, by its place. */
export function refusalsOf(error: unknown): Record<string, string> {
  if (!(error instanceof Refused)) return {};
  return Object.fromEntries(
    (error.issues ?? []).map(({ path, value, expected, example }) => {
      if (value === '""') return [path, `Type a value to go on: ${expected}.`];
      const such = example === null || example === undefined ? '' : `, for example ${example}`;
      return [path, `Not taken: ${value}. Expected ${expected}${such}.`];
    }),
  );
}

export function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : 'Something went wrong that has no name.';
}
