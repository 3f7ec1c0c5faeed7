import assert from 'node:assert/strict';
import { test } from 'node:test';
import { Flag, readLens } from '../wwwroot/map/data.js';
import { presum, sumColumns, weightsOf } from '../wwwroot/map/density.js';
import { layOut } from '../wwwroot/map/layout.js';
import { makeLenses, makePlant, numbersFrom } from './demo-data.js';
import { encodeLens } from './encode.js';
import { branch, makeElements, pack, projectOf, SEEDS } from './generated.js';

const WHOLE = { from: 0, to: 1 };
const COLUMNS = 300;

/** @param {number} seed @param {{ mix?: boolean }} [kind] */
function lensed(seed, kind = {}) {
    const project = projectOf(makeElements(seed));
    const layout = layOut(project, 'budget');
    const random = numbersFrom(seed + 1000);
    const classes = Uint8Array.from({ length: project.count }, () => Math.floor(random() * 4));
    const lens = readLens(encodeLens(classes, 4, kind));
    return { project, layout, lens, weights: weightsOf(layout, lens) };
}

/** Sum of one slot over all columns. @param {Float32Array} sums @param {number} slots @param {number} slot */
function totalOf(sums, slots, slot) {
    let total = 0;
    for (let at = slot; at < sums.length; at += slots) {
        total += sums[at];
    }
    return total;
}

test('The_columns_of_a_class_sum_to_the_widths_of_its_blocks', () => {
    for (const seed of SEEDS) {
        const { project, layout, lens, weights } = lensed(seed);
        for (const strip of layout.strips) {
            const { sums, wide } = sumColumns(strip, layout.positions, weights, WHOLE, COLUMNS, Infinity, null);
            assert.equal(wide.length, 0);
            for (let c = 0; c < 4; c++) {
                const width = [...strip]
                    .filter((item) => lens.classOf[item] === c)
                    .reduce((sum, item) => sum + layout.positions.right[item] - layout.positions.left[item], 0);
                assert(Math.abs(totalOf(sums, weights.slots, c) - width * COLUMNS) < 1e-3);
            }
            const found = [...strip]
                .filter((item) => (project.flags[item] & Flag.finding) !== 0)
                .reduce((sum, item) => sum + layout.positions.right[item] - layout.positions.left[item], 0);
            assert(Math.abs(totalOf(sums, weights.slots, 4) - found * COLUMNS) < 1e-3);
        }
    }
});

test('No_column_holds_more_than_its_own_width', () => {
    for (const seed of SEEDS) {
        const { layout, weights } = lensed(seed);
        for (const strip of layout.strips) {
            const { sums } = sumColumns(strip, layout.positions, weights, WHOLE, COLUMNS, Infinity, null);
            for (let column = 0; column < COLUMNS; column++) {
                const held = sums.slice(column * 5, column * 5 + 4).reduce((sum, part) => sum + part, 0);
                assert(held <= 1 + 1e-4);
            }
        }
    }
});

test('A_block_is_either_wide_or_in_the_columns', () => {
    for (const seed of SEEDS) {
        const { layout, weights } = lensed(seed);
        const { left, right } = layout.positions;
        for (const strip of layout.strips) {
            const { sums, wide } = sumColumns(strip, layout.positions, weights, WHOLE, COLUMNS, 2.4, null);
            const singly = wide.reduce((sum, item) => sum + right[item] - left[item], 0) * COLUMNS;
            const summed = [0, 1, 2, 3].reduce((sum, c) => sum + totalOf(sums, weights.slots, c), 0);
            const all = [...strip].reduce((sum, item) => sum + right[item] - left[item], 0) * COLUMNS;
            assert(Math.abs(singly + summed - all) < 1e-3);
            assert(wide.every((item) => (right[item] - left[item]) * COLUMNS >= 2.4));
        }
    }
});

test('A_window_shows_what_the_whole_shows_there', () => {
    for (const seed of SEEDS) {
        const { layout, weights } = lensed(seed);
        const strip = layout.strips[5];
        const all = sumColumns(strip, layout.positions, weights, WHOLE, 400, Infinity, null).sums;
        const part = sumColumns(strip, layout.positions, weights, { from: 0.25, to: 0.5 }, 100, Infinity, null).sums;
        for (let at = 0; at < part.length; at++) {
            assert(Math.abs(part[at] - all[at + 100 * weights.slots]) < 1e-3);
        }
    }
});

test('Favourable_and_unfavourable_that_cancel_stay_apart_in_a_column', () => {
    const packages = Array.from({ length: 100 }, (_, i) => pack(2, `1.${i + 1}`, 10));
    const layout = layOut(projectOf([branch(1, '1'), ...packages]), 'budget');
    const weights = weightsOf(layout, readLens(encodeLens([0, ...packages.map((_, i) => i % 2)], 2)));
    const { sums } = sumColumns(layout.strips[1], layout.positions, weights, WHOLE, 10, 2.4 * 10, null);
    for (let column = 0; column < 10; column++) {
        assert(Math.abs(sums[column * 3] - 0.5) < 1e-5 && Math.abs(sums[column * 3 + 1] - 0.5) < 1e-5);
    }
});

test('Sums_made_beforehand_agree_with_sums_made_block_by_block', () => {
    const plant = makePlant({ copies: 2, components: 20, packages: 25 });
    const layout = layOut(projectOf(plant.elements, plant.accounts), 'budget');
    const { classOf, classCount } = makeLenses(plant).accounts;
    const weights = weightsOf(layout, readLens(encodeLens(classOf, classCount)));
    const strip = layout.strips[5];
    assert(strip.length > 20_000);
    const presummed = presum(strip, layout.positions, weights);
    const quick = sumColumns(strip, layout.positions, weights, WHOLE, 1024, 2.4, presummed);
    const exact = sumColumns(strip, layout.positions, weights, WHOLE, 1024, Infinity, null);
    const wide = sumColumns(strip, layout.positions, weights, WHOLE, 1024, 2.4, null).wide;
    assert.deepEqual(quick.wide, wide);
    for (let at = 0; at < exact.sums.length; at++) {
        assert(Math.abs(quick.sums[at] - exact.sums[at]) < 1e-3);
    }
    const panned = { from: 0.137, to: 0.837 };
    const seen = sumColumns(strip, layout.positions, weights, panned, 700, 2.4, presummed).sums;
    const all = sumColumns(strip, layout.positions, weights, panned, 700, Infinity, null).sums;
    assert(seen.every((held) => held >= 0 && held <= 1 + 1e-4));
    for (let c = 0; c < classCount; c++) {
        assert(Math.abs(totalOf(seen, weights.slots, c) - totalOf(all, weights.slots, c)) < 0.5);
    }
});

test('A_mix_is_the_share_of_each_class_in_the_packages_below', () => {
    const elements = [branch(1, '1'), branch(2, '1.1'), pack(3, '1.1.1', 30), pack(3, '1.1.2', 10), pack(2, '1.2', 60)];
    const layout = layOut(projectOf(elements), 'budget');
    const { shares } = weightsOf(layout, readLens(encodeLens([0, 0, 1, 0, 2], 3, { mix: true })));
    assert(shares !== null);
    const near = (/** @type {number} */ element, /** @type {number[]} */ expected) =>
        expected.forEach((share, c) => assert(Math.abs(shares[element * 3 + c] - share) < 1e-6));
    near(0, [0.1, 0.3, 0.6]);
    near(1, [0.25, 0.75, 0]);
    near(4, [0, 0, 1]);
});

test('The_shares_of_a_mix_are_one_whole_at_every_element', () => {
    for (const seed of SEEDS) {
        const { project, weights } = lensed(seed, { mix: true });
        for (let i = 0; i < project.count; i++) {
            const shares = weights.shares?.slice(i * 4, i * 4 + 4) ?? [];
            assert(Math.abs([...shares].reduce((sum, share) => sum + share, 0) - 1) < 1e-5);
        }
    }
});

test('Shares_of_the_document_are_used_as_they_are', () => {
    const layout = layOut(projectOf([branch(1, '1'), pack(2, '1.1', 5)]), 'budget');
    const half = 65_535 / 5;
    const lens = readLens(encodeLens([0, 0], 2, { mix: true, shares: [65_535, 0, half, 4 * half] }));
    const weights = weightsOf(layout, lens);
    const { sums } = sumColumns(layout.strips[1], layout.positions, weights, WHOLE, 10, Infinity, null);
    assert(Math.abs(totalOf(sums, 3, 0) - 2) < 1e-5);
    assert(Math.abs(totalOf(sums, 3, 1) - 8) < 1e-5);
});
