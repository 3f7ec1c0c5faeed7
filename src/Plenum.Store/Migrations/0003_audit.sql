-- Words from which the logic of a split is read, beside those that come with the program.
CREATE TABLE split_words (
    id INTEGER PRIMARY KEY,
    word TEXT NOT NULL,
    role TEXT NOT NULL, -- phase, part, function, place, discipline, organisation, contract; or what it does in a name
    strength INTEGER, -- 1 weak to 3 strong, 0 takes the word out; NULL: 3
    own_fields TEXT
) STRICT;
CREATE UNIQUE INDEX split_words_key ON split_words (word, role);

-- Findings of the audit that stay, with the reason.
CREATE TABLE accepted_findings (
    id INTEGER PRIMARY KEY,
    rule TEXT NOT NULL,
    code TEXT NOT NULL, -- of the element, account, scope item or entry that the finding is about
    reason TEXT NOT NULL,
    "by" TEXT,
    own_fields TEXT
) STRICT;
CREATE UNIQUE INDEX accepted_findings_key ON accepted_findings (rule, code);
