-- A package that is handed to a person, and how far that has come.
CREATE TABLE delegations (
    id INTEGER PRIMARY KEY,
    package_id INTEGER NOT NULL REFERENCES elements (id),
    person_id INTEGER NOT NULL REFERENCES people (id), -- to whom
    state TEXT NOT NULL, -- offered, accepted, open, closed or work_accepted
    offered TEXT,
    accepted TEXT, -- by the person
    opened TEXT, -- for charging
    closed TEXT,
    work_accepted TEXT,
    note TEXT,
    own_fields TEXT
) STRICT;
CREATE UNIQUE INDEX delegations_key ON delegations (package_id);
