import assert from 'node:assert/strict';
import { test } from 'node:test';
import { Flag, hasChildren } from '../wwwroot/map/data.js';
import { hit, inView, layOut } from '../wwwroot/map/layout.js';
import { MEASURES } from '../wwwroot/map/sizes.js';
import { branch, makeElements, pack, projectOf, SEEDS } from './generated.js';
import { numbersFrom } from './demo-data.js';

/** @typedef {import('../wwwroot/map/layout.js').Layout} Layout */

const NEAR = 1e-12;

/** @param {(layout: Layout, seed: number) => void} law */
function forAll(law) {
    for (const seed of SEEDS) {
        const project = projectOf(makeElements(seed));
        for (const measure of MEASURES) {
            law(layOut(project, measure), seed);
        }
    }
}

/** @param {Layout} layout @param {number} index */
function childrenOf({ project }, index) {
    const children = [];
    for (let i = index + 1; i < project.end[index]; i = project.end[i]) {
        children.push(i);
    }
    return children;
}

/** @param {Layout} layout @param {number} index */
const widthOf = ({ positions }, index) => positions.right[index] - positions.left[index];

test('The_root_is_the_whole', () => {
    forAll(({ positions }) => {
        assert.equal(positions.left[0], 0);
        assert.equal(positions.right[0], 1);
    });
});

test('Children_and_the_gap_fill_their_parent_exactly_without_overlap', () => {
    forAll((layout) => {
        const { left, right } = layout.positions;
        for (let i = 0; i < layout.project.count; i++) {
            if (hasChildren(layout.project, i)) {
                const children = childrenOf(layout, i);
                assert.equal(left[children[0]], left[i]);
                for (let c = 1; c < children.length; c++) {
                    assert.equal(left[children[c]], right[children[c - 1]]);
                }
                const gap = layout.gapOf.get(i);
                const end = right[children[children.length - 1]];
                assert.equal(gap === undefined ? end : gap.left, gap === undefined ? right[i] : end);
                assert.equal(gap?.right ?? right[i], right[i]);
            }
        }
    });
});

test('Positions_never_go_back_within_a_strip', () => {
    forAll(({ strips, positions }) => {
        for (const strip of strips) {
            for (let at = 1; at < strip.length; at++) {
                assert(positions.left[strip[at]] >= positions.right[strip[at - 1]]);
            }
        }
        for (let i = 0; i < positions.left.length; i++) {
            assert(positions.left[i] <= positions.right[i] && positions.left[i] >= 0 && positions.right[i] <= 1);
        }
    });
});

test('Sisters_are_as_wide_as_their_packages_are_large', () => {
    const project = projectOf([branch(1, '1'), pack(2, '1.1', 300), pack(2, '1.2', 100, { hours: 90 })]);
    const byBudget = layOut(project, 'budget');
    assert.equal(widthOf(byBudget, 1), 0.75);
    const byHours = layOut(project, 'hours');
    assert.equal(widthOf(byHours, 1), 0.25);
    const byCount = layOut(project, 'count');
    assert.equal(widthOf(byCount, 1), 0.5);
});

test('Widths_do_not_depend_on_the_order_of_sisters', () => {
    const parts = [pack(2, '1.1', 310), pack(2, '1.2', 170), pack(2, '1.3', 20)];
    const forward = layOut(projectOf([branch(1, '1', { gapBudget: 55 }), ...parts]), 'budget');
    const backward = layOut(projectOf([branch(1, '1', { gapBudget: 55 }), ...parts.toReversed()]), 'budget');
    for (let i = 1; i <= 3; i++) {
        assert(Math.abs(widthOf(forward, i) - widthOf(backward, 4 - i)) < NEAR);
    }
});

test('What_belongs_to_no_part_is_a_gap_of_its_share_at_the_right_from_the_next_level_down', () => {
    const layout = layOut(projectOf([branch(1, '1', { gapBudget: 70 }), pack(2, '1.1', 930)]), 'budget');
    assert.equal(layout.gaps.length, 1);
    const [gap] = layout.gaps;
    assert(Math.abs(gap.right - gap.left - 0.07) < NEAR);
    assert.equal(gap.right, 1);
    assert.equal(gap.level, 2);
    assert.equal(gap.unknown, false);
    assert.deepEqual([...layout.coverage].map((share) => share.toFixed(4)), ['1.0000', ...new Array(5).fill('0.9300')]);
});

test('An_element_that_is_not_split_is_a_gap_of_its_full_size_below_itself', () => {
    const open = branch(2, '1.2', { flags: Flag.notSplit, gapBudget: 250, gapHours: NaN });
    const layout = layOut(projectOf([branch(1, '1'), pack(2, '1.1', 750), open]), 'budget');
    const [gap] = layout.gaps;
    assert.equal(gap.owner, 2);
    assert.equal(gap.level, 3);
    assert.equal(gap.left, 0.75);
    assert.equal(gap.right, 1);
    assert.equal(layout.coverage[1], 1);
    assert.equal(layout.coverage[2], 0.75);
});

test('An_unknown_size_takes_three_per_cent_of_the_parent', () => {
    const open = branch(2, '1.2', { flags: Flag.notSplit, gapBudget: NaN, gapHours: NaN });
    const layout = layOut(projectOf([branch(1, '1', { gapBudget: NaN }), pack(2, '1.1', 750), open]), 'budget');
    assert(Math.abs(widthOf(layout, 2) - 0.03) < NEAR);
    const own = layout.gapOf.get(0);
    assert(own !== undefined && own.unknown && Math.abs(own.right - own.left - 0.03) < NEAR);
    assert(Math.abs(widthOf(layout, 1) - 0.94) < NEAR);
});

test('Many_unknown_sizes_leave_half_of_the_parent_to_what_is_known', () => {
    const open = Array.from({ length: 40 }, (_, i) =>
        branch(2, `1.${i + 2}`, { flags: Flag.notSplit, gapBudget: NaN, gapHours: NaN }),
    );
    const layout = layOut(projectOf([branch(1, '1'), pack(2, '1.1', 750), ...open]), 'budget');
    assert(Math.abs(widthOf(layout, 1) - 0.5) < NEAR);
});

test('A_project_of_which_no_size_is_known_shares_alike', () => {
    const open = { flags: Flag.notSplit, gapBudget: NaN, gapHours: NaN };
    const layout = layOut(projectOf([branch(1, '1'), branch(2, '1.1', open), branch(2, '1.2', open)]), 'budget');
    assert.equal(widthOf(layout, 1), 0.5);
    assert.equal(layout.coverage[1], 1);
    assert.equal(layout.coverage[2], 0);
});

test('An_empty_project_is_one_gap', () => {
    const layout = layOut(projectOf([branch(1, '1', { flags: Flag.notSplit, gapBudget: NaN, gapHours: NaN })]), 'budget');
    assert.deepEqual(layout.gaps, [{ owner: 0, level: 2, left: 0, right: 1, unknown: true }]);
});

test('Parts_that_are_more_than_the_whole_are_listed_and_make_no_gap', () => {
    const layout = layOut(projectOf([branch(1, '1', { gapBudget: -40 }), pack(2, '1.1', 140)]), 'budget');
    assert.deepEqual(layout.overfull, [0]);
    assert.equal(layout.gaps.length, 0);
    assert.equal(widthOf(layout, 1), 1);
});

test('The_number_of_missing_packages_is_never_known', () => {
    const layout = layOut(projectOf([branch(1, '1', { gapBudget: 70 }), pack(2, '1.1', 930)]), 'count');
    assert.equal(layout.gaps[0].unknown, true);
});

test('Every_element_with_something_missing_has_its_gap', () => {
    forAll((layout) => {
        const { project, positions, gapOf } = layout;
        const column = positions.measure === 'hours' ? project.gapHours : project.gapBudget;
        for (let i = 0; i < project.count; i++) {
            const isMissing =
                (project.flags[i] & Flag.notSplit) !== 0 ||
                (positions.measure === 'count'
                    ? !(project.gapBudget[i] <= 0) || !(project.gapHours[i] <= 0)
                    : !(column[i] <= 0));
            assert.equal(gapOf.has(i), isMissing);
        }
    });
});

test('Each_level_with_its_gaps_covers_the_whole', () => {
    forAll((layout, seed) => {
        const last = layout.strips.length;
        layout.strips.forEach((strip, row) => {
            const covered = [...strip].reduce((sum, item) => sum + widthOf(layout, item), 0);
            const drawnOver = layout.gaps
                .filter(({ owner, level }) => row + 1 === last && layout.project.level[owner] === level)
                .reduce((sum, gap) => sum + gap.right - gap.left, 0);
            assert(Math.abs(covered - drawnOver - layout.coverage[row]) < 1e-9, `seed ${seed}, level ${row + 1}`);
        });
    });
});

test('A_package_above_the_last_level_runs_down_to_it', () => {
    const layout = layOut(projectOf([branch(1, '1'), pack(2, '1.1', 1), branch(2, '1.2'), pack(3, '1.2.1', 1)]), 'budget');
    assert.deepEqual(layout.strips.map((strip) => [...strip]), [[0], [1, 2], [1, 3], [1, 3], [1, 3], [1, 3]]);
});

test('A_hit_finds_the_element_that_was_laid_out_there', () => {
    forAll((layout) => {
        const { left, right } = layout.positions;
        layout.strips.forEach((strip, row) => {
            for (const item of strip) {
                const middle = (left[item] + right[item]) / 2;
                if (right[item] - left[item] > 1e-6) {
                    assert.equal(hit(layout, row + 1, middle).element, item);
                }
            }
        });
        for (const gap of layout.gaps.filter(({ left: from, right: to }) => to - from > 1e-6)) {
            const found = hit(layout, gap.level, (gap.left + gap.right) / 2);
            assert.equal(found.gap, gap);
        }
    });
});

test('A_narrow_gap_is_hit_as_wide_as_it_is_drawn', () => {
    const layout = layOut(projectOf([branch(1, '1', { gapBudget: 1 }), pack(2, '1.1', 99_999)]), 'budget');
    assert.equal(hit(layout, 2, 0.9985, 0.002).gap, null);
    assert.equal(hit(layout, 2, 0.9995, 0.002).gap, layout.gaps[0]);
    assert.equal(hit(layout, 1, 0.9995, 0.002).gap, null);
});

test('The_window_holds_all_blocks_that_it_touches_and_no_other', () => {
    const random = numbersFrom(5);
    forAll(({ project, strips, positions }) => {
        const { left, right } = positions;
        const from = random() * 0.9;
        const wide = Math.floor(random() * project.count);
        const views = [{ from, to: from + 0.01 + random() * 0.09 }];
        if (right[wide] > left[wide]) {
            views.push({ from: left[wide], to: right[wide] });
        }
        for (const view of views) {
            for (const strip of strips) {
                const found = inView(strip, positions, view);
                const touched = [...strip].filter((item) => right[item] > view.from && left[item] < view.to);
                assert.deepEqual([...strip.subarray(found.from, found.to)], touched);
            }
        }
    });
});

test('Neighbours_of_one_control_account_have_one_outline', () => {
    const elements = [
        branch(1, '1'),
        branch(2, '1.1'),
        pack(3, '1.1.1', 10, { account: 0 }),
        pack(3, '1.1.2', 10, { account: 0 }),
        pack(3, '1.1.3', 10, { account: 1 }),
        pack(3, '1.1.4', 10),
        pack(3, '1.1.5', 10, { account: 1 }),
        branch(2, '1.2'),
        branch(3, '1.2.1', { account: 1 }),
        pack(4, '1.2.1.1', 50, { account: 1 }),
    ];
    const { outlines } = layOut(projectOf(elements, ['A', 'B']), 'budget');
    assert.deepEqual(
        outlines.map(({ account, level, left, right }) => [account, level, left.toFixed(2), right.toFixed(2)]),
        [
            [0, 3, '0.00', '0.20'],
            [1, 3, '0.20', '0.30'],
            [1, 3, '0.40', '0.50'],
            [1, 3, '0.50', '1.00'],
        ],
    );
});
