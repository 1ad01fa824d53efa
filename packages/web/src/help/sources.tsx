/** The register of sources: what every formula and value rests on, and how far each is to be trusted. */
import { type SourceKey, source, sourceKeys } from '@sparewright/core/sources/register';
import { useState } from 'react';

const kinds = ['read', 'from memory', 'common practice', 'computed'] as const;
type Kind = (typeof kinds)[number];

const kindWords: Readonly<Record<Kind, string>> = {
  read: 'looked up in print or in a readable copy',
  'from memory': 'known, not looked up: check it before anything hangs on it',
  'common practice': 'what workshops do, traced to no publication',
  computed: 'worked out here, by the formula named',
};

const byTitle: readonly SourceKey[] = sourceKeys.toSorted((a, b) =>
  source(a).title.localeCompare(source(b).title, 'en'),
);

export function Sources() {
  const [search, setSearch] = useState('');
  const [kind, setKind] = useState<Kind | 'all'>('all');
  const words = search.toLowerCase().split(/\s+/).filter(Boolean);
  const found = byTitle.filter((key) => {
    const { title, note = '', kind: its } = source(key);
    const text = `${key} ${title} ${note}`.toLowerCase();
    return (kind === 'all' || its === kind) && words.every((word) => text.includes(word));
  });
  return (
    <>
      <p>
        Everything that is computed names its source. What was not read is marked, so that you can tell how much hangs
        on it.
      </p>
      <div className="fields">
        <span className="field wide">
          <label htmlFor="source-search">Search title, note, short name</label>
          <input id="source-search" type="search" value={search} onChange={(e) => setSearch(e.target.value)} />
        </span>
        <span className="field">
          <label htmlFor="source-kind">Standing</label>
          <select
            id="source-kind"
            value={kind}
            onChange={(e) => setKind(kinds.find((k) => k === e.target.value) ?? 'all')}
          >
            <option value="all">all</option>
            {kinds.map((k) => (
              <option key={k}>{k}</option>
            ))}
          </select>
        </span>
      </div>
      <dl className="facts">
        {kinds.map((k) => (
          <div key={k}>
            <dt>{k}</dt>
            <dd>{kindWords[k]}</dd>
          </div>
        ))}
      </dl>
      <p role="status" className="understood">
        {found.length === 1 ? '1 source' : `${found.length} sources`}
      </p>
      <ul className="sources">
        {found.map((key) => (
          <SourceItem key={key} id={key} />
        ))}
      </ul>
    </>
  );
}

function SourceItem({ id }: { readonly id: SourceKey }) {
  const { title, kind, address, note } = source(id);
  return (
    <li>
      <span className="key">{id}</span> {title} <strong>{kind}</strong>
      {note !== undefined && <span className="secondary"> {note}</span>}
      {address !== undefined && <span className="secondary address">{address}</span>}
    </li>
  );
}
