// The blocks of all strips as pixels: columns of what is narrow first, then what is wide, over them.

import { Flag } from './data.js';
import { sumColumns } from './density.js';
import { fillBlock, fillStack } from './patterns.js';

/** @typedef {import('./density.js').Columns} Columns */
/** @typedef {import('./patterns.js').Raster} Raster */
/** @typedef {import('./scene.js').Scene} Scene */

/** Width from which a block is drawn singly, and from which it has a seam at its right, CSS pixels. */
export const LEAST_SINGLE = 2.4;
const LEAST_SEAMED = 4;

/** Height of the bar of a finding, CSS pixels. */
const FINDING_BAR = 3;

/**
 * A block that is drawn singly.
 * @typedef {object} Single
 * @property {number} item element
 * @property {number} left CSS pixels on the sheet, cut to the window
 * @property {number} right
 * @property {number} row strip, from the first that is shown
 */

/**
 * Geometry of the raster on the sheet: all edges are whole device pixels.
 * @param {Scene} scene
 */
export function rasterBox({ frame, style }) {
    const scale = style.scale;
    const x = Math.round(frame.left * scale);
    const y = Math.round(frame.tops[0] * scale);
    return {
        x,
        y,
        width: Math.max(1, Math.round(frame.right * scale) - x),
        height: Math.max(1, Math.round(frame.bottom * scale) - y),
    };
}

/** Place of a fraction of the whole on the sheet, on a device pixel as the blocks are. CSS pixels. @param {Scene} scene @param {number} fraction */
export function edgeOf(scene, fraction) {
    const box = rasterBox(scene);
    const { from, to } = scene.view;
    return (box.x + Math.round(((fraction - from) / (to - from)) * box.width)) / scene.style.scale;
}

/**
 * @param {Scene} scene @param {Raster} raster of the size of `rasterBox`
 * @returns {{ singles: Single[], blocks: number }} blocks drawn singly, and number of blocks in view
 */
export function drawBlocks(scene, raster) {
    const { layout, shown, style, frame, view } = scene;
    raster.pixels.fill(style.tokens.pixel('sheet'));
    const last = layout.strips.length - 1;
    /** @type {Columns[]} */
    const rows = frame.tops.map((_, row) => {
        const at = frame.firstLevel - 1 + row;
        const leastWide = LEAST_SINGLE * style.scale;
        const presummed = at === last ? shown.presummed : null;
        return sumColumns(layout.strips[at], layout.positions, shown.weights, view, raster.width, leastWide, presummed);
    });
    rows.forEach((columns, row) => drawColumns(scene, raster, columns, row));
    const singles = rows.flatMap((columns, row) => drawWide(scene, raster, columns, row));
    return { singles, blocks: countInView(scene) };
}

/** @param {Scene} scene @param {number} row */
function rowBox(scene, row) {
    const { frame, style } = scene;
    const origin = rasterBox(scene).y;
    return {
        top: Math.round(frame.tops[row] * style.scale) - origin,
        bottom: Math.round((frame.tops[row] + frame.heights[row]) * style.scale) - origin,
    };
}

/** @param {Scene} scene @param {Raster} raster @param {Columns} columns @param {number} row */
function drawColumns(scene, raster, { sums }, row) {
    const { style, shown } = scene;
    const { slots, classes } = shown.weights;
    const { top, bottom } = rowBox(scene, row);
    for (let x = 0; x < raster.width; x++) {
        const at = x * slots;
        fillStack(raster, style.fills, { left: x, right: x + 1, top, bottom }, sums, at);
        const found = sums[at + classes];
        if (shown.lens.findings === true && found > 0) {
            const share = Math.min(1, found / sumOf(sums, at, classes));
            const height = Math.max(1, Math.round(share * (bottom - top)));
            fillBlock(raster, style.finding, { left: x, right: x + 1, top: bottom - height, bottom });
        }
    }
}

/** @param {Float32Array} values @param {number} at @param {number} length */
function sumOf(values, at, length) {
    let sum = 0;
    for (let i = 0; i < length; i++) {
        sum += values[at + i];
    }
    return sum;
}

/** @param {Scene} scene @param {Raster} raster @param {Columns} columns @param {number} row @returns {Single[]} */
function drawWide(scene, raster, { wide }, row) {
    const { layout, shown, style, frame, view } = scene;
    const positions = layout.positions;
    const { level, flags } = layout.project;
    const { x: originX, width } = rasterBox(scene);
    const scale = width / (view.to - view.from);
    const { top, bottom } = rowBox(scene, row);
    /** @type {Single[]} */
    const singles = [];
    for (const item of wide) {
        const isOwnRow = level[item] === frame.firstLevel + row || row === 0;
        if (!isOwnRow) {
            continue;
        }
        const left = Math.max(0, Math.round((positions.left[item] - view.from) * scale));
        const edge = Math.round((positions.right[item] - view.from) * scale);
        const isSeamed = (positions.right[item] - positions.left[item]) * scale >= LEAST_SEAMED * style.scale;
        const right = Math.min(width, edge - (isSeamed ? Math.round(style.scale) : 0));
        if (right <= left) {
            continue;
        }
        const runsDown = (flags[item] & Flag.package) !== 0;
        const box = { left, right, top, bottom: runsDown ? raster.height : bottom };
        drawBlock(scene, raster, item, box);
        if (shown.lens.findings === true && (flags[item] & Flag.finding) !== 0) {
            const bar = Math.round(FINDING_BAR * style.scale * style.unit);
            const ink = { ...style.finding, columns: 1, rows: 1, tile: Uint32Array.of(style.tokens.pixel('unf4')) };
            fillBlock(raster, ink, { ...box, bottom: Math.min(bottom, top + bar) });
        }
        singles.push({ item, left: (originX + left) / style.scale, right: (originX + right) / style.scale, row });
    }
    return singles;
}

/** @param {Scene} scene @param {Raster} raster @param {number} item @param {import('./patterns.js').Box} box */
function drawBlock({ shown, style }, raster, item, box) {
    const { classes, classOf, shares } = shown.weights;
    if (shares === null) {
        fillBlock(raster, style.fills[classOf[item]], box);
    } else {
        fillStack(raster, style.fills, box, shares, item * classes);
    }
}

/** Elements in view: what runs down through several strips counts once. @param {Scene} scene */
function countInView({ layout, frame, view }) {
    const { left, right } = layout.positions;
    const isWhole = view.from <= 0 && view.to >= 1;
    if (isWhole && frame.firstLevel === 1 && frame.tops.length === layout.strips.length) {
        return left.length;
    }
    const lowest = frame.firstLevel + frame.tops.length - 1;
    const level = layout.project.level;
    let count = 0;
    for (let i = 0; i < left.length; i++) {
        if (right[i] > view.from && left[i] < view.to && level[i] <= lowest) {
            count++;
        }
    }
    return count;
}
