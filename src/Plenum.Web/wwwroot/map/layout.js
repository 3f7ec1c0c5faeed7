// What stands in each strip of the map, sorted by position: elements, gaps and outlines of control accounts.

import { Flag } from './data.js';
import { place } from './sizes.js';

/** @typedef {import('./data.js').Project} Project */
/** @typedef {import('./sizes.js').Measure} Measure */
/** @typedef {import('./sizes.js').Positions} Positions */
/** @typedef {import('./sizes.js').Gap} Gap */

/**
 * One level: its elements, and the packages above it that run down through it, in the order of their positions. They
 * never overlap.
 * @typedef {Int32Array} Strip
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
 * @property {Map<number, Gap>} gapOf the gap of an element, by owner
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
    const gaps = positions.gaps.toSorted((a, b) => a.left - b.left || a.level - b.level);
    return {
        project,
        positions,
        strips: fillStrips(project),
        gaps,
        gapOf: new Map(gaps.map((gap) => [gap.owner, gap])),
        coverage: coverageOf(gaps, project.levelNames.length),
        outlines: findOutlines(project, positions),
        overfull: findOverfull(project, measure),
    };
}

/** @param {Project} project @returns {Strip[]} */
function fillStrips(project) {
    const levels = project.levelNames.length;
    const { level, flags, count, levelCounts, packageCounts } = project;
    let above = 0;
    /** @type {Strip[]} */
    const strips = [];
    for (let l = 0; l < levels; l++) {
        strips.push(new Int32Array(levelCounts[l] + above));
        above += packageCounts[l];
    }
    const filled = new Uint32Array(levels);
    for (let i = 0; i < count; i++) {
        const last = (flags[i] & Flag.package) !== 0 ? levels : level[i];
        for (let l = level[i]; l <= last; l++) {
            strips[l - 1][filled[l - 1]++] = i;
        }
    }
    return strips;
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
 * @param {Strip} strip @param {Positions} positions @param {Window} view
 */
export function inView(strip, { left, right }, view) {
    return {
        from: firstWhere(strip, (item) => right[item] > view.from),
        to: firstWhere(strip, (item) => left[item] >= view.to),
    };
}

/**
 * First position from which a statement holds to the end, by halving.
 * @param {Strip} strip @param {(item: number) => boolean} holds
 */
function firstWhere(strip, holds) {
    let low = 0;
    let high = strip.length;
    while (low < high) {
        const middle = (low + high) >> 1;
        if (holds(strip[middle])) {
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
    const { left, right } = layout.positions;
    const at = firstWhere(strip, (item) => right[item] > x);
    const isIn = at < strip.length && left[strip[at]] <= x;
    return { element: isIn ? strip[at] : -1, gap: null };
}
