import assert from 'node:assert/strict';
import { test } from 'node:test';
import { Flag, MapDataError, readLens, readProject } from '../wwwroot/map/data.js';
import { encodeLens, encodeProject } from './encode.js';
import { branch, makeElements, pack, projectOf, SEEDS } from './generated.js';

const LEVELS = ['Project', 'System', 'Work package'];
const ELEMENTS = [
    branch(1, '', { name: 'Meerwasser­entsalzung Ø 4 µm' }),
    branch(2, '01', { name: 'Intake', gapBudget: 12, gapHours: NaN }),
    pack(3, '01.1', 4_000_000_000_00, { hours: 12.5, account: 0, flags: Flag.package | Flag.finding }),
    branch(2, '02', { flags: Flag.notSplit, gapBudget: NaN, gapHours: NaN }),
];

/** A document with one value changed. @param {(view: DataView) => void} change */
function changed(change) {
    const buffer = encodeProject(ELEMENTS, { levelNames: LEVELS, accounts: ['01-MEC'], revision: 42 });
    change(new DataView(buffer));
    return buffer;
}

/** @param {import('./encode.js').Element[]} elements @param {string} message */
function refused(elements, message) {
    assert.throws(() => projectOf(elements), (/** @type {Error} */ error) => {
        assert(error instanceof MapDataError);
        assert.equal(error.message, message);
        return true;
    });
}

test('A_project_document_reads_as_it_was_written', () => {
    const project = readProject(changed(() => {}));
    assert.equal(project.revision, 42);
    assert.equal(project.count, 4);
    assert.equal(project.currency, 'EUR');
    assert.equal(project.minorDigits, 2);
    assert.deepEqual(project.levelNames, LEVELS);
    assert.deepEqual([...project.level], [1, 2, 3, 2]);
    assert.deepEqual([...project.parent], [-1, 0, 1, 0]);
    assert.deepEqual([...project.end], [4, 3, 3, 4]);
    assert.deepEqual([...project.budget], [4_000_000_000_00, 4_000_000_000_00, 4_000_000_000_00, 0]);
    assert.deepEqual([...project.hours], [12.5, 12.5, 12.5, 0]);
    assert.deepEqual([...project.gapBudget], [0, 12, 0, NaN]);
    assert.deepEqual([...project.account], [-1, -1, 0, -1]);
    assert.deepEqual([...project.levelCounts], [1, 2, 1]);
    assert.equal(project.names.at(0), 'Meerwasser­entsalzung Ø 4 µm');
    assert.equal(project.accountCodes.at(0), '01-MEC');
    assert.equal(project.flags[2] & Flag.finding, Flag.finding);
});

test('A_code_finds_its_element_and_only_a_whole_code_does', () => {
    const project = readProject(changed(() => {}));
    assert.equal(project.codes.indexOf('01.1'), 2);
    assert.equal(project.codes.indexOf(''), 0);
    assert.equal(project.codes.indexOf('01.'), -1);
    assert.equal(project.codes.indexOf('1.1'), -1);
});

test('Parents_and_subtrees_agree_with_the_levels', () => {
    for (const seed of SEEDS) {
        const { level, parent, end, count } = projectOf(makeElements(seed));
        for (let i = 1; i < count; i++) {
            assert.equal(level[parent[i]], level[i] - 1);
            assert(parent[i] < i && end[i] <= end[parent[i]]);
            assert(end[i] === count || level[end[i]] <= level[i]);
            for (let below = i + 1; below < end[i]; below++) {
                assert(level[below] > level[i]);
            }
        }
    }
});

test('Another_kind_of_document_is_refused', () => {
    assert.throws(() => readProject(encodeLens([0], 1)), /"PLLN" found at the beginning, PLMP expected/);
    assert.throws(() => readLens(changed(() => {})), /"PLMP" found at the beginning, PLLN expected/);
    assert.throws(() => readProject(new ArrayBuffer(3)), /"" found at the beginning, PLMP expected/);
});

test('Another_version_is_refused', () => {
    assert.throws(() => readProject(changed((view) => view.setUint16(4, 2, true))), /version 2 found, version 1 expected/);
});

test('A_document_that_is_cut_off_or_too_long_is_refused', () => {
    const whole = changed(() => {});
    for (let length = 16; length < whole.byteLength; length += 7) {
        assert.throws(() => readProject(whole.slice(0, length)), /ends after|found, .* expected/);
    }
    const longer = new Uint8Array(whole.byteLength + 1);
    longer.set(new Uint8Array(whole));
    assert.throws(() => readProject(longer.buffer), /bytes found, \d+ expected/);
});

test('A_level_that_leaves_one_out_is_refused', () => {
    refused([branch(1, '1'), pack(3, '1.1', 1)], 'project document, element 1: level 3 found, 2 to 2 expected');
});

test('A_second_root_is_refused', () => {
    refused([pack(1, '1', 1), pack(1, '2', 1)], 'project document, element 1: level 1 found, 2 to 2 expected');
});

test('A_project_without_elements_is_refused', () => {
    refused([], 'project document: no element found, a root expected');
});

test('A_leaf_is_either_a_package_or_not_split', () => {
    const message = 'project document, element 0: has no children, so it is either a package or not split';
    refused([branch(1, '1')], message);
    refused([branch(1, '1', { flags: Flag.package | Flag.notSplit })], message);
});

test('A_package_with_children_is_refused', () => {
    refused(
        [pack(1, '1', 1), pack(2, '1.1', 1)],
        'project document, element 0: has children, so it is neither a package nor not split',
    );
});

test('A_package_with_a_gap_is_refused', () => {
    refused([pack(1, '1', 1, { gapHours: NaN })], 'project document, element 0: a package has no gap, 0 expected');
});

test('An_account_that_is_not_listed_is_refused', () => {
    refused([pack(1, '1', 1, { account: 3 })], 'project document, element 0: account 3 found, −1 to -1 expected');
});

test('A_budget_that_is_no_number_is_refused', () => {
    refused([pack(1, '1', Infinity)], 'project document, element 0: budget and hours must be numbers');
});

test('A_lens_reads_as_it_was_written', () => {
    const own = readLens(encodeLens([2, 0, 1], 3, { revision: 7 }));
    assert.deepEqual([own.revision, own.count, own.classCount, own.mix, own.shares], [7, 3, 3, false, null]);
    assert.deepEqual([...own.classOf], [2, 0, 1]);
    const mixed = readLens(encodeLens([0, 1], 2, { mix: true, shares: [65_535, 0, 1, 65_534] }));
    assert.equal(mixed.mix, true);
    assert.deepEqual([...(mixed.shares ?? [])], [65_535, 0, 1, 65_534]);
});

test('A_class_that_the_legend_has_not_is_refused', () => {
    assert.throws(() => readLens(encodeLens([0, 3], 3)), /element 1: class 3 found, 0 to 2 expected/);
});
