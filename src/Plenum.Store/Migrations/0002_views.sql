-- Views for reading: codes and names in place of row numbers, money in units of the project's currency, hours, per
-- cent. Amounts are floating-point here; for exact sums use the ..._minor columns of the tables.

-- One row: the project's currency and how many minor units one unit has.
CREATE VIEW currency_unit AS
SELECT
    (SELECT value FROM plenum WHERE "key" = 'currency') AS currency,
    (SELECT CAST(value AS REAL) FROM plenum WHERE "key" = 'currency_minor_units') AS minor_units;

-- For each element its level (root 1), the person in charge and the unit that it has or inherits, the nearest element
-- upwards that has control accounts, and its kind, named or by position.
CREATE VIEW element_places AS
WITH RECURSIVE place (element_id, level, person_id, unit_id, accounts_element_id) AS (
    SELECT
        id,
        1,
        person_id,
        unit_id,
        CASE WHEN EXISTS (SELECT 1 FROM accounts AS a WHERE a.element_id = elements.id) THEN id END
    FROM elements
    WHERE parent_id IS NULL
    UNION ALL
    SELECT
        e.id,
        place.level + 1,
        coalesce(e.person_id, place.person_id),
        coalesce(e.unit_id, place.unit_id),
        CASE
            WHEN EXISTS (SELECT 1 FROM accounts AS a WHERE a.element_id = e.id) THEN e.id
            ELSE place.accounts_element_id
        END
    FROM place
    JOIN elements AS e ON e.parent_id = place.element_id
)
SELECT
    place.*,
    coalesce(
        e.kind,
        CASE
            WHEN e.parent_id IS NULL THEN 'project'
            WHEN EXISTS (SELECT 1 FROM elements AS c WHERE c.parent_id = e.id) THEN 'branch'
            ELSE 'work_package'
        END
    ) AS kind
FROM place
JOIN elements AS e ON e.id = place.element_id;

-- The control account of each package: the one that it names; else, at the nearest element upwards that has accounts,
-- the one of the package's unit; else that element's only one. NULL: in no account.
CREATE VIEW package_accounts AS
SELECT
    place.element_id AS package_id,
    coalesce(
        p.account_id,
        (
            SELECT min(a.id)
            FROM accounts AS a
            WHERE a.element_id = place.accounts_element_id AND a.unit_id = place.unit_id
        ),
        (
            SELECT min(a.id)
            FROM accounts AS a
            WHERE a.element_id = place.accounts_element_id
            HAVING count(*) = 1
        )
    ) AS account_id
FROM element_places AS place
LEFT JOIN packages AS p ON p.package_id = place.element_id
WHERE place.kind IN ('work_package', 'planning_package');

-- The ledger of actual cost as it counts: each accrual is reversed in the next period, unless accruals stay as booked.
CREATE VIEW booked_cost AS
SELECT charge_element_id, charge_account_id, period_id, cost_element, converted_minor, hours_hundredths
FROM actuals
UNION ALL
SELECT
    a.charge_element_id,
    a.charge_account_id,
    p.next_id,
    a.cost_element,
    -a.converted_minor,
    -a.hours_hundredths
FROM actuals AS a
JOIN (SELECT id, lead(id) OVER (ORDER BY "end") AS next_id FROM periods) AS p ON p.id = a.period_id
WHERE
    a.kind = 'accrual'
    AND p.next_id IS NOT NULL
    AND coalesce((SELECT value FROM project WHERE "key" = 'accruals'), 'reversed') <> 'as_booked';

-- The work breakdown structure, a parent before its children, with the budget of all packages below each element.
CREATE VIEW breakdown AS
WITH RECURSIVE
tree (id, level, place, code) AS (
    SELECT id, 1, 0, code FROM elements WHERE parent_id IS NULL
    UNION ALL
    SELECT e.id, tree.level + 1, coalesce(e."order", 1e18), e.code
    FROM tree
    JOIN elements AS e ON e.parent_id = tree.id
    ORDER BY 2 DESC, 3, 4 -- the deepest first: depth-first order
),
numbered AS MATERIALIZED (SELECT id, level, row_number() OVER () AS row_place FROM tree),
carried (element_id, amount_minor, hours_hundredths) AS (
    SELECT package_id, sum(converted_minor), sum(hours_hundredths) FROM budget GROUP BY package_id
    UNION ALL
    SELECT e.parent_id, carried.amount_minor, carried.hours_hundredths
    FROM carried
    JOIN elements AS e ON e.id = carried.element_id
    WHERE e.parent_id IS NOT NULL
),
total AS (
    SELECT element_id, sum(amount_minor) AS amount_minor, sum(hours_hundredths) AS hours_hundredths
    FROM carried
    GROUP BY element_id
)
SELECT
    e.code,
    e.name,
    parent.code AS parent,
    numbered.level,
    coalesce(
        e.kind,
        CASE
            WHEN e.parent_id IS NULL THEN 'project'
            WHEN EXISTS (SELECT 1 FROM elements AS c WHERE c.parent_id = e.id) THEN 'branch'
            ELSE 'work_package'
        END
    ) AS kind,
    e.split,
    coalesce(total.amount_minor, 0) / u.minor_units AS budget,
    coalesce(total.hours_hundredths, 0) / 100.0 AS hours,
    e.allotted_minor / u.minor_units AS allotted
FROM numbered
JOIN currency_unit AS u
JOIN elements AS e ON e.id = numbered.id
LEFT JOIN elements AS parent ON parent.id = e.parent_id
LEFT JOIN total ON total.element_id = e.id
ORDER BY numbered.row_place;

-- Who is in charge of each element, named there or inherited.
CREATE VIEW responsibility AS
SELECT
    e.code,
    e.name,
    place.level,
    place.kind,
    p.person,
    p.name AS person_name,
    e.person_id IS NULL AND place.person_id IS NOT NULL AS inherited,
    un.unit,
    un.name AS unit_name
FROM element_places AS place
JOIN elements AS e ON e.id = place.element_id
LEFT JOIN people AS p ON p.id = place.person_id
LEFT JOIN units AS un ON un.id = place.unit_id;

-- Packages with their control account, baseline and budget.
CREATE VIEW packages_by_account AS
SELECT
    a.account,
    a.name AS account_name,
    m.name AS manager,
    e.code AS package,
    e.name AS package_name,
    p.technique,
    p.start,
    p.finish,
    coalesce((SELECT sum(b.converted_minor) FROM budget AS b WHERE b.package_id = e.id), 0) / u.minor_units AS budget
FROM package_accounts AS placed
JOIN currency_unit AS u
JOIN elements AS e ON e.id = placed.package_id
LEFT JOIN packages AS p ON p.package_id = e.id
LEFT JOIN accounts AS a ON a.id = placed.account_id
LEFT JOIN people AS m ON m.id = a.manager_id;

-- Budgets by cost element, in the project's currency.
CREATE VIEW budget_by_package AS
SELECT
    e.code AS package,
    e.name AS package_name,
    b.cost_element,
    b.converted_minor / u.minor_units AS budget,
    b.hours_hundredths / 100.0 AS hours
FROM budget AS b
JOIN currency_unit AS u
JOIN elements AS e ON e.id = b.package_id;

-- Actual cost of packages in each period (not to date), in the project's currency.
CREATE VIEW actual_cost_by_package_and_period AS
SELECT
    e.code AS package,
    e.name AS package_name,
    p.period,
    p."end" AS period_end,
    c.cost_element,
    sum(c.converted_minor) / u.minor_units AS actual_cost,
    sum(c.hours_hundredths) / 100.0 AS hours
FROM booked_cost AS c
JOIN currency_unit AS u
JOIN elements AS e ON e.id = c.charge_element_id
JOIN periods AS p ON p.id = c.period_id
GROUP BY e.id, p.id, c.cost_element;

-- Actual cost of control accounts in each period: of their packages, and what is charged to the account as such.
CREATE VIEW actual_cost_by_account_and_period AS
WITH placed AS MATERIALIZED (SELECT package_id, account_id FROM package_accounts),
charged AS (
    SELECT
        coalesce(c.charge_account_id, placed.account_id) AS account_id,
        c.period_id,
        c.cost_element,
        c.converted_minor,
        c.hours_hundredths
    FROM booked_cost AS c
    LEFT JOIN placed ON placed.package_id = c.charge_element_id
)
SELECT
    a.account,
    a.name AS account_name,
    p.period,
    p."end" AS period_end,
    c.cost_element,
    sum(c.converted_minor) / u.minor_units AS actual_cost,
    sum(c.hours_hundredths) / 100.0 AS hours
FROM charged AS c
JOIN currency_unit AS u
JOIN periods AS p ON p.id = c.period_id
LEFT JOIN accounts AS a ON a.id = c.account_id
GROUP BY c.account_id, p.id, c.cost_element;

-- Status as it was reported; a hyphen takes back what an earlier period said.
CREATE VIEW status_by_package AS
SELECT
    e.code AS package,
    e.name AS package_name,
    p.period,
    p."end" AS period_end,
    s.started,
    s.finished,
    CASE typeof(s.percent_basis_points)
        WHEN 'integer' THEN s.percent_basis_points / 100.0
        ELSE s.percent_basis_points
    END AS percent,
    s.units_done,
    s.quantity,
    CASE typeof(s.etc_minor) WHEN 'integer' THEN s.etc_minor / u.minor_units ELSE s.etc_minor END AS cost_to_come,
    s.remaining AS remaining_days,
    s.assumed,
    s.remark,
    s."by"
FROM status AS s
JOIN currency_unit AS u
JOIN elements AS e ON e.id = s.package_id
JOIN periods AS p ON p.id = s.period_id;

-- Orders and subcontracts of each package and cost element beside its budget and actual cost to date.
CREATE VIEW commitments_by_package AS
SELECT
    e.code AS package,
    e.name AS package_name,
    c.cost_element,
    coalesce(
        (
            SELECT b.converted_minor
            FROM budget AS b
            WHERE b.package_id = e.id AND b.cost_element = c.cost_element
        ),
        0
    ) / u.minor_units AS budget,
    c.amount_minor / u.minor_units AS committed,
    c.pending_minor / u.minor_units AS pending,
    coalesce(ac.converted_minor, 0) / u.minor_units AS actual_cost,
    (c.amount_minor - coalesce(ac.converted_minor, 0)) / u.minor_units AS committed_not_spent
FROM (
    SELECT package_id, cost_element, sum(amount_minor) AS amount_minor, total(pending_minor) AS pending_minor
    FROM commitments
    GROUP BY package_id, cost_element
) AS c
JOIN currency_unit AS u
JOIN elements AS e ON e.id = c.package_id
LEFT JOIN (
    SELECT charge_element_id, cost_element, sum(converted_minor) AS converted_minor
    FROM booked_cost
    WHERE charge_element_id IS NOT NULL
    GROUP BY charge_element_id, cost_element
) AS ac ON ac.charge_element_id = c.package_id AND ac.cost_element = c.cost_element;

-- What answers each item of the scope statement; without element: nothing does.
CREATE VIEW scope_coverage AS
SELECT s.item, s.kind, s.text, t.phrase, e.code AS element, e.name AS element_name
FROM scope AS s
LEFT JOIN trace AS t ON t.item_id = s.id
LEFT JOIN elements AS e ON e.id = t.element_id;

-- Movements of budget with the change that authorises them.
CREATE VIEW budget_ledger AS
SELECT
    c.change,
    c.title,
    c.state,
    p.posting,
    coalesce(f.account, p.from_fund) AS "from",
    coalesce(t.account, p.to_fund) AS "to",
    p.amount_minor / u.minor_units AS amount,
    p.cost_element
FROM postings AS p
JOIN currency_unit AS u
JOIN changes AS c ON c.id = p.change_id
LEFT JOIN accounts AS f ON f.id = p.from_account_id
LEFT JOIN accounts AS t ON t.id = p.to_account_id;

-- Who changed what, when and why: one row for each command and table.
CREATE VIEW audit_trail AS
SELECT
    a.revision,
    a.at,
    a.person,
    a.command,
    a.reason,
    a.change,
    c.title AS change_title,
    counts."key" AS "table",
    counts.value ->> 'added' AS added,
    counts.value ->> 'updated' AS updated,
    counts.value ->> 'removed' AS removed
FROM audit AS a
LEFT JOIN changes AS c ON c.change = a.change
LEFT JOIN json_each(a.counts) AS counts;
