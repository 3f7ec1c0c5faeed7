// Blocks too narrow to be drawn singly, summed into pixel columns per class. A column shows the mix of what it holds.

import { Flag } from './data.js';
import { inView } from './layout.js';
import { packageSizes } from './sizes.js';

/** @typedef {import('./data.js').LensData} LensData */
/** @typedef {import('./layout.js').Layout} Layout */
/** @typedef {import('./layout.js').Strip} Strip */
/** @typedef {import('./sizes.js').Positions} Positions */
/** @typedef {import('./layout.js').Window} Window */

/** Columns into which the last level is summed beforehand. */
export const PRESUMMED = 4096;

/** Number of blocks in view from which sums made beforehand pay. */
const WORTH_PRESUMMING = 16_384;

/**
 * What blocks weigh per class: whole in their own class, or by shares. The slot after the classes takes the blocks
 * with a finding once more.
 * @typedef {object} Weights
 * @property {number} classes
 * @property {number} slots classes + 1
 * @property {Uint8Array} classOf
 * @property {Float32Array | Uint16Array | null} shares `classes` per element
 * @property {number} whole what the shares of one element add up to
 * @property {Uint8Array} flags
 */

/**
 * @typedef {object} Columns
 * @property {Float32Array} sums `slots` per pixel column: width in pixels per class, and with a finding
 * @property {number[]} wide elements to be drawn singly
 */

/**
 * The weights of a lens. A mix without shares of its own is summed here from the packages, in the measure of the map:
 * one reverse pass.
 * @param {Layout} layout @param {LensData} lens
 * @returns {Weights}
 */
export function weightsOf(layout, lens) {
    const shared = lens.shares ?? (lens.mix ? mixOf(layout, lens) : null);
    return {
        classes: lens.classCount,
        slots: lens.classCount + 1,
        classOf: lens.classOf,
        shares: shared,
        whole: lens.shares === null ? 1 : 65_535,
        flags: layout.project.flags,
    };
}

/**
 * Shares of the classes below each element by size; where no size is known, its own class.
 * @param {Layout} layout @param {LensData} lens
 */
function mixOf(layout, lens) {
    const { parent, flags, count } = layout.project;
    const sizeOf = packageSizes(layout.project, layout.positions.measure);
    const classes = lens.classCount;
    const shares = new Float32Array(count * classes);
    const sums = new Float64Array(count);
    for (let i = count - 1; i >= 0; i--) {
        const at = i * classes;
        if ((flags[i] & Flag.package) !== 0) {
            sums[i] = sizeOf(i);
        }
        const sum = sums[i];
        const above = parent[i];
        if ((flags[i] & Flag.package) !== 0 || sum === 0) {
            shares.fill(0, at, at + classes);
            shares[at + lens.classOf[i]] = 1;
        } else {
            for (let c = 0; c < classes; c++) {
                shares[at + c] /= sum;
            }
        }
        if (above >= 0 && sum > 0) {
            sums[above] += sum;
            for (let c = 0; c < classes; c++) {
                shares[above * classes + c] += shares[at + c] * sum;
            }
        }
    }
    return shares;
}

/**
 * Sums the last level per 4 096 columns, so that a window that shows many blocks need not visit them one by one.
 * @param {Strip} strip @param {Positions} positions @param {Weights} weights
 * @returns {Float64Array} running totals, `slots` per column edge, 0 at the first, in fractions of the whole
 */
export function presum(strip, positions, weights) {
    const slots = weights.slots;
    const whole = { from: 0, to: 1 };
    const sums = new Float64Array(PRESUMMED * slots);
    const range = { columns: PRESUMMED, from: 0, to: strip.length };
    addBlocks(strip, positions, weights, whole, range, Infinity, sums);
    const running = new Float64Array((PRESUMMED + 1) * slots);
    for (let at = 0; at < sums.length; at++) {
        running[at + slots] = running[at] + sums[at] / PRESUMMED;
    }
    return running;
}

/**
 * Sums the narrow blocks of a strip in the window and lists the wide ones.
 * @param {Strip} strip @param {Positions} positions @param {Weights} weights @param {Window} view
 * @param {number} columns pixel columns of the window
 * @param {number} leastWide width in pixel columns from which a block is drawn singly
 * @param {Float64Array | null} presummed see `presum`; then wide blocks are in the sums too, and are drawn over them
 * @returns {Columns}
 */
export function sumColumns(strip, positions, weights, view, columns, leastWide, presummed) {
    const { from, to } = inView(strip, positions, view);
    const sums = new Float32Array(columns * weights.slots);
    const isCoarseEnough = (view.to - view.from) * PRESUMMED >= columns;
    if (presummed !== null && isCoarseEnough && to - from >= WORTH_PRESUMMING) {
        addPresummed(presummed, weights.slots, view, columns, sums);
        return { sums, wide: wideBlocks(strip, positions, view, { columns, from, to }, leastWide) };
    }
    const wide = addBlocks(strip, positions, weights, view, { columns, from, to }, leastWide, sums);
    return { sums, wide };
}

/**
 * @param {Float64Array} presummed @param {number} slots @param {Window} view @param {number} columns
 * @param {Float32Array} sums
 */
function addPresummed(presummed, slots, view, columns, sums) {
    const pixel = (view.to - view.from) / columns;
    const before = new Float64Array(slots);
    for (let edge = 0; edge <= columns; edge++) {
        const place = Math.max(0, Math.min(PRESUMMED, (view.from + edge * pixel) * PRESUMMED));
        const column = Math.min(PRESUMMED - 1, Math.floor(place));
        const part = place - column;
        for (let slot = 0; slot < slots; slot++) {
            const low = presummed[column * slots + slot];
            const total = low + (presummed[(column + 1) * slots + slot] - low) * part;
            if (edge > 0) {
                sums[(edge - 1) * slots + slot] = (total - before[slot]) / pixel;
            }
            before[slot] = total;
        }
    }
}

/**
 * @param {Strip} strip @param {Positions} positions @param {Window} view @param {{ columns: number, from: number, to: number }} range
 * @param {number} leastWide
 */
function wideBlocks(strip, positions, view, range, leastWide) {
    const least = (leastWide * (view.to - view.from)) / range.columns;
    const { left, right } = positions;
    /** @type {number[]} */
    const wide = [];
    for (let at = range.from; at < range.to; at++) {
        const item = strip[at];
        if (right[item] - left[item] >= least) {
            wide.push(item);
        }
    }
    return wide;
}

/**
 * @param {Strip} strip @param {Positions} positions @param {Weights} weights @param {Window} view
 * @param {{ columns: number, from: number, to: number }} range columns, and blocks to visit
 * @param {number} leastWide @param {Float32Array | Float64Array} sums
 * @returns {number[]} elements that are wide
 */
function addBlocks(strip, positions, weights, view, range, leastWide, sums) {
    const { left, right } = positions;
    const { slots, classOf, shares, flags } = weights;
    const columns = range.columns;
    const scale = columns / (view.to - view.from);
    /** @type {number[]} */
    const wide = [];
    for (let at = range.from; at < range.to; at++) {
        const item = strip[at];
        const x0 = (left[item] - view.from) * scale;
        const x1 = (right[item] - view.from) * scale;
        if (x1 - x0 >= leastWide) {
            wide.push(item);
            continue;
        }
        const begin = x0 < 0 ? 0 : x0;
        const stop = x1 > columns ? columns : x1;
        const hasFinding = (flags[item] & Flag.finding) !== 0;
        let x = begin;
        for (let column = Math.floor(begin); x < stop; column++) {
            const edge = column + 1 < stop ? column + 1 : stop;
            const width = edge - x;
            const base = column * slots;
            if (shares === null) {
                sums[base + classOf[item]] += width;
            } else {
                addShares(weights, item, width, sums, base);
            }
            if (hasFinding) {
                sums[base + slots - 1] += width;
            }
            x = edge;
        }
    }
    return wide;
}

/** @param {Weights} weights @param {number} item @param {number} width @param {Float32Array | Float64Array} sums @param {number} base */
function addShares(weights, item, width, sums, base) {
    const { shares, classes, whole } = weights;
    if (shares === null) {
        return;
    }
    for (let c = 0; c < classes; c++) {
        sums[base + c] += (width * shares[item * classes + c]) / whole;
    }
}
