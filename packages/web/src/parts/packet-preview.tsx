/** The packet as it will lie on the bench, page by page, before it is printed. */
import { useEffect, useState } from 'react';
import { fetchJson, jobAddress, Refused } from '../ask-server.ts';

interface Props {
  readonly id: string;
  readonly paper: 'A4' | 'Letter';
  /** With every kept change it is another packet. */
  readonly revision: number;
}

interface Laid {
  readonly revision: number;
  readonly pages: number;
}

export function PacketPreview({ id, paper, revision }: Props) {
  const [laid, setLaid] = useState<Laid>();
  const [trouble, setTrouble] = useState('');
  const [large, setLarge] = useState<number>();
  useEffect(() => {
    const stop = new AbortController();
    fetchJson<Laid>(`${jobAddress(id)}/packet?paper=${paper}`, { signal: stop.signal }).then(
      (answer) => {
        if (answer.revision < revision) return;
        setLaid(answer);
        setTrouble('');
      },
      (error: unknown) => {
        if (!stop.signal.aborted) setTrouble(error instanceof Refused ? error.message : 'The pages did not come.');
      },
    );
    return () => stop.abort();
  }, [id, paper, revision]);

  if (trouble !== '')
    return (
      <p className="refusal" role="alert">
        {trouble}
      </p>
    );
  if (!laid) return <p role="status">Laying out the packet …</p>;
  const address = (page: number): string =>
    `${jobAddress(id)}/packet/${page}.svg?paper=${paper}&revision=${laid.revision}`;
  return (
    <>
      <p role="status" className="understood">
        {laid.pages} pages on {paper}, as of revision {laid.revision}.
      </p>
      <ol className="packet-pages">
        {Array.from({ length: laid.pages }, (_, i) => i + 1).map((page) => (
          <li key={page} className={page === large ? 'enlarged' : undefined}>
            <div className="page-window" tabIndex={page === large ? 0 : undefined}>
              <img src={address(page)} alt={`Page ${page} of the packet`} loading="lazy" />
            </div>
            <button
              type="button"
              aria-pressed={page === large}
              onClick={() => setLarge(page === large ? undefined : page)}
            >
              Page {page}, {page === large ? 'smaller' : 'larger'}
            </button>
          </li>
        ))}
      </ol>
    </>
  );
}
