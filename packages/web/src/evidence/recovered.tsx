/** What the readings say the part was meant to be, feature by feature, and what to measure next. */
import type { RecoveredView } from '@sparewright/output/present/job-view';
import { belongsTo } from '../marks.ts';
import type { OpenJob } from '../use-job.ts';
import { Conflicts } from './conflicts.tsx';
import { RecoveredFeature } from './recovered-feature.tsx';

interface Props {
  readonly job: OpenJob;
  readonly recovered: RecoveredView;
  readonly marks: readonly string[];
}

export function Recovered({ job, recovered, marks }: Props) {
  const { habit, features, next, conflicts } = recovered;
  const undecided = features.find((f) => f.takes.length > 0 && f.decision === null);
  return (
    <section className="recovered" aria-labelledby="recovered-heading">
      <h3 className="large" id="recovered-heading">
        What it was meant to be
      </h3>
      <p className="secondary">
        {habit} Solid is what was measured, pencil what follows from it. How common sizes and limits are is workshop
        judgement.
      </p>
      {next.length > 0 && (
        <div className="measure-next">
          <h4>Worth measuring next</h4>
          <ol className="lines">
            {next.map((says) => (
              <li key={says}>{says}</li>
            ))}
          </ol>
        </div>
      )}
      <Conflicts findings={conflicts} />
      {features.map((feature) => (
        <RecoveredFeature
          key={feature.openAs}
          job={job}
          feature={feature}
          isFirst={feature === undecided}
          isMarked={marks.some((mark) => belongsTo(feature.of, mark))}
        />
      ))}
    </section>
  );
}
