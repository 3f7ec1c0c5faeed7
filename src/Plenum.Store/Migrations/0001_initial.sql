-- A Plenum project. Everything in this file can be read with SQL; views with natural units follow in the next script.
--
-- How to read the columns
--   id                 number of the row, given once; ..._id is the number of a row in another table
--   ..._minor          money in minor units of the row's currency (cents), or of the project's where the row names none
--   ..._hundredths     hundredths of an hour
--   ..._basis_points   hundredths of a per cent
--   dates              ISO 8601 text; quantities, weights and rates are exact decimals, as text
--   own_fields         columns of the user's own (x_...), one JSON object of texts; NULL: none
--   type ANY           status fields: a value, NULL for not given, or '-' where an earlier value is taken back
--
-- Plenum checks all references itself before it commits.

PRAGMA application_id = 0x504C4E4D;

-- What the file is: project_uid (never changes), revision (counts the commands), revision_token (drawn anew by every
-- command), currency, currency_digits, currency_minor_units (minor units of one unit).
CREATE TABLE plenum (
    "key" TEXT PRIMARY KEY,
    value TEXT NOT NULL
) STRICT, WITHOUT ROWID;

-- Who changed what, when and why: one row for each command, never changed.
CREATE TABLE audit (
    id INTEGER PRIMARY KEY,
    at TEXT NOT NULL, -- UTC, ISO 8601
    person TEXT NOT NULL,
    command TEXT NOT NULL,
    reason TEXT,
    change TEXT, -- number of the change request, as it was then
    revision INTEGER NOT NULL, -- the project's revision afterwards
    counts TEXT NOT NULL -- rows by table: {"elements": {"added": 1, "updated": 0, "removed": 0}}
) STRICT;

-- A setting of the whole project.
CREATE TABLE project (
    id INTEGER PRIMARY KEY,
    "key" TEXT NOT NULL, -- code, name, currency, start, status_date and so on
    value TEXT NOT NULL,
    own_fields TEXT
) STRICT;
CREATE UNIQUE INDEX project_key ON project ("key");

-- A calendar and its working week.
CREATE TABLE calendars (
    id INTEGER PRIMARY KEY,
    calendar TEXT NOT NULL,
    working TEXT NOT NULL, -- seven marks Monday to Sunday, 1 for a working day: 1111100
    name TEXT,
    own_fields TEXT
) STRICT;
CREATE UNIQUE INDEX calendars_key ON calendars (calendar);

-- A day on which a calendar's week does not hold.
CREATE TABLE calendar_days (
    id INTEGER PRIMARY KEY,
    calendar_id INTEGER NOT NULL REFERENCES calendars (id),
    date TEXT NOT NULL,
    working INTEGER NOT NULL, -- 1 if the day is worked, 0 if not, whatever the week says
    note TEXT,
    own_fields TEXT
) STRICT;
CREATE UNIQUE INDEX calendar_days_key ON calendar_days (calendar_id, date);

-- A reporting period.
CREATE TABLE periods (
    id INTEGER PRIMARY KEY,
    period TEXT NOT NULL,
    "end" TEXT NOT NULL, -- last day, inclusive; the next period begins on the day after
    own_fields TEXT
) STRICT;
CREATE UNIQUE INDEX periods_key ON periods (period);

-- One item of the scope statement.
CREATE TABLE scope (
    id INTEGER PRIMARY KEY,
    item TEXT NOT NULL,
    parent_id INTEGER REFERENCES scope (id), -- the item that this one is part of
    kind TEXT NOT NULL, -- deliverable, requirement, exclusion, assumption, constraint or acceptance
    text TEXT NOT NULL,
    clause TEXT, -- where it stands in the contract
    own_fields TEXT
) STRICT;
CREATE UNIQUE INDEX scope_key ON scope (item);

-- An organisation unit.
CREATE TABLE units (
    id INTEGER PRIMARY KEY,
    unit TEXT NOT NULL,
    name TEXT,
    parent_id INTEGER REFERENCES units (id), -- the unit that this one belongs to
    own_fields TEXT
) STRICT;
CREATE UNIQUE INDEX units_key ON units (unit);

-- A person.
CREATE TABLE people (
    id INTEGER PRIMARY KEY,
    person TEXT NOT NULL,
    name TEXT,
    unit_id INTEGER REFERENCES units (id), -- the unit that the person belongs to
    email TEXT,
    own_fields TEXT
) STRICT;
CREATE UNIQUE INDEX people_key ON people (person);

-- A kind of part.
CREATE TABLE part_types (
    id INTEGER PRIMARY KEY,
    part_type TEXT NOT NULL,
    name TEXT,
    own_fields TEXT
) STRICT;
CREATE UNIQUE INDEX part_types_key ON part_types (part_type);

-- An activity that every part of a type needs.
CREATE TABLE work_sets (
    id INTEGER PRIMARY KEY,
    part_type_id INTEGER NOT NULL REFERENCES part_types (id),
    activity TEXT NOT NULL, -- the activity that any such part needs
    facet TEXT, -- engineering, procurement, construction, commissioning, close, or another word
    "order" INTEGER, -- place within the set
    share TEXT, -- usual share of the part's cost, in per cent
    duration INTEGER, -- usual duration in working days
    technique TEXT, -- usual earned value technique
    after TEXT, -- activities of the set that come before, separated by semicolons
    hazards TEXT, -- usual hazards, separated by semicolons
    own_fields TEXT
) STRICT;
CREATE UNIQUE INDEX work_sets_key ON work_sets (part_type_id, activity);

-- An element of the work breakdown structure.
CREATE TABLE elements (
    id INTEGER PRIMARY KEY,
    code TEXT NOT NULL, -- WBS code
    parent_id INTEGER REFERENCES elements (id), -- NULL for the one root
    "order" INTEGER, -- place among its sisters; those without one come after, by code
    name TEXT NOT NULL,
    kind TEXT, -- project, branch, work_package or planning_package; NULL: by position
    split TEXT, -- the one logic by which it is split
    part_type_id INTEGER REFERENCES part_types (id), -- what kind of part it is
    activity TEXT, -- the activity of the work set that the package carries out
    person_id INTEGER REFERENCES people (id), -- in charge; NULL: as the nearest ancestor that names one
    unit_id INTEGER REFERENCES units (id), -- NULL: as the nearest ancestor that names one
    description TEXT, -- dictionary: what it is
    output TEXT, -- dictionary: what it delivers
    included TEXT, -- dictionary: what is in it
    excluded TEXT, -- dictionary: what is not in it
    acceptance TEXT, -- dictionary: when it is done
    assumptions TEXT, -- dictionary: what is assumed
    quantity TEXT, -- quantity of its output
    quantity_unit TEXT,
    hazards TEXT, -- separated by semicolons; naming one authorises nothing
    allotted_minor INTEGER, -- money given to it from above
    allotted_hours_hundredths INTEGER, -- hours given to it from above
    own_fields TEXT
) STRICT;
CREATE UNIQUE INDEX elements_key ON elements (code);

-- An element that answers a scope item, whole or by phrase.
CREATE TABLE trace (
    id INTEGER PRIMARY KEY,
    item_id INTEGER NOT NULL REFERENCES scope (id),
    element_id INTEGER NOT NULL REFERENCES elements (id), -- the element that answers it
    phrase TEXT, -- the words of the item that are answered; empty for the whole item
    own_fields TEXT
) STRICT;
CREATE INDEX trace_key ON trace (item_id, element_id, phrase);

-- An activity that a part does not need.
CREATE TABLE not_needed (
    id INTEGER PRIMARY KEY,
    element_id INTEGER NOT NULL REFERENCES elements (id),
    activity TEXT NOT NULL, -- the activity of the part type's work set
    reason TEXT NOT NULL,
    own_fields TEXT
) STRICT;
CREATE UNIQUE INDEX not_needed_key ON not_needed (element_id, activity);

-- An opportunity, constraint, risk or interface on an element.
CREATE TABLE register (
    id INTEGER PRIMARY KEY,
    entry TEXT NOT NULL,
    element_id INTEGER NOT NULL REFERENCES elements (id), -- the element on which it was found
    kind TEXT NOT NULL,
    text TEXT NOT NULL,
    owner TEXT, -- who follows it up
    low_minor INTEGER, -- effect in money, low
    likely_minor INTEGER,
    high_minor INTEGER,
    days_low TEXT, -- effect in days, low
    days_likely TEXT,
    days_high TEXT,
    giver TEXT, -- interface: who gives
    receiver TEXT, -- interface: who receives
    need_by TEXT, -- interface: when it is needed
    promised TEXT, -- interface: when it is promised
    own_fields TEXT
) STRICT;
CREATE UNIQUE INDEX register_key ON register (entry);

-- A control account.
CREATE TABLE accounts (
    id INTEGER PRIMARY KEY,
    account TEXT NOT NULL,
    element_id INTEGER NOT NULL REFERENCES elements (id), -- the element on which it stands
    unit_id INTEGER NOT NULL REFERENCES units (id), -- the unit that does the work
    manager_id INTEGER NOT NULL REFERENCES people (id),
    name TEXT,
    own_fields TEXT
) STRICT;
CREATE UNIQUE INDEX accounts_key ON accounts (account);

-- A group of a grouping.
CREATE TABLE "groups" (
    id INTEGER PRIMARY KEY,
    grouping TEXT NOT NULL,
    "group" TEXT NOT NULL, -- code of the group within the grouping
    name TEXT,
    parent TEXT, -- the group of the same grouping that this one is part of
    own_fields TEXT
) STRICT;
CREATE UNIQUE INDEX groups_key ON "groups" (grouping, "group");

-- A package in a group.
CREATE TABLE group_members (
    id INTEGER PRIMARY KEY,
    grouping TEXT NOT NULL,
    package_id INTEGER NOT NULL REFERENCES elements (id),
    "group" TEXT NOT NULL, -- the group that it is in
    own_fields TEXT
) STRICT;
CREATE UNIQUE INDEX group_members_key ON group_members (grouping, package_id);

-- Account, technique, spread and baseline dates of a package.
CREATE TABLE packages (
    id INTEGER PRIMARY KEY,
    package_id INTEGER NOT NULL REFERENCES elements (id), -- code of an element of kind work_package or planning_package
    account_id INTEGER REFERENCES accounts (id), -- the account that it names; NULL: found by position and unit
    technique TEXT, -- 0/100, 50/50, any a/b, milestones, percent, units, items, loe, apportioned
    base_id INTEGER REFERENCES elements (id), -- the package that apportioned effort follows
    spread TEXT, -- even (also where none is given), falling, rising, s_shaped, periods
    start TEXT,
    finish TEXT,
    own_fields TEXT
) STRICT;
CREATE UNIQUE INDEX packages_key ON packages (package_id);

-- The budget of a package for one cost element.
CREATE TABLE budget (
    id INTEGER PRIMARY KEY,
    package_id INTEGER NOT NULL REFERENCES elements (id),
    cost_element TEXT NOT NULL, -- labour, material, equipment, subcontract, other
    amount_minor INTEGER NOT NULL, -- budget, in the row's currency
    hours_hundredths INTEGER,
    currency TEXT, -- NULL: the project's
    rate TEXT, -- units of the project's currency for one of the row's
    converted_minor INTEGER, -- the amount in the project's currency
    own_fields TEXT
) STRICT;
CREATE UNIQUE INDEX budget_key ON budget (package_id, cost_element);

-- What a package plans in a period. The amounts add up to its budget.
CREATE TABLE budget_periods (
    id INTEGER PRIMARY KEY,
    package_id INTEGER NOT NULL REFERENCES elements (id), -- the package; its spread is periods
    period_id INTEGER NOT NULL REFERENCES periods (id), -- a period that touches the package's baseline dates
    amount_minor INTEGER NOT NULL, -- planned in this period, in the project's currency
    cost_element TEXT, -- NULL: the amounts are those of the whole package
    own_fields TEXT
) STRICT;
CREATE INDEX budget_periods_key ON budget_periods (package_id, period_id, cost_element);

-- A weighted milestone of a package.
CREATE TABLE milestones (
    id INTEGER PRIMARY KEY,
    package_id INTEGER NOT NULL REFERENCES elements (id),
    milestone TEXT NOT NULL, -- code of the milestone within the package
    weight TEXT NOT NULL, -- weight; what counts is its share of all weights of the package
    planned TEXT, -- NULL: the package's baseline finish
    own_fields TEXT
) STRICT;
CREATE UNIQUE INDEX milestones_key ON milestones (package_id, milestone);

-- A step of a rule of credit.
CREATE TABLE credit_steps (
    id INTEGER PRIMARY KEY,
    rule TEXT NOT NULL,
    step TEXT NOT NULL,
    percent_basis_points INTEGER NOT NULL, -- what the step earns, in per cent; all steps of a rule add up to 100
    "order" INTEGER, -- place of the step
    own_fields TEXT
) STRICT;
CREATE UNIQUE INDEX credit_steps_key ON credit_steps (rule, step);

-- An item of bulk work, a drawing, a purchased piece or a loop within a package.
CREATE TABLE items (
    id INTEGER PRIMARY KEY,
    package_id INTEGER NOT NULL REFERENCES elements (id),
    item TEXT NOT NULL, -- code of the item within the package
    name TEXT,
    quantity TEXT,
    hours_hundredths INTEGER, -- hours; the weight of the item in its package
    rule TEXT, -- rule of credit by which it earns
    own_fields TEXT
) STRICT;
CREATE UNIQUE INDEX items_key ON items (package_id, item);

-- An estimate line.
CREATE TABLE estimate (
    id INTEGER PRIMARY KEY,
    package_id INTEGER NOT NULL REFERENCES elements (id),
    cost_element TEXT NOT NULL,
    line TEXT, -- line number, where there are several
    quantity TEXT,
    unit TEXT,
    hours_per_unit TEXT, -- hours for one unit
    rate TEXT, -- money for one hour, or for one unit
    amount_minor INTEGER,
    low_minor INTEGER,
    likely_minor INTEGER,
    high_minor INTEGER,
    class TEXT,
    basis TEXT,
    base_date TEXT, -- date of the prices
    currency TEXT, -- NULL: the project's
    own_fields TEXT
) STRICT;
CREATE INDEX estimate_key ON estimate (package_id, cost_element, line);

-- An activity of a package. A package without activities is one activity with the package's code.
CREATE TABLE activities (
    id INTEGER PRIMARY KEY,
    activity TEXT NOT NULL,
    package_id INTEGER NOT NULL REFERENCES elements (id), -- the package that it belongs to
    name TEXT,
    duration INTEGER NOT NULL, -- working days; 0 for a milestone
    calendar_id INTEGER REFERENCES calendars (id), -- NULL: the project's
    start_no_earlier TEXT,
    start_no_later TEXT,
    finish_no_earlier TEXT,
    finish_no_later TEXT,
    start_on TEXT,
    finish_on TEXT,
    required_by TEXT, -- contract date that is tested and moves nothing
    low INTEGER, -- working days
    high INTEGER, -- working days
    own_fields TEXT
) STRICT;
CREATE UNIQUE INDEX activities_key ON activities (activity);

-- A link between two activities.
CREATE TABLE links (
    id INTEGER PRIMARY KEY,
    -- each end is an activity, or a package that has no activities
    from_activity_id INTEGER REFERENCES activities (id),
    from_element_id INTEGER REFERENCES elements (id)
        CHECK ((from_activity_id IS NULL) <> (from_element_id IS NULL)),
    to_activity_id INTEGER REFERENCES activities (id),
    to_element_id INTEGER REFERENCES elements (id)
        CHECK ((to_activity_id IS NULL) <> (to_element_id IS NULL)),
    type TEXT, -- FS, SS, FF or SF
    lag INTEGER, -- working days of the predecessor's calendar; negative for a lead
    own_fields TEXT
) STRICT;
CREATE INDEX links_key ON links (from_activity_id, from_element_id, to_activity_id, to_element_id, type);

-- Status of a package at a period's end. A field holds until a later row gives it anew; - takes it back.
CREATE TABLE status (
    id INTEGER PRIMARY KEY,
    package_id INTEGER NOT NULL REFERENCES elements (id),
    period_id INTEGER NOT NULL REFERENCES periods (id),
    started ANY,
    finished ANY,
    percent_basis_points ANY, -- per cent complete, 0 to 100
    units_done ANY, -- units done so far
    quantity ANY, -- current forecast of all units
    etc_minor ANY, -- cost still to come
    remaining ANY, -- remaining working days
    assumed INTEGER, -- 1 if same as planned was assumed
    remark TEXT,
    "by" TEXT,
    own_fields TEXT
) STRICT;
CREATE UNIQUE INDEX status_key ON status (package_id, period_id);

-- Status of an activity at a period's end.
CREATE TABLE activity_status (
    id INTEGER PRIMARY KEY,
    activity_id INTEGER NOT NULL REFERENCES activities (id),
    period_id INTEGER NOT NULL REFERENCES periods (id),
    started ANY,
    finished ANY,
    remaining ANY, -- remaining working days
    own_fields TEXT
) STRICT;
CREATE UNIQUE INDEX activity_status_key ON activity_status (activity_id, period_id);

-- A milestone reached, reported in a period.
CREATE TABLE milestone_status (
    id INTEGER PRIMARY KEY,
    package_id INTEGER NOT NULL REFERENCES elements (id),
    milestone TEXT NOT NULL, -- a milestone of the package
    period_id INTEGER NOT NULL REFERENCES periods (id),
    done ANY, -- date on which it was reached
    own_fields TEXT
) STRICT;
CREATE UNIQUE INDEX milestone_status_key ON milestone_status (package_id, milestone, period_id);

-- A step done on an item, reported in a period.
CREATE TABLE item_steps (
    id INTEGER PRIMARY KEY,
    item TEXT NOT NULL,
    package_id INTEGER NOT NULL REFERENCES elements (id),
    step TEXT NOT NULL, -- a step of the item's rule of credit
    period_id INTEGER NOT NULL REFERENCES periods (id),
    quantity ANY, -- done so far; NULL: the whole step is done
    own_fields TEXT
) STRICT;
CREATE UNIQUE INDEX item_steps_key ON item_steps (item, package_id, step, period_id);

-- A ledger row of actual cost. A known document line never changes.
CREATE TABLE actuals (
    id INTEGER PRIMARY KEY,
    document TEXT NOT NULL,
    line TEXT NOT NULL,
    -- charged to a package, or to a control account as such
    charge_element_id INTEGER REFERENCES elements (id),
    charge_account_id INTEGER REFERENCES accounts (id)
        CHECK ((charge_element_id IS NULL) <> (charge_account_id IS NULL)),
    period_id INTEGER NOT NULL REFERENCES periods (id),
    cost_element TEXT NOT NULL,
    amount_minor INTEGER NOT NULL, -- amount in the row's currency; negative for a credit
    hours_hundredths INTEGER,
    kind TEXT, -- invoiced (also NULL) or accrual, which is reversed in the next period
    currency TEXT, -- NULL: the project's
    rate TEXT, -- units of the project's currency for one of the row's
    converted_minor INTEGER, -- the amount in the project's currency
    own_fields TEXT
) STRICT;
CREATE UNIQUE INDEX actuals_key ON actuals (document, line);

-- A line of an order or subcontract.
CREATE TABLE commitments (
    id INTEGER PRIMARY KEY,
    "order" TEXT NOT NULL, -- order or subcontract number
    line TEXT NOT NULL,
    package_id INTEGER NOT NULL REFERENCES elements (id),
    cost_element TEXT NOT NULL,
    amount_minor INTEGER NOT NULL, -- committed, approved changes included
    pending_minor INTEGER, -- changes that are not approved yet
    supplier TEXT,
    date TEXT, -- date of the order; undated counts always
    own_fields TEXT
) STRICT;
CREATE UNIQUE INDEX commitments_key ON commitments ("order", line);

-- A change request, or the contract itself.
CREATE TABLE changes (
    id INTEGER PRIMARY KEY,
    change TEXT NOT NULL,
    title TEXT,
    reason TEXT,
    state TEXT, -- draft, submitted, approved, rejected or implemented
    decided_on TEXT,
    decided_by TEXT,
    own_fields TEXT
) STRICT;
CREATE UNIQUE INDEX changes_key ON changes (change);

-- A movement of budget from one account of the budget ledger to another.
CREATE TABLE postings (
    id INTEGER PRIMARY KEY,
    change_id INTEGER NOT NULL REFERENCES changes (id), -- the change that authorises it; the opening names the contract
    posting TEXT NOT NULL, -- number of the posting within the change
    -- from a control account, or from contract, reserve, undistributed or allowances
    from_account_id INTEGER REFERENCES accounts (id),
    from_fund TEXT CHECK ((from_account_id IS NULL) <> (from_fund IS NULL)),
    to_account_id INTEGER REFERENCES accounts (id),
    to_fund TEXT CHECK ((to_account_id IS NULL) <> (to_fund IS NULL)),
    amount_minor INTEGER NOT NULL,
    cost_element TEXT,
    own_fields TEXT
) STRICT;
CREATE UNIQUE INDEX postings_key ON postings (change_id, posting);

-- Families of elements, for the tree.
CREATE INDEX elements_parent ON elements (parent_id);

-- Accounts of an element, for finding the account of a package.
CREATE INDEX accounts_element ON accounts (element_id, unit_id);
