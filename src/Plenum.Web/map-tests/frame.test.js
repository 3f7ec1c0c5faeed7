import assert from 'node:assert/strict';
import { test } from 'node:test';
import { fractionAt, frameOf, levelAt, rulerSteps, stripHeights, topOf, xOf } from '../wwwroot/map/frame.js';
import { between } from '../wwwroot/map/motion.js';

const NORMAL = { compact: false, zoomed: false };
const SHEET = { width: 1450, levels: 5, atLevel: 1, zoomed: false, compact: false, unit: 1 };

test('Five_levels_have_the_heights_of_the_design', () => {
    assert.deepEqual(stripHeights(5, NORMAL), [20, 28, 30, 32, 44]);
    assert.deepEqual(stripHeights(5, { compact: true, zoomed: false }), [20, 26, 28, 28, 36]);
    assert.deepEqual(stripHeights(3, NORMAL), [20, 28, 44]);
});

test('More_levels_share_150_pixels_and_none_is_lower_than_12', () => {
    for (let levels = 6; levels <= 40; levels++) {
        const heights = stripHeights(levels, NORMAL);
        const last = heights.slice(3);
        assert(last.reduce((sum, height) => sum + height, 0) + last.length - 1 <= 150);
        assert(last.every((height) => height >= 12));
    }
    assert.deepEqual(stripHeights(7, NORMAL), [20, 28, 30, 36, 36, 36, 39]);
});

test('A_zoomed_map_is_as_high_as_the_whole', () => {
    for (const compact of [false, true]) {
        const whole = frameOf({ ...SHEET, compact });
        const zoomed = frameOf({ ...SHEET, compact, atLevel: 3, zoomed: true });
        assert.equal(zoomed.height, whole.height);
    }
});

test('The_strips_stand_where_the_design_has_them', () => {
    const frame = frameOf(SHEET);
    assert.deepEqual([frame.left, frame.right, frame.height], [134, 1380, 198]);
    assert.deepEqual(frame.tops, [20, 41, 70, 101, 134]);
    assert.equal(frame.bottom, 178);
});

test('A_greater_text_size_makes_everything_greater', () => {
    const frame = frameOf({ ...SHEET, unit: 2 });
    assert.deepEqual([frame.left, frame.right, frame.height], [268, 1310, 396]);
});

test('Levels_that_find_no_room_come_by_zooming', () => {
    const whole = frameOf({ ...SHEET, levels: 30 });
    assert.equal(whole.firstLevel, 1);
    const deep = frameOf({ ...SHEET, levels: 30, atLevel: 29, zoomed: true });
    assert.equal(deep.firstLevel + deep.tops.length - 1, 30);
    assert.equal(topOf(deep, 1), deep.tops[0]);
});

test('The_level_at_a_height_is_the_one_that_is_drawn_there', () => {
    const frame = frameOf(SHEET);
    frame.tops.forEach((top, row) => {
        assert.equal(levelAt(frame, top), row + 1);
        assert.equal(levelAt(frame, top + frame.heights[row] - 0.1), row + 1);
    });
    assert.equal(levelAt(frame, 5), 0);
    assert.equal(levelAt(frame, frame.bottom + 2), 0);
});

test('Places_on_the_sheet_and_fractions_are_each_others_inverse', () => {
    const frame = frameOf(SHEET);
    const view = { from: 0.171, to: 0.173 };
    for (const fraction of [0.171, 0.1715, 0.173]) {
        assert(Math.abs(fractionAt(frame, view, xOf(frame, view, fraction)) - fraction) < 1e-12);
    }
    assert.equal(xOf(frame, view, view.from), frame.left);
    assert(Math.abs(xOf(frame, view, view.to) - frame.right) < 1e-9);
});

test('The_ruler_counts_by_one_two_or_five', () => {
    assert.deepEqual(rulerSteps({ from: 0, to: 1 }, 1246, 72), { step: 10, minor: 2, decimals: 0 });
    const fine = rulerSteps({ from: 0.1706, to: 0.1732 }, 1416, 72);
    assert(Math.abs(fine.step - 0.02) < 1e-12 && fine.decimals === 2);
    for (let width = 1; width > 1e-7; width *= 0.73) {
        const { step } = rulerSteps({ from: 0.2, to: 0.2 + width }, 1246, 72);
        const pixels = (step / 100 / width) * 1246;
        assert(pixels >= 72 * (1 - 1e-6) && pixels <= 72 * 2.5 * (1 + 1e-6));
    }
});

test('A_move_begins_and_ends_at_its_windows_and_stays_between_them', () => {
    const start = { from: 0, to: 1 };
    const goal = { from: 0.171, to: 0.173 };
    assert.equal(between(start, goal, 0), start);
    assert.equal(between(start, goal, 1), goal);
    let before = start;
    for (let time = 0.05; time < 1; time += 0.05) {
        const view = between(start, goal, time);
        assert(view.from >= before.from && view.to <= before.to + 1e-12);
        assert(view.from <= goal.from && view.to >= goal.to - 1e-12);
        before = view;
    }
});
