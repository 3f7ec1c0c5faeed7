-- Revisions of the scope statement, phrases to be answered, and queries to the client.

-- A revision of the scope statement.
CREATE TABLE scope_revisions (
    id INTEGER PRIMARY KEY,
    revision TEXT NOT NULL,
    signed TEXT, -- when it was signed; NULL while it is a draft
    note TEXT,
    own_fields TEXT
) STRICT;
CREATE UNIQUE INDEX scope_revisions_key ON scope_revisions (revision);

ALTER TABLE scope ADD COLUMN revision_id INTEGER REFERENCES scope_revisions (id); -- in which the present wording came
ALTER TABLE scope ADD COLUMN withdrawn_id INTEGER REFERENCES scope_revisions (id); -- in which the item was withdrawn

-- What a scope item said before a revision changed it.
CREATE TABLE scope_wordings (
    id INTEGER PRIMARY KEY,
    item_id INTEGER NOT NULL REFERENCES scope (id),
    revision_id INTEGER NOT NULL REFERENCES scope_revisions (id), -- the revision that replaced this wording
    kind TEXT NOT NULL, -- deliverable, requirement, exclusion, assumption, constraint or acceptance
    text TEXT NOT NULL,
    clause TEXT,
    since_id INTEGER REFERENCES scope_revisions (id), -- the revision in which this wording had come
    own_fields TEXT
) STRICT;
CREATE UNIQUE INDEX scope_wordings_key ON scope_wordings (item_id, revision_id);

-- A phrase of a scope item that has to be answered on its own.
CREATE TABLE scope_phrases (
    id INTEGER PRIMARY KEY,
    item_id INTEGER NOT NULL REFERENCES scope (id),
    phrase TEXT NOT NULL, -- the words of the item that have to be answered
    own_fields TEXT
) STRICT;
CREATE UNIQUE INDEX scope_phrases_key ON scope_phrases (item_id, phrase);

-- A query to the client about the scope statement.
CREATE TABLE queries (
    id INTEGER PRIMARY KEY,
    query TEXT NOT NULL,
    item_id INTEGER REFERENCES scope (id), -- the item that it is about; NULL for the whole statement
    text TEXT NOT NULL,
    asked TEXT,
    asked_by TEXT,
    answer TEXT, -- NULL while the query is open
    answered TEXT,
    own_fields TEXT
) STRICT;
CREATE UNIQUE INDEX queries_key ON queries (query);

-- What answers each item of the scope statement that holds, and each phrase; without element: nothing does.
DROP VIEW scope_coverage;
CREATE VIEW scope_coverage AS
SELECT s.item, s.kind, s.text, t.phrase, e.code AS element, e.name AS element_name
FROM scope AS s
LEFT JOIN trace AS t ON t.item_id = s.id
LEFT JOIN elements AS e ON e.id = t.element_id
WHERE s.withdrawn_id IS NULL
UNION ALL
SELECT s.item, s.kind, s.text, p.phrase, NULL, NULL
FROM scope_phrases AS p
JOIN scope AS s ON s.id = p.item_id AND s.withdrawn_id IS NULL
WHERE NOT EXISTS (
    SELECT 1 FROM trace AS t WHERE t.item_id = s.id AND (t.phrase IS NULL OR lower(t.phrase) = lower(p.phrase))
);
