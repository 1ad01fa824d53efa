/** A recording of taps: its tones are found in the worker, and one is taken over with a press. */
import type { tapTones } from '@sparewright/core/lathe/tap-question';
import { useId, useState } from 'react';
import { Refused } from '../ask-server.ts';
import type { Form } from '../use-job.ts';
import { askQuestion } from '../worker/client.ts';

type Heard = ReturnType<typeof tapTones.answer>;

/** Half a minute of two channels at 48 kHz. */
const largest = 6_000_000;

export function TapFile({ form }: { readonly form: Form }) {
  const id = useId();
  const [heard, setHeard] = useState<Heard>();
  const [said, setSaid] = useState('');

  const read = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    setHeard(undefined);
    if (file.size > largest) {
      setSaid('That is more than half a minute; cut it to the knocks.');
      return;
    }
    setSaid('Listening …');
    try {
      const { answer } = await askQuestion('tap-tones', { wav: await inBase64(file) });
      // The worker has held the answer against the schema of its question.
      const found = answer as Heard;
      setHeard(found);
      setSaid(found.knocks === 1 ? '1 knock found' : `${found.knocks} knocks found`);
    } catch (error) {
      setSaid(reasonOf(error));
    }
  };
  const take = ({ frequency, uncertainty, damping }: Heard['tones'][number]): void => {
    form.put(['frequency'], Number(frequency.toPrecision(4)));
    form.put(['uncertainty'], Number(Math.max(1, uncertainty).toPrecision(2)));
    form.put(['damping'], damping === null ? undefined : Number(damping.toPrecision(2)));
    setSaid(`${Math.round(frequency)} Hz taken over`);
  };
  return (
    <div className="tap-file">
      <p>
        <label htmlFor={id}>Recording, a WAV file</label>{' '}
        <input
          id={id}
          type="file"
          accept=".wav,audio/wav,audio/x-wav"
          onChange={(e) => void read(e.target.files?.[0])}
        />{' '}
        <span role="status" className="understood">
          {said}
        </span>
      </p>
      <p className="secondary">
        A telephone mostly records m4a, which is not taken: set its recorder to WAV, or save the recording as WAV with
        any sound program.
      </p>
      {heard && heard.tones.length > 0 && (
        <ul className="tones">
          {heard.tones.map((t) => (
            <li key={t.frequency}>
              {Math.round(t.frequency)} Hz, give or take {Math.max(1, Math.round(t.uncertainty))};{' '}
              {t.damping === null ? 'does not die away clearly' : `damping ${t.damping.toPrecision(2)}`}; strength{' '}
              {Math.round(100 * t.strength)} %{' '}
              <button type="button" onClick={() => take(t)}>
                Take this tone<span className="unseen"> of {Math.round(t.frequency)} Hz</span>
              </button>
            </li>
          ))}
        </ul>
      )}
      {heard?.tones.length === 0 && <p>No tone stands out of it.</p>}
    </div>
  );
}

function reasonOf(error: unknown): string {
  const expected = error instanceof Refused ? error.issues[0]?.expected : undefined;
  if (expected !== undefined) return `Not taken; it must be ${expected}.`;
  return error instanceof Error ? error.message : 'It could not be read.';
}

async function inBase64(file: File): Promise<string> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  let text = '';
  const step = 0x8000;
  for (let i = 0; i < bytes.length; i += step) text += String.fromCharCode(...bytes.subarray(i, i + step));
  return btoa(text);
}
