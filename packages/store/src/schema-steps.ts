/** The tables, version by version. A released step is never changed; a new version is a new step at the end. */

/** `schemaSteps[0]` makes version 1 of an empty database, `schemaSteps[1]` version 2 of version 1, and so on. */
export const schemaSteps: readonly string[] = [
  `
  CREATE TABLE document (
    key INTEGER PRIMARY KEY,
    kind TEXT NOT NULL CHECK (kind IN ('job', 'workshop')),
    id TEXT NOT NULL,
    head INTEGER NOT NULL CHECK (head >= 0),
    UNIQUE (kind, id)
  ) STRICT;

  CREATE TABLE revision (
    document INTEGER NOT NULL REFERENCES document,
    number INTEGER NOT NULL CHECK (number >= 1),
    content BLOB NOT NULL,
    saved TEXT NOT NULL,
    author TEXT,
    undoes INTEGER,
    stage TEXT,
    level TEXT CHECK (level IN ('stop', 'caution', 'note')),
    finding TEXT,
    PRIMARY KEY (document, number)
  ) STRICT;
  CREATE TRIGGER revision_stays BEFORE DELETE ON revision
    BEGIN SELECT RAISE(ABORT, 'a revision is never removed'); END;
  CREATE TRIGGER revision_unchanged BEFORE UPDATE OF document, number, content, saved, author, undoes ON revision
    BEGIN SELECT RAISE(ABORT, 'a revision is never changed'); END;

  CREATE TABLE revision_name (
    document INTEGER NOT NULL,
    name TEXT NOT NULL,
    number INTEGER NOT NULL,
    PRIMARY KEY (document, name),
    FOREIGN KEY (document, number) REFERENCES revision (document, number)
  ) STRICT;

  CREATE TABLE job (
    document INTEGER PRIMARY KEY REFERENCES document,
    title TEXT NOT NULL,
    machine TEXT NOT NULL,
    hazard TEXT NOT NULL,
    created TEXT NOT NULL,
    updated TEXT NOT NULL,
    binned TEXT
  ) STRICT;
  CREATE INDEX job_by_time ON job (updated DESC) WHERE binned IS NULL;
  CREATE VIRTUAL TABLE job_search USING fts5 (
    title, machine, part, features, notes,
    content = '', contentless_delete = 1, tokenize = "unicode61 remove_diacritics 2", prefix = '2 3'
  );

  CREATE TABLE bench_entry (
    sequence INTEGER PRIMARY KEY,
    document INTEGER NOT NULL REFERENCES document,
    id TEXT NOT NULL,
    at TEXT NOT NULL,
    received TEXT NOT NULL,
    content TEXT NOT NULL,
    UNIQUE (document, id)
  ) STRICT;
  CREATE TRIGGER bench_entry_stays BEFORE DELETE ON bench_entry
    BEGIN SELECT RAISE(ABORT, 'the bench log is only added to'); END;
  CREATE TRIGGER bench_entry_unchanged BEFORE UPDATE ON bench_entry
    BEGIN SELECT RAISE(ABORT, 'the bench log is only added to'); END;

  CREATE TABLE attachment (
    hash TEXT PRIMARY KEY CHECK (length(hash) = 64),
    type TEXT NOT NULL,
    name TEXT NOT NULL,
    size INTEGER NOT NULL,
    added TEXT NOT NULL
  ) STRICT;
  CREATE TABLE attachment_link (
    document INTEGER NOT NULL REFERENCES document,
    hash TEXT NOT NULL REFERENCES attachment,
    since TEXT NOT NULL,
    hidden TEXT,
    PRIMARY KEY (document, hash)
  ) STRICT;
  -- Hashes that stand in the text of a revision or a bench entry; the file may arrive later.
  CREATE TABLE attachment_mention (
    document INTEGER NOT NULL REFERENCES document,
    hash TEXT NOT NULL,
    PRIMARY KEY (document, hash)
  ) STRICT, WITHOUT ROWID;
  `,
];
