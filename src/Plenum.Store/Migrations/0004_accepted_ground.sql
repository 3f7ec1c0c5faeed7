-- An accepted finding holds what it said then, so that it returns once it says something else.
CREATE TABLE accepted_findings_new (
    id INTEGER PRIMARY KEY,
    rule TEXT NOT NULL,
    code TEXT NOT NULL, -- of the element, account, scope item or entry that the finding is about
    finding TEXT, -- what it said when it was accepted; NULL: whatever it says
    reason TEXT NOT NULL,
    "by" TEXT,
    own_fields TEXT
) STRICT;
INSERT INTO accepted_findings_new (id, rule, code, reason, "by", own_fields)
SELECT id, rule, code, reason, "by", own_fields FROM accepted_findings;
DROP TABLE accepted_findings;
ALTER TABLE accepted_findings_new RENAME TO accepted_findings;
CREATE INDEX accepted_findings_key ON accepted_findings (rule, code, finding);
