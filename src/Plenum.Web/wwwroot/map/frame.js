// Where everything stands on the sheet, in CSS pixels: overview, ruler, strips, gutters, and the ruler's steps.

/** @typedef {import('./layout.js').Window} Window */

/** Height of the strips for up to five levels, the root first; the last is always the last of the list. */
const HEIGHTS = Object.freeze({
    normal: [20, 28, 30, 32, 44],
    compact: [20, 26, 28, 28, 36],
    compactZoomed: [20, 24, 24, 24, 30],
});

/** With more than five levels, what those after the third share, and the least that one gets. */
const DEEP = Object.freeze({ shared: 150, least: 12, first: 3 });

const SEAM = 1;
const GUTTER = Object.freeze({ left: 134, right: 70 });
const RULER = 20;
const OVERVIEW = 16;
const FOOT = 20;

/**
 * @typedef {object} Frame
 * @property {number} unit size of a pixel of the design in CSS pixels, 1 at a text size of 16
 * @property {number} width of the sheet
 * @property {number} height of the sheet
 * @property {number} left left edge of the strips
 * @property {number} right right edge of the strips
 * @property {boolean} overview true if the strip of the whole project stands on top
 * @property {number} rulerTop
 * @property {number} firstLevel first level that is shown, root = 1
 * @property {number[]} tops top of each strip that is shown
 * @property {number[]} heights
 * @property {number} bottom lower edge of the last strip
 */

/**
 * Heights of the strips of `levels` levels. Below the twelfth of the last strips deeper levels do not fit; then the
 * strips that are shown begin at a lower level.
 * @param {number} levels @param {{ compact: boolean, zoomed: boolean }} room
 * @returns {number[]}
 */
export function stripHeights(levels, room) {
    if (levels > HEIGHTS.normal.length) {
        const first = HEIGHTS.normal.slice(0, DEEP.first);
        const taken = (room.compact ? OVERVIEW : 0) + (room.zoomed ? OVERVIEW : 0);
        const shared = DEEP.shared - taken - SEAM * (levels - DEEP.first - 1);
        const shown = Math.min(levels - DEEP.first, Math.floor(shared / DEEP.least));
        return [...first, ...divide(shared, shown)];
    }
    const both = room.compact && room.zoomed;
    const all = both ? HEIGHTS.compactZoomed : room.compact || room.zoomed ? HEIGHTS.compact : HEIGHTS.normal;
    return levels === 1 ? [all[0]] : [...all.slice(0, levels - 1), all[all.length - 1]];
}

/** Whole heights that sum to the total, the rest at the end. @param {number} total @param {number} parts */
function divide(total, parts) {
    const each = Math.floor(total / parts);
    const heights = new Array(parts).fill(each);
    heights[parts - 1] += total - each * parts;
    return heights;
}

/**
 * @param {object} sheet
 * @param {number} sheet.width CSS pixels
 * @param {number} sheet.levels levels of the project
 * @param {number} sheet.atLevel level of the element that fills the map, root = 1
 * @param {boolean} sheet.zoomed
 * @param {boolean} sheet.compact
 * @param {number} sheet.unit
 * @returns {Frame}
 */
export function frameOf({ width, levels, atLevel, zoomed, compact, unit }) {
    const heights = stripHeights(levels, { compact, zoomed }).map((height) => height * unit);
    const rulerTop = (zoomed ? OVERVIEW : 0) * unit;
    const tops = [];
    let y = rulerTop + RULER * unit;
    for (const height of heights) {
        tops.push(y);
        y += height + SEAM * unit;
    }
    const bottom = y - SEAM * unit;
    return {
        unit,
        width,
        height: bottom + FOOT * unit,
        left: GUTTER.left * unit,
        right: Math.max(GUTTER.left * unit + 1, width - GUTTER.right * unit),
        overview: zoomed,
        rulerTop,
        firstLevel: Math.max(1, Math.min(atLevel - 1, levels - heights.length + 1)),
        tops,
        heights,
        bottom,
    };
}

/** Level at a height of the sheet, 0 if there is none. @param {Frame} frame @param {number} y */
export function levelAt(frame, y) {
    const row = frame.tops.findIndex((top, at) => top <= y && y < top + frame.heights[at] + SEAM * frame.unit);
    return row < 0 ? 0 : frame.firstLevel + row;
}

/** Top of a level's strip; of the first that is shown if it is above. @param {Frame} frame @param {number} level */
export function topOf(frame, level) {
    const row = Math.max(0, Math.min(level - frame.firstLevel, frame.tops.length - 1));
    return frame.tops[row];
}

/** Place of a fraction of the whole on the sheet. @param {Frame} frame @param {Window} view @param {number} fraction */
export function xOf(frame, view, fraction) {
    return frame.left + ((fraction - view.from) / (view.to - view.from)) * (frame.right - frame.left);
}

/** Fraction of the whole at a place on the sheet, the inverse of `xOf`. @param {Frame} frame @param {Window} view @param {number} x */
export function fractionAt(frame, view, x) {
    return view.from + ((x - frame.left) / (frame.right - frame.left)) * (view.to - view.from);
}

/**
 * Steps of the ruler: 1, 2 or 5 times a power of ten per cent, labels at least `apart` pixels from each other.
 * @param {Window} view @param {number} width pixels of the window @param {number} apart
 * @returns {{ step: number, minor: number, decimals: number }} steps in per cent
 */
export function rulerSteps(view, width, apart) {
    const least = ((view.to - view.from) * 100 * apart) / width;
    const power = Math.floor(Math.log10(least));
    const factor = [1, 2, 5, 10].find((candidate) => candidate * 10 ** power >= least * (1 - 1e-9)) ?? 10;
    const step = factor * 10 ** power;
    const parts = factor === 2 ? 4 : 5;
    return { step, minor: step / parts, decimals: Math.max(0, -Math.floor(Math.log10(step) + 1e-9)) };
}
