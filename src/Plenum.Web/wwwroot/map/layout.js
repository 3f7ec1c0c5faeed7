// What stands in each strip of the map, sorted by position: elements, gaps and outlines of control accounts.

import { Flag } from './data.js';
import { place } from './sizes.js';

/** @typedef {import('./data.js').Project} Project */
/** @typedef {import('./sizes.js').Measure} Measure */
/** @typedef {import('./sizes.js').Positions} Positions */

/**
 * One level: its elements, and the packages above it that run down through it. Sorted by position, never overlapping.
 * @typedef {object} Strip
 * @property {Int32Array} item element of each block
 * @property {Float64Array} left
 * @property {Float64Array} right
 */

/**
 * What is missing: from a level down to the last.
 * @typedef {object} Gap
 * @property {number} owner element whose children do not fill it, or that is not split
 * @property {number} level first level that is missing, root = 1
 * @property {number} left
 * @property {number} right
 * @property {boolean} unknown true if the size is not known and 3 % of the owner stand for it
 */

/**
 * Neighbouring parts of one control account under one parent.
 * @typedef {{ account: number, level: number, left: number, right: number }} Outline
 */

/**
 * @typedef {object} Layout
 * @property {Project} project
 * @property {Positions} positions
 * @property {Strip[]} strips by level, root first
 * @property {Gap[]} gaps sorted by position
 * @property {Float64Array} coverage share of the project that each level covers
 * @property {Outline[]} outlines sorted by position
 * @property {number[]} overfull elements whose parts are more than the whole
 */

/** The part of the whole that is in view. @typedef {{ from: number, to: number }} Window */

/**
 * @param {Project} project @param {Measure} measure
 * @returns {Layout}
 */
export function layOut(project, measure) {
    const positions = place(project, measure);
    const gaps = findGaps(project, positions);
    return {
        project,
        positions,
        strips: fillStrips(project, positions),
        gaps,
        coverage: coverageOf(gaps, project.levelNames.length),
        outlines: findOutlines(project, positions),
        overfull: findOverfull(project, measure),
    };
}

/** @param {Project} project @param {Positions} positions @returns {Strip[]} */
function fillStrips(project, positions) {
    const levels = project.levelNames.length;
    const sizes = new Uint32Array(levels);
    const { level, flags, count } = project;
    for (let i = 0; i < count; i++) {
        const last = (flags[i] & Flag.package) !== 0 ? levels : level[i];
        for (let l = level[i]; l <= last; l++) {
            sizes[l - 1]++;
        }
    }
    /** @type {Strip[]} */
    const strips = Array.from(sizes, (size) => ({
        item: new Int32Array(size),
        left: new Float64Array(size),
        right: new Float64Array(size),
    }));
    const filled = new Uint32Array(levels);
    for (let i = 0; i < count; i++) {
        const last = (flags[i] & Flag.package) !== 0 ? levels : level[i];
        for (let l = level[i]; l <= last; l++) {
            const strip = strips[l - 1];
            const at = filled[l - 1]++;
            strip.item[at] = i;
            strip.left[at] = positions.left[i];
            strip.right[at] = positions.right[i];
        }
    }
    return strips;
}

/**
 * The gap of a split element is at the right of its parts; an element that is not split is a gap below itself, or in
 * its own strip if that is the last.
 * @param {Project} project @param {Positions} positions
 * @returns {Gap[]}
 */
function findGaps(project, positions) {
    const { left, right, partsEnd, unknown } = positions;
    /** @type {Gap[]} */
    const gaps = [];
    for (let i = 0; i < project.count; i++) {
        const isNotSplit = (project.flags[i] & Flag.notSplit) !== 0;
        if (isNotSplit || partsEnd[i] < right[i] || unknown[i] === 1) {
            gaps.push({
                owner: i,
                level: Math.min(project.level[i] + 1, project.levelNames.length),
                left: isNotSplit ? left[i] : partsEnd[i],
                right: right[i],
                unknown: unknown[i] === 1,
            });
        }
    }
    return gaps.sort((a, b) => a.left - b.left || a.level - b.level);
}

/** @param {Gap[]} gaps @param {number} levels */
function coverageOf(gaps, levels) {
    const coverage = new Float64Array(levels).fill(1);
    for (const gap of gaps) {
        for (let l = gap.level; l <= levels; l++) {
            coverage[l - 1] -= gap.right - gap.left;
        }
    }
    return coverage.map((share) => Math.max(0, share));
}

/** @param {Project} project @param {Positions} positions @returns {Outline[]} */
function findOutlines(project, positions) {
    const { account, parent, level } = project;
    /** @type {Outline[]} */
    const outlines = [];
    /** The parent of the newest outline's parts: what stands under two parents is outlined apart. */
    let home = -1;
    for (let i = 0; i < project.count; i++) {
        const above = parent[i];
        if (account[i] < 0 || (above >= 0 && account[above] === account[i])) {
            continue;
        }
        const newest = outlines.at(-1);
        const goesOn = newest?.account === account[i] && home === above && newest.right === positions.left[i];
        if (newest !== undefined && goesOn) {
            newest.right = positions.right[i];
        } else {
            outlines.push({
                account: account[i],
                level: level[i],
                left: positions.left[i],
                right: positions.right[i],
            });
            home = above;
        }
    }
    return outlines;
}

/** @param {Project} project @param {Measure} measure */
function findOverfull(project, measure) {
    if (measure === 'count') {
        return [];
    }
    const gap = measure === 'hours' ? project.gapHours : project.gapBudget;
    /** @type {number[]} */
    const found = [];
    for (let i = 0; i < gap.length; i++) {
        if (gap[i] < 0) {
            found.push(i);
        }
    }
    return found;
}

/**
 * The blocks of a strip that lie at least partly in the window: positions from (inclusive) and to (exclusive).
 * @param {Strip} strip @param {Window} view
 */
export function inView(strip, view) {
    return { from: firstAfter(strip.right, view.from), to: firstFrom(strip.left, view.to) };
}

/** First position whose value is greater than x, in a sorted column. @param {Float64Array} sorted @param {number} x */
function firstAfter(sorted, x) {
    let low = 0;
    let high = sorted.length;
    while (low < high) {
        const middle = (low + high) >> 1;
        if (sorted[middle] > x) {
            high = middle;
        } else {
            low = middle + 1;
        }
    }
    return low;
}

/** First position whose value is x or greater. @param {Float64Array} sorted @param {number} x */
function firstFrom(sorted, x) {
    let low = 0;
    let high = sorted.length;
    while (low < high) {
        const middle = (low + high) >> 1;
        if (sorted[middle] >= x) {
            high = middle;
        } else {
            low = middle + 1;
        }
    }
    return low;
}

/**
 * What lies at a place of the map: an element, and the gap that is drawn over it if there is one. Gaps are hit where
 * they are drawn, which is wider than they are when they are narrower than `least`.
 * @param {Layout} layout @param {number} level root = 1 @param {number} x fraction of the whole
 * @param {number} [least] least width of a gap as a fraction of the whole
 * @returns {{ element: number, gap: Gap | null }} element −1 if there is none
 */
export function hit(layout, level, x, least = 0) {
    const gap = layout.gaps.find((candidate) => {
        const spread = Math.max(0, least - (candidate.right - candidate.left)) / 2;
        return candidate.level <= level && candidate.left - spread <= x && x < candidate.right + spread;
    });
    if (gap !== undefined) {
        return { element: gap.owner, gap };
    }
    const strip = layout.strips[level - 1];
    const at = firstAfter(strip.right, x);
    const isIn = at < strip.item.length && strip.left[at] <= x;
    return { element: isIn ? strip.item[at] : -1, gap: null };
}
