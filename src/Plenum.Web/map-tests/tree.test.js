import assert from 'node:assert/strict';
import { test } from 'node:test';
import { readLens } from '../wwwroot/map/data.js';
import { layOut } from '../wwwroot/map/layout.js';
import { showLens } from '../wwwroot/map/scene.js';
import { rowsOf, SISTERS, spokenText } from '../wwwroot/map/tree.js';
import { countText, describe, moneyText, shareText } from '../wwwroot/map/words.js';
import { encodeLens } from './encode.js';
import { branch, makeElements, pack, projectOf, SEEDS } from './generated.js';

const PROJECT = projectOf(
    [
        branch(1, '1', { name: 'Plant' }),
        branch(2, '1.1', { name: 'Intake', gapBudget: 25_000_000, gapHours: NaN }),
        pack(3, '1.1.1', 75_000_000, { name: 'Pumps', account: 0 }),
        branch(2, '1.2', { name: 'Outfall', gapBudget: -200_000 }),
        pack(3, '1.2.1', 100_000_000, { name: 'Pipes' }),
    ],
    ['1.1-MEC'],
);
const LAYOUT = layOut(PROJECT, 'budget');
const LENS = { name: 'Cost variance', classes: [{ word: 'better', fill: 'fav2' }, { word: 'worse', fill: 'unf1' }] };

/** @param {boolean} mix */
const shown = (mix) => showLens(LAYOUT, LENS, readLens(encodeLens([0, 1, 1, 0, 0], 2, { mix })));

test('Only_the_branches_on_the_way_to_the_focus_are_open', () => {
    assert.deepEqual(
        rowsOf(PROJECT, 2).map(({ element, open, place, sisters }) => [element, open, place, sisters]),
        [
            [0, true, 1, 1],
            [1, true, 1, 2],
            [2, null, 1, 1],
            [3, false, 2, 2],
        ],
    );
    assert.deepEqual(rowsOf(PROJECT, 1).map(({ element, open }) => [element, open]), [
        [0, true],
        [1, false],
        [3, false],
    ]);
    assert.deepEqual(rowsOf(PROJECT, 0).map(({ element, open }) => [element, open]), [[0, false]]);
});

test('Rows_stand_in_depth_first_order_and_hold_the_focus_and_all_its_ancestors', () => {
    for (const seed of SEEDS) {
        const project = projectOf(makeElements(seed));
        for (let focus = 0; focus < project.count; focus += 3) {
            const present = rowsOf(project, focus).map(({ element }) => element);
            assert(present.every((element, at) => at === 0 || element > present[at - 1]));
            for (let at = focus; at >= 0; at = project.parent[at]) {
                assert(present.includes(at));
            }
        }
    }
});

test('Of_many_sisters_only_the_near_ones_are_present_and_all_are_counted', () => {
    const project = projectOf([branch(1, '1'), ...Array.from({ length: 5000 }, (_, i) => pack(2, `1.${i + 1}`, 1))]);
    const rows = rowsOf(project, 2500);
    assert.equal(rows.length, 1 + 2 * SISTERS + 1);
    assert(rows.slice(1).every(({ sisters }) => sisters === 5000));
    assert.equal(rows.find(({ element }) => element === 2500)?.place, 2500);
});

test('The_tree_speaks_name_share_lens_value_and_what_is_missing', () => {
    assert.equal(
        spokenText(LAYOUT, shown(false), 1),
        '1.1 Intake, 50.0\u00a0% of the project, worse, 25.0\u00a0% of it belongs to no part',
    );
});

test('The_tooltip_gives_path_kind_measure_share_lens_value_and_what_is_missing', () => {
    assert.deepEqual(describe(LAYOUT, shown(false), 2, ''), {
        path: 'Plant / Intake',
        title: '1.1.1 Pumps',
        lines: [
            'Work package, control account 1.1-MEC',
            'Budget €\u00a00.8 million, 75.0\u00a0% of Intake, 37.5\u00a0% of the project',
            'Cost variance: worse',
        ],
    });
    assert(describe(LAYOUT, shown(false), 3, '').lines.includes('Its parts come to €\u00a02\u202f000 more than the whole'));
    assert(describe(LAYOUT, shown(false), 2, '−0.02 ± 0.31').lines.includes('Cost variance: −0.02 ± 0.31'));
});

test('A_mix_is_told_by_its_shares', () => {
    const text = spokenText(LAYOUT, shown(true), 0);
    assert(text.includes('better 57.1\u00a0%, worse 42.9\u00a0%'), text);
});

test('A_share_is_100_per_cent_only_of_the_whole_and_0_only_of_nothing', () => {
    assert.equal(shareText(1), '100\u00a0%');
    assert.equal(shareText(0.9999), '99.9\u00a0%');
    assert.equal(shareText(0.0001), 'under 0.1\u00a0%');
    assert.equal(shareText(1e-17), '0\u00a0%'); // what sums of fractions leave
    assert.equal(shareText(1 - 1e-15), '100\u00a0%');
    assert.equal(shareText(0), '0\u00a0%');
});

test('Thousands_are_set_apart_and_money_is_in_millions', () => {
    assert.equal(countText(2708), '2\u202f708');
    assert.equal(countText(295_257_001), '295\u202f257\u202f001');
    assert.equal(countText(999), '999');
    assert.equal(moneyText(PROJECT, 1_410_000_000), '€\u00a014.1 million');
    assert.equal(moneyText(PROJECT, -12_345_00), '−€\u00a012\u202f345');
});
