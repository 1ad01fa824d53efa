/** Cautions of the job: always in sight, never in the way. */
import type { JobPage } from '@sparewright/output/present/job-view';

export function Cautions({ page }: { readonly page: JobPage }) {
  if (page.cautions.length === 0) return null;
  return (
    <section className="cautions" aria-labelledby="cautions-heading">
      <h2 id="cautions-heading">Cautions</h2>
      {page.cautions.map(({ about, lines }) => (
        <div key={about} className="caution">
          <h3>▲ Caution: {about}</h3>
          {lines.map((line) => (
            <p key={line}>{line}</p>
          ))}
        </div>
      ))}
    </section>
  );
}
