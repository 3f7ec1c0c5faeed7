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
 * @property {Gap[]} gaps in depth-first order of their owners
 */

/**
 * What is missing: from a level down to the last.
 * @typedef {object} Gap
 * @property {number} owner element whose children do not fill it, or that is not split
 * @property {number} level first level that is missing, root = 1
 * @property {number} left
 * @property {number} right
 * @property {boolean} unknown true if the size is not known and 3 % of the owner, or of its parent, stand for it
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
 * Size of each package in the measure, not negative; a count when there is no column.
 * @param {Project} project @param {Measure} measure
 * @returns {(index: number) => number}
 */
export function packageSizes(project, measure) {
    if (measure === 'count') {
        return () => 1;
    }
    const column = measure === 'hours' ? project.hours : project.budget;
    return (index) => (column[index] > 0 ? column[index] : 0);
}

/**
 * Lays all elements out. Two passes, linear: sizes from the last element to the first with one accumulator per level,
 * positions from the first to the last. An element's size is the sum of its children and its gap, so children that
 * are more than the whole widen it, and children and gap fill it exactly. Where no size is known they share alike.
 * @param {Project} project @param {Measure} measure
 * @returns {Positions}
 */
export function place(project, measure) {
    const sizeOf = packageSizes(project, measure);
    const branches = branchesFromBelow(project, measure, sizeOf);
    const { count, level, flags, end } = project;
    const left = new Float64Array(count);
    const right = new Float64Array(count);
    /** @type {Gap[]} */
    const gaps = [];
    /** The branch that is open at each level, and how much of it is taken. */
    const open = new Int32Array(project.levelNames.length + 2);
    const taken = new Float64Array(open.length);
    const edge = new Float64Array(open.length);
    const stop = new Float64Array(open.length);
    const start = new Float64Array(open.length);
    let branch = 0;
    right[0] = 1;
    for (let i = 0; i < count; i++) {
        const own = level[i];
        const isPackage = (flags[i] & Flag.package) !== 0;
        if (own > 1) {
            const above = open[own - 1];
            const isSizeless = branches.alike[above] === 1 || (!isPackage && branches.sizeless[branch] === 1);
            taken[own - 1] += isSizeless ? branches.each[above] : isPackage ? sizeOf(i) : branches.total[branch];
            const [from, to] = [start[own - 1], stop[own - 1]];
            const isLast = end[i] === end[branches.element[above]] && branches.gap[above] === 0;
            left[i] = edge[own - 1];
            right[i] = isLast ? to : Math.min(to, from + (to - from) * (taken[own - 1] / branches.total[above]));
            edge[own - 1] = right[i];
        }
        if (!isPackage) {
            if (branches.total[branch] === 0 && end[i] > i + 1) {
                shareAlike(branch, project, branches);
            }
            open[own] = branch;
            taken[own] = 0;
            start[own] = edge[own] = left[i];
            stop[own] = right[i];
            branch++;
        }
        const next = i + 1 < count ? level[i + 1] : 1;
        for (let closing = isPackage ? own - 1 : own; closing >= next; closing--) {
            closeBranch(project, branches, open[closing], edge[closing], stop[closing], gaps);
        }
    }
    return { measure, left, right, gaps: gaps.sort((a, b) => a.owner - b.owner) };
}

/**
 * The gap of a split element is at the right of its parts; an element that is not split is a gap below itself, or in
 * its own strip if that is the last.
 * @param {Project} project @param {Branches} branches @param {number} branch @param {number} from @param {number} to
 * @param {Gap[]} gaps
 */
function closeBranch(project, branches, branch, from, to, gaps) {
    const owner = branches.element[branch];
    const isNotSplit = (project.flags[owner] & Flag.notSplit) !== 0;
    if (isNotSplit || branches.gap[branch] > 0 || branches.unknown[branch] === 1) {
        const level = Math.min(project.level[owner] + 1, project.levelNames.length);
        gaps.push({ owner, level, left: from, right: to, unknown: branches.unknown[branch] === 1 });
    }
}

/**
 * All elements that are no packages, in depth-first order, and what their sizes come to.
 * @typedef {object} Branches
 * @property {Int32Array} element
 * @property {Float64Array} total what the children and the gap are divided by
 * @property {Float64Array} gap size of the own gap, in units of the total
 * @property {Float64Array} each what one unknown size directly below counts in the total
 * @property {Uint8Array} sizeless 1 where nothing of the own size is known
 * @property {Uint8Array} unknown 1 where the own gap has no known size
 * @property {Uint8Array} alike 1 where children and gap are equally wide
 */

/** The children and the gap of an element of total 0 are equally wide. @param {number} branch @param {Project} project @param {Branches} branches */
function shareAlike(branch, project, branches) {
    const element = branches.element[branch];
    let parts = branches.unknown[branch];
    for (let i = element + 1; i < project.end[element]; i = project.end[i]) {
        parts++;
    }
    branches.gap[branch] = branches.unknown[branch];
    branches.alike[branch] = 1;
    branches.total[branch] = parts;
    branches.each[branch] = 1;
}

/**
 * With k unknown sizes directly below an element, each is 3 % of it: total = known ÷ (1 − 3 % × k).
 * @param {Project} project @param {Measure} measure @param {(index: number) => number} sizeOf
 * @returns {Branches}
 */
function branchesFromBelow(project, measure, sizeOf) {
    const { count, level, flags, end } = project;
    let branch = 0;
    for (let i = 0; i < count; i++) {
        branch += (flags[i] & Flag.package) === 0 ? 1 : 0;
    }
    const element = new Int32Array(branch);
    const total = new Float64Array(branch);
    const gap = new Float64Array(branch);
    const each = new Float64Array(branch);
    const sizeless = new Uint8Array(branch);
    const unknown = new Uint8Array(branch);
    const alike = new Uint8Array(branch);
    const below = new Float64Array(project.levelNames.length + 2);
    const sizelessBelow = new Uint32Array(below.length);
    for (let i = count - 1; i >= 0; i--) {
        const own = level[i];
        if ((flags[i] & Flag.package) !== 0) {
            below[own] += sizeOf(i);
            continue;
        }
        branch--;
        const missing = gapOf(project, measure, i);
        const isUnknown = Number.isNaN(missing);
        const size = isUnknown ? 0 : missing;
        const parts = sizelessBelow[own + 1] + (isUnknown && end[i] > i + 1 ? 1 : 0);
        const share = parts === 0 ? 0 : Math.min(UNKNOWN_SHARE, MOST_UNKNOWN / parts);
        element[branch] = i;
        total[branch] = (below[own + 1] + size) / (1 - share * parts);
        each[branch] = share * total[branch];
        gap[branch] = isUnknown ? each[branch] : size;
        unknown[branch] = isUnknown ? 1 : 0;
        sizeless[branch] = total[branch] === 0 && (isUnknown || parts > 0) ? 1 : 0;
        below[own + 1] = sizelessBelow[own + 1] = 0;
        below[own] += total[branch];
        sizelessBelow[own] += sizeless[branch];
    }
    return { element, total, gap, each, sizeless, unknown, alike };
}
