// What one drawing of the map is made from.

import { presum, weightsOf } from './density.js';
import { fractionAt, levelAt } from './frame.js';
import { makeMeasure } from './labels.js';
import { hit } from './layout.js';
import { makeFill, makeHatch } from './patterns.js';

/** @typedef {import('./data.js').LensData} LensData */
/** @typedef {import('./density.js').Weights} Weights */
/** @typedef {import('./frame.js').Frame} Frame */
/** @typedef {import('./layout.js').Layout} Layout */
/** @typedef {import('./layout.js').Window} Window */
/** @typedef {import('./patterns.js').Fill} Fill */
/** @typedef {import('./patterns.js').LensClass} LensClass */
/** @typedef {import('./tokens.js').Tokens} Tokens */

/**
 * What the colours mean, from the page.
 * @typedef {object} Lens
 * @property {string} name for the tree and the tooltip, such as "cost variance"
 * @property {LensClass[]} classes in legend order, favourable first; as many as the lens document has
 * @property {boolean} [findings] true where the audit's findings are marked
 * @property {boolean} [outlines] false where control accounts are not outlined
 */

/**
 * A lens on a layout, summed.
 * @typedef {object} Shown
 * @property {Lens} lens
 * @property {LensData} data
 * @property {Weights} weights
 * @property {Float64Array} presummed
 */

/**
 * Colours, fills and fonts at one scale.
 * @typedef {object} Style
 * @property {Tokens} tokens
 * @property {number} scale device pixels per CSS pixel
 * @property {number} unit CSS pixels per pixel of the design
 * @property {Fill[]} fills of the classes
 * @property {Fill} finding
 * @property {CanvasPattern} hatch
 * @property {(size: number, weight: number, narrow?: boolean) => string} font
 * @property {(font: string, text: string) => number} measure
 */

/**
 * @typedef {object} Scene
 * @property {Layout} layout
 * @property {Shown} shown
 * @property {Style} style
 * @property {Frame} frame
 * @property {Window} view
 */

/** What the map shows until it has a lens: one class for all. @param {import('./data.js').Project} project */
export function noLens(project) {
    /** @type {Lens} */
    const lens = { name: '', classes: [{ word: '', fill: 'neu' }] };
    /** @type {LensData} */
    const data = {
        revision: project.revision,
        count: project.count,
        classCount: 1,
        mix: false,
        classOf: new Uint8Array(project.count),
        shares: null,
    };
    return { lens, data };
}

/** Narrowest that a gap is drawn and hit, CSS pixels. */
export const LEAST_GAP = 2;

/**
 * The element at a place of the sheet, −1 if there is none; for a gap its owner.
 * @param {Scene} scene @param {number} x CSS pixels @param {number} y
 */
export function elementAt({ frame, view, layout }, x, y) {
    const level = x < frame.left || x >= frame.right ? 0 : levelAt(frame, y);
    if (level === 0) {
        return -1;
    }
    const least = (LEAST_GAP * (view.to - view.from)) / (frame.right - frame.left);
    return hit(layout, level, fractionAt(frame, view, x), least).element;
}

/** @param {Layout} layout @param {Lens} lens @param {LensData} data @returns {Shown} */
export function showLens(layout, lens, data) {
    const weights = weightsOf(layout, data);
    return { lens, data, weights, presummed: presum(layout.strips[layout.strips.length - 1], layout.positions, weights) };
}

/**
 * @param {CanvasRenderingContext2D} context @param {Tokens} tokens @param {Lens} lens
 * @param {{ scale: number, unit: number, family: string }} look
 * @returns {Style}
 */
export function makeStyle(context, tokens, lens, { scale, unit, family }) {
    const fine = scale * unit;
    return {
        tokens,
        scale,
        unit,
        fills: lens.classes.map((lensClass) => makeFill(lensClass, tokens, fine)),
        finding: makeFill({ word: '', fill: 'unf2' }, tokens, fine),
        hatch: makeHatch(context, tokens, scale),
        font: (size, weight, narrow = false) =>
            `${weight} ${narrow ? 'semi-condensed ' : ''}${size * unit}px ${family}`,
        measure: makeMeasure(context),
    };
}
