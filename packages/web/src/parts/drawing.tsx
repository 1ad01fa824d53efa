/** The part's own drawing, and the way in to its numbers. The server paints it; here it is put in place and made touchable. */

import type { JobPage } from '@sparewright/output/present/job-view';
import { useEffect, useLayoutEffect, useRef, useState } from 'react';
import { markSvg, readSvg, whenChosen } from '../svg.ts';

interface Props {
  readonly page: JobPage;
  readonly marks: readonly string[];
  readonly choose: (mark: string, fromLeft?: number) => void;
}

export function Drawing({ page, marks, choose }: Props) {
  const host = useRef<HTMLDivElement>(null);
  const [open, setOpen] = useState(false);

  // Before it is painted: a keystroke is not to wait for another frame.
  useLayoutEffect(() => {
    const svg = page.drawing === null ? undefined : readSvg(page.drawing, page.sizes);
    host.current?.replaceChildren(...(svg ? [svg] : []));
  }, [page.drawing, page.sizes]);

  useEffect(() => (host.current ? whenChosen(host.current, choose) : undefined), [choose]);

  useLayoutEffect(() => {
    if (host.current) markSvg(host.current, marks, page.findings);
  }, [marks, page]);

  return (
    <section className={open ? 'drawing open' : 'drawing'} aria-label="Drawing">
      {page.drawing === null && <p className="nothing">No part is entered yet, so there is nothing to draw.</p>}
      <div className="sheet-of-paper" ref={host} />
      <button type="button" className="open-drawing" aria-expanded={open} onClick={() => setOpen(!open)}>
        {open ? 'Fold the drawing up' : 'Open the drawing'}
      </button>
      <SizesInWords page={page} />
    </section>
  );
}

/** The drawing for people who do not see it. */
function SizesInWords({ page }: { readonly page: JobPage }) {
  return (
    <div className="unseen">
      <table>
        <caption>All sizes on the drawing, in {page.units === 'in' ? 'inches' : 'millimetres'}</caption>
        <thead>
          <tr>
            <th scope="col">Size</th>
            <th scope="col">Nominal</th>
            <th scope="col">Least</th>
            <th scope="col">Most</th>
          </tr>
        </thead>
        <tbody>
          {page.sizes.map((row) => (
            <tr key={row.id}>
              <th scope="row">{row.title}</th>
              <td>{row.nominal}</td>
              <td>{row.least}</td>
              <td>{row.most}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
