// How wide each element is, in the chosen measure, and where it lies. Positions are fractions of the whole, 0 to 1.

import { Flag } from './data.js';

/** @typedef {import('./data.js').Project} Project */
/** @typedef {'budget' | 'hours' | 'count'} Measure */

/** @type {readonly Measure[]} */
export const MEASURES = Object.freeze(/** @type {const} */ (['budget', 'hours', 'count']));

/** Share of the parent that is reserved for what is missing when its size is unknown. */
export const UNKNOWN_SHARE = 0.03;

/** Most of a parent that unknown sizes take together, so that what is known stays in sight. */
const MOST_UNKNOWN = 0.5;

/**
 * @typedef {object} Positions
 * @property {Measure} measure
 * @property {Float64Array} left left edge of each element
 * @property {Float64Array} right right edge
 * @property {Float64Array} partsEnd where the children end; the gap of the element is from here to its right edge.
 *   Equal to `right` where nothing is missing, to `left` where the element is not split at all.
 * @property {Uint8Array} unknown 1 where the size of the gap is unknown
 * @property {Float64Array} known size of each element in the measure, without unknown sizes
 */

/**
 * The gap of an element in the measure: its size, NaN if it is missing with an unknown size, else 0.
 * A count of packages is never known for what is not there.
 * @param {Project} project @param {Measure} measure @param {number} index
 */
export function gapOf(project, measure, index) {
    if ((project.flags[index] & Flag.notSplit) !== 0) {
        const size = measure === 'count' ? NaN : amountGap(project, measure)[index];
        return size > 0 ? size : NaN;
    }
    if (measure === 'count') {
        const missing = !(project.gapBudget[index] <= 0) || !(project.gapHours[index] <= 0);
        return missing ? NaN : 0;
    }
    const size = amountGap(project, measure)[index];
    return size <= 0 ? 0 : size;
}

/** @param {Project} project @param {Measure} measure */
function amountGap(project, measure) {
    return measure === 'hours' ? project.gapHours : project.gapBudget;
}

/**
 * Size of a package in the measure, not negative.
 * @param {Project} project @param {Measure} measure @param {number} index
 */
function packageSize(project, measure, index) {
    return measure === 'count'
        ? 1
        : Math.max(0, measure === 'hours' ? project.hours[index] : project.budget[index]);
}

/**
 * Lays all elements out. Two passes, linear: sizes from the last element to the first with one accumulator per level,
 * positions from the first to the last. An element's size is the sum of its children and its gap, so children that
 * are more than the whole widen it, and children and gap fill it exactly. Where no size is known they share alike.
 * @param {Project} project @param {Measure} measure
 * @returns {Positions}
 */
export function place(project, measure) {
    const sums = sizesFromBelow(project, measure);
    const { known, total, gap, each, sizeless, unknown } = sums;
    const { count, parent, end, flags } = project;
    const left = new Float64Array(count);
    const right = new Float64Array(count);
    const partsEnd = new Float64Array(count);
    const running = new Float64Array(count);
    right[0] = 1;
    for (let i = 0; i < count; i++) {
        const above = parent[i];
        if (above >= 0) {
            running[above] += sizeless[i] === 0 ? total[i] : each[above];
            const edge = left[above] + (right[above] - left[above]) * (running[above] / total[above]);
            const isLast = end[i] === end[above] && gap[above] === 0;
            left[i] = partsEnd[above];
            right[i] = isLast ? right[above] : Math.min(edge, right[above]);
            partsEnd[above] = right[i];
        }
        partsEnd[i] = (flags[i] & Flag.package) !== 0 ? right[i] : left[i];
        if (total[i] === 0 && end[i] > i + 1) {
            shareAlike(i, project, sums);
        }
    }
    return { measure, left, right, partsEnd, unknown, known };
}

/**
 * What the sizes come to, from below.
 * @typedef {object} Sums
 * @property {Float64Array} known size without what is unknown
 * @property {Float64Array} total what the children and the gap of an element are divided by
 * @property {Float64Array} gap size of an element's own gap, in units of its total
 * @property {Float64Array} each what one unknown size below an element counts in its total
 * @property {Uint8Array} sizeless 1 where nothing of an element's own size is known
 * @property {Uint8Array} unknown 1 where an element's own gap has no known size
 */

/** The children and the gap of an element of total 0 are equally wide. @param {number} index @param {Project} project @param {Sums} sums */
function shareAlike(index, project, sums) {
    let parts = sums.unknown[index];
    sums.gap[index] = sums.unknown[index];
    for (let i = index + 1; i < project.end[index]; i = project.end[i]) {
        sums.sizeless[i] = 1;
        parts++;
    }
    sums.total[index] = parts;
    sums.each[index] = 1;
}

/**
 * With k unknown sizes directly below an element, each is 3 % of it: total = known ÷ (1 − 3 % × k).
 * @param {Project} project @param {Measure} measure
 * @returns {Sums}
 */
function sizesFromBelow(project, measure) {
    const { count, level, flags, end } = project;
    const known = new Float64Array(count);
    const total = new Float64Array(count);
    const gap = new Float64Array(count);
    const each = new Float64Array(count);
    const sizeless = new Uint8Array(count);
    const unknown = new Uint8Array(count);
    const depth = project.levelNames.length + 2;
    const totalBelow = new Float64Array(depth);
    const knownBelow = new Float64Array(depth);
    const sizelessBelow = new Uint32Array(depth);
    for (let i = count - 1; i >= 0; i--) {
        const own = level[i];
        if ((flags[i] & Flag.package) !== 0) {
            total[i] = known[i] = packageSize(project, measure, i);
        } else {
            const missing = gapOf(project, measure, i);
            const isUnknown = Number.isNaN(missing);
            const size = isUnknown ? 0 : missing;
            const isSplit = end[i] > i + 1;
            const parts = sizelessBelow[own + 1] + (isUnknown && isSplit ? 1 : 0);
            const share = parts === 0 ? 0 : Math.min(UNKNOWN_SHARE, MOST_UNKNOWN / parts);
            known[i] = knownBelow[own + 1] + size;
            total[i] = (totalBelow[own + 1] + size) / (1 - share * parts);
            each[i] = share * total[i];
            gap[i] = isUnknown ? each[i] : size;
            unknown[i] = isUnknown ? 1 : 0;
            sizeless[i] = total[i] === 0 && (isUnknown || parts > 0) ? 1 : 0;
            totalBelow[own + 1] = knownBelow[own + 1] = sizelessBelow[own + 1] = 0;
        }
        totalBelow[own] += total[i];
        knownBelow[own] += known[i];
        sizelessBelow[own] += sizeless[i];
    }
    return { known, total, gap, each, sizeless, unknown };
}
