import assert from 'node:assert/strict';
import { test } from 'node:test';
import { Flag } from '../wwwroot/map/data.js';
import { layOut } from '../wwwroot/map/layout.js';
import { actionOf, holderOf, nextGap, stepFrom, windowOf } from '../wwwroot/map/moves.js';
import { branch, makeElements, pack, projectOf, SEEDS } from './generated.js';

const PROJECT = projectOf([
    branch(1, '1'),
    branch(2, '1.1', { gapBudget: 5 }),
    pack(3, '1.1.1', 10),
    pack(3, '1.1.2', 10),
    pack(3, '1.1.3', 10),
    branch(2, '1.2', { flags: Flag.notSplit, gapBudget: 8, gapHours: NaN }),
    pack(2, '1.3', 10),
]);

/** @param {string} code @param {import('../wwwroot/map/moves.js').Step} step */
const go = (code, step) => PROJECT.codes.at(stepFrom(PROJECT, PROJECT.codes.indexOf(code), step));

test('Left_and_right_go_to_the_sisters_and_stop_at_the_ends', () => {
    assert.equal(go('1.1', 'next'), '1.2');
    assert.equal(go('1.3', 'next'), '1.3');
    assert.equal(go('1.1.2', 'previous'), '1.1.1');
    assert.equal(go('1.2', 'previous'), '1.1');
    assert.equal(go('1.1', 'previous'), '1.1');
    assert.equal(go('1.1.3', 'next'), '1.1.3');
});

test('Up_goes_to_the_parent_and_down_to_the_first_child', () => {
    assert.equal(go('1.1.2', 'parent'), '1.1');
    assert.equal(go('1', 'parent'), '1');
    assert.equal(go('1', 'child'), '1.1');
    assert.equal(go('1.3', 'child'), '1.3');
});

test('Home_and_end_go_to_the_first_and_the_last_sister', () => {
    assert.equal(go('1.1.2', 'first'), '1.1.1');
    assert.equal(go('1.1.2', 'last'), '1.1.3');
    assert.equal(go('1.1', 'last'), '1.3');
    assert.equal(go('1', 'last'), '1');
});

test('Next_and_previous_undo_each_other', () => {
    for (const seed of SEEDS) {
        const project = projectOf(makeElements(seed));
        for (let i = 0; i < project.count; i++) {
            const next = stepFrom(project, i, 'next');
            const down = stepFrom(project, i, 'child');
            assert(next === i || stepFrom(project, next, 'previous') === i);
            assert(down === i || stepFrom(project, down, 'parent') === i);
            assert.equal(project.parent[stepFrom(project, i, 'last')], project.parent[i]);
        }
    }
});

test('The_next_gap_goes_through_all_gaps_and_round_again', () => {
    const layout = layOut(PROJECT, 'budget');
    const owners = [];
    let [focus, visited] = [-1, -1];
    for (let round = 0; round < 3; round++) {
        visited = nextGap(layout, focus, visited);
        focus = layout.gaps[visited].owner;
        owners.push(PROJECT.codes.at(focus));
    }
    assert.deepEqual(owners, ['1.1', '1.2', '1.1']);
});

test('The_next_gap_begins_at_the_focus', () => {
    const layout = layOut(PROJECT, 'budget');
    assert.equal(layout.gaps[nextGap(layout, PROJECT.codes.indexOf('1.2'), -1)].owner, 5);
    assert.equal(layout.gaps[nextGap(layout, PROJECT.codes.indexOf('1.3'), -1)].owner, 1);
});

test('A_project_that_is_whole_has_no_next_gap', () => {
    assert.equal(nextGap(layOut(projectOf([pack(1, '1', 5)]), 'budget'), 0, -1), -1);
});

test('An_element_without_width_is_shown_within_the_next_one_that_has', () => {
    const project = projectOf([branch(1, '1'), branch(2, '1.1'), pack(3, '1.1.1', 0), pack(3, '1.1.2', 4), pack(2, '1.2', 4)]);
    const layout = layOut(project, 'budget');
    assert.deepEqual(windowOf(layout, 2), { from: 0, to: 0.5 });
    assert.deepEqual(windowOf(layout, 0), { from: 0, to: 1 });
});

test('The_element_that_holds_a_window_is_the_lowest_that_does', () => {
    const layout = layOut(PROJECT, 'budget');
    const { left, right } = layout.positions;
    assert.equal(holderOf(layout, 2, { from: left[2], to: right[2] }), 2);
    assert.equal(holderOf(layout, 2, { from: left[2], to: right[3] }), 1);
    assert.equal(holderOf(layout, 2, { from: left[2], to: right[6] }), 0);
});

test('Keys_do_what_the_list_of_keys_says', () => {
    const plain = { ctrlKey: false, altKey: false, metaKey: false };
    const keys = ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown', 'Home', 'End', '+', '-', '0', 'g', 'M', 'Enter', 'x'];
    assert.deepEqual(
        keys.map((key) => actionOf({ key, ...plain }, true)),
        ['previous', 'next', 'parent', 'child', 'first', 'last', 'zoomIn', 'zoomOut', 'whole', 'gap', 'measure', 'open', null],
    );
});

test('Single_letters_can_be_switched_off_and_chapter_keys_pass', () => {
    const plain = { ctrlKey: false, altKey: false, metaKey: false };
    assert.equal(actionOf({ key: 'g', ...plain }, false), null);
    assert.equal(actionOf({ key: 'ArrowUp', ...plain }, false), 'parent');
    assert.equal(actionOf({ key: '0', ...plain, altKey: true }, true), null);
    assert.equal(actionOf({ key: 'm', ...plain, ctrlKey: true }, true), null);
});
