/** Every size of the part with its limits; what was typed can be typed anew in its place. */
import type { JobPage } from '@sparewright/output/present/job-view';
import { textAt } from '../document.ts';
import { belongsTo } from '../marks.ts';
import type { OpenJob } from '../use-job.ts';
import { SizeField } from './size-field.tsx';
import { WhySize } from './why-size.tsx';

interface Props {
  readonly job: OpenJob;
  readonly page: JobPage;
  readonly marks: readonly string[];
  readonly choose: (mark: string) => void;
}

export function SizeTable({ job, page, marks, choose }: Props) {
  const general = textAt(job.document, ['part', 'generalTolerance']);
  return (
    <table className="sizes">
      <caption>
        Sizes in {page.units === 'in' ? 'inches' : 'millimetres'}. Type as you would write it: 12,5 · 1/2 in · 40 f7 ·
        12 ±0.1
      </caption>
      <thead>
        <tr>
          <th scope="col">Size</th>
          <th scope="col">As typed</th>
          <th scope="col" className="figure">
            Least
          </th>
          <th scope="col" className="figure">
            Most
          </th>
          <th scope="col">By</th>
        </tr>
      </thead>
      <tbody>
        {page.sizes.map((row) => (
          <tr key={row.id} className={marks.some((m) => belongsTo(row.id, m)) ? 'chosen' : undefined}>
            <th scope="row">{row.title}</th>
            <td data-label="As typed">
              {row.entered === null ? (
                row.nominal
              ) : (
                <SizeField job={job} row={row} where="table" titled={false} onFocus={() => choose(row.id)} />
              )}
            </td>
            <td data-label="Least" className="figure">
              {row.least}
            </td>
            <td data-label="Most" className="figure">
              {row.most}
            </td>
            <td data-label="By">
              <span className="by">
                {row.basis}
                {row.entered !== null && (
                  <WhySize title={row.title} entered={row.entered} units={page.units} general={general} />
                )}
              </span>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
