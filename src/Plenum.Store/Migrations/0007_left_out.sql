-- A part of a standard breakdown that was left out when it was taken over.
CREATE TABLE left_out (
    id INTEGER PRIMARY KEY,
    element_id INTEGER NOT NULL REFERENCES elements (id), -- the element below which it would stand
    part TEXT NOT NULL, -- name of the part, with all that is below it
    reason TEXT NOT NULL,
    standard TEXT, -- name of the standard breakdown
    own_fields TEXT
) STRICT;
CREATE UNIQUE INDEX left_out_key ON left_out (element_id, part);
