/** Other devices: the code and address to type there, and the devices that were let in. */
import { useCallback, useEffect, useState } from 'react';
import { fetchJson, Refused } from '../ask-server.ts';
import { ScreenHead } from '../shelf/screen-head.tsx';
import { CodePicture } from './code-picture.tsx';

interface Device {
  readonly id: string;
  readonly name: string;
  readonly address: string;
  readonly since: string;
  readonly seen: string;
}

interface Pairing {
  /** Null while only this computer is served. */
  readonly code: string | null;
  readonly addresses: readonly string[];
  readonly devices: readonly Device[];
}

/** A device just let in is to be seen without pressing anything [ms]. */
const pause = 2500;

export default function PairingScreen() {
  const [pairing, setPairing] = useState<Pairing>();
  const [trouble, setTrouble] = useState('');
  const load = useCallback(async (signal?: AbortSignal) => {
    try {
      setPairing(await fetchJson<Pairing>('/api/pairing', signal ? { signal } : {}));
      setTrouble('');
    } catch (error) {
      if (!signal?.aborted) setTrouble(error instanceof Refused ? error.message : 'The server does not answer.');
    }
  }, []);
  useEffect(() => {
    document.title = 'Other devices · Sparewright';
    const stop = new AbortController();
    void load(stop.signal);
    const again = setInterval(() => void load(stop.signal), pause);
    return () => {
      stop.abort();
      clearInterval(again);
    };
  }, [load]);
  const remove = async (id: string): Promise<void> => {
    try {
      await fetchJson(`/api/pairing/${encodeURIComponent(id)}`, { method: 'DELETE' });
      await load();
    } catch (error) {
      setTrouble(error instanceof Error ? error.message : 'It could not be removed.');
    }
  };
  return (
    <>
      <ScreenHead title="Other devices" here="pairing" />
      <main className="pairing">
        {trouble !== '' && (
          <p className="refusal" role="alert">
            {trouble}
          </p>
        )}
        {pairing &&
          (pairing.code === null ? <NotServed /> : <Served code={pairing.code} addresses={pairing.addresses} />)}
        {pairing && pairing.code !== null && <Devices devices={pairing.devices} remove={(id) => void remove(id)} />}
      </main>
    </>
  );
}

function NotServed() {
  return (
    <>
      <h2>Only this computer is served</h2>
      <p>To use a tablet at the lathe or a phone as a camera, stop the program and start it for your network:</p>
      <p className="formula">npm start -- --host 0.0.0.0</p>
      <p>Then a code and an address stand here. A device is let in once it has sent the code.</p>
      <Unencrypted />
    </>
  );
}

function Served({ code, addresses }: { readonly code: string; readonly addresses: readonly string[] }) {
  const [first] = addresses;
  return (
    <section className="to-pair" aria-label="What to type on the other device">
      <div>
        <h2>On the other device, open</h2>
        {addresses.length === 0 && <p>This computer is on no network just now.</p>}
        {addresses.map((address) => (
          <p key={address} className="address">
            {address}
          </p>
        ))}
        <h2>and type the code</h2>
        <p className="code">{code}</p>
        <p className="secondary">A new code is made each time the program starts; devices are then paired anew.</p>
        <Unencrypted />
      </div>
      {first !== undefined && <CodePicture address={first} />}
    </section>
  );
}

function Unencrypted() {
  return (
    <div className="caution">
      <p>
        <strong>▲ In your own network only</strong> What a device sees and sends crosses the network unencrypted.
      </p>
    </div>
  );
}

function Devices({ devices, remove }: { readonly devices: readonly Device[]; readonly remove: (id: string) => void }) {
  return (
    <section className="sheet devices" aria-labelledby="devices-heading">
      <h2 id="devices-heading">Paired devices</h2>
      {devices.length === 0 ? (
        <p role="status">None yet.</p>
      ) : (
        <table>
          <thead>
            <tr>
              <th scope="col">Device</th>
              <th scope="col">Address</th>
              <th scope="col">Since</th>
              <th scope="col">Last seen</th>
              <th scope="col">
                <span className="unseen">Change the list</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {devices.map(({ id, name, address, since, seen }) => (
              <tr key={id}>
                <th scope="row">{name}</th>
                <td data-label="Address">{address.replace(/^::ffff:/, '')}</td>
                <td data-label="Since">{timeWords(since)}</td>
                <td data-label="Last seen">{timeWords(seen)}</td>
                <td className="tools">
                  <button type="button" onClick={() => remove(id)} aria-label={`Remove: ${name}`}>
                    Remove
                  </button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

const timeWords = (at: string): string =>
  new Date(at).toLocaleString(undefined, { dateStyle: 'short', timeStyle: 'short' });
