/** The part's own drawing, and the way in to its numbers. The server paints it; here it is put in place and made touchable. */

import type { JobPage } from '@sparewright/output/present/job-view';
import { memo, useDeferredValue, useEffect, useLayoutEffect, useRef, useState } from 'react';
import { redraw, type Shown } from '../redraw.ts';
import { markSvg, whenChosen } from '../svg.ts';

interface Props {
  readonly page: JobPage;
  readonly marks: readonly string[];
  readonly choose: (mark: string, fromLeft?: number) => void;
}

export function Drawing({ page, marks, choose }: Props) {
  const host = useRef<HTMLDivElement>(null);
  const shown = useRef<Shown>(undefined);
  const [open, setOpen] = useState(false);

  // Before it is painted: a keystroke is not to wait for another frame.
  useLayoutEffect(() => {
    if (!host.current) return;
    if (page.drawing === null) host.current.replaceChildren();
    else shown.current = redraw(host.current, shown.current, page.drawing, page.sizes);
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
      <SizesInWords sizes={useDeferredValue(page.sizes)} units={page.units} />
    </section>
  );
}

/** The drawing for people who do not see it; it follows the drawing. */
const SizesInWords = memo(({ sizes, units }: Pick<JobPage, 'sizes' | 'units'>) => {
  return (
    <div className="unseen">
      <table>
        <caption>All sizes on the drawing, in {units === 'in' ? 'inches' : 'millimetres'}</caption>
        <thead>
          <tr>
            <th scope="col">Size</th>
            <th scope="col">Nominal</th>
            <th scope="col">Least</th>
            <th scope="col">Most</th>
          </tr>
        </thead>
        <tbody>
          {sizes.map((row) => (
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
});
