// What follows keys and pointer, on a surface of its own above the sheet: focus, hover, the ticks of the gaps.

import { edgeOf } from './blocks.js';
import { topOf } from './frame.js';
import { gapBox, gapsInView } from './paint.js';

/** @typedef {import('./scene.js').Scene} Scene */

/** Lines of the focus, CSS pixels. */
const FOCUS_LINE = 2.25;
const HOVER_LINE = 1.5;

/** The tick of a gap below the strips, CSS pixels. */
const TICK = Object.freeze({ width: 7, height: 5.5, below: 2 });

/**
 * @typedef {object} Marks
 * @property {number} focus element in focus, −1 if none
 * @property {number} hover element under the pointer, −1 if none
 * @property {{ left: number, right: number } | null} workArea where the focused element's detail stands below the map,
 *   CSS pixels of the sheet; null: the whole width
 * @property {boolean} onSheet true if they are drawn on the sheet itself
 */

/** @param {CanvasRenderingContext2D} pen in CSS pixels @param {Scene} scene @param {Marks} marks */
export function paintMarks(pen, scene, marks) {
    const { frame, style } = scene;
    if (!marks.onSheet) {
        pen.clearRect(0, 0, frame.width, frame.height);
    }
    const box = marks.focus < 0 ? null : elementBox(scene, marks.focus);
    const foot = frame.height - 0.5;
    pen.strokeStyle = style.tokens.css(marks.focus < 0 ? 'ink' : 'hair');
    strokeLine(pen, 1, 0, foot, frame.width, foot);
    if (box !== null) {
        paintOpening(pen, scene, box, marks.workArea ?? { left: 0, right: frame.width });
    }
    paintTicks(pen, scene);
    if (marks.hover >= 0 && marks.hover !== marks.focus) {
        const hover = elementBox(scene, marks.hover);
        if (hover !== null) {
            pen.strokeStyle = style.tokens.css('ink');
            strokeBox(pen, hover, HOVER_LINE);
        }
    }
    if (box !== null) {
        pen.strokeStyle = style.tokens.faint('sheet', 0.75);
        strokeBox(pen, box, FOCUS_LINE + 2);
        pen.strokeStyle = style.tokens.css('sel');
        strokeBox(pen, box, FOCUS_LINE);
    }
}

/**
 * The element's place on the sheet, from its level down to the last strip; null if it is out of the window.
 * @param {Scene} scene @param {number} element
 */
export function elementBox(scene, element) {
    const { layout, view, frame } = scene;
    const { left, right } = layout.positions;
    const isOut = right[element] < view.from || left[element] > view.to;
    if (isOut) {
        return null;
    }
    const x0 = Math.max(frame.left, edgeOf(scene, left[element]));
    const x1 = Math.min(frame.right, edgeOf(scene, right[element]));
    const spread = Math.max(0, 2 - (x1 - x0)) / 2;
    const top = topOf(frame, layout.project.level[element]);
    return { left: x0 - spread, right: x1 + spread, top, bottom: frame.bottom };
}

/**
 * Two lines from the element to its detail below.
 * @param {CanvasRenderingContext2D} pen @param {Scene} scene @param {import('./patterns.js').Box} box
 * @param {{ left: number, right: number }} area
 */
function paintOpening(pen, { frame, style }, box, area) {
    const foot = frame.height - 1;
    pen.beginPath();
    pen.moveTo(box.left, box.bottom);
    pen.lineTo(box.right, box.bottom);
    pen.lineTo(area.right, foot);
    pen.lineTo(area.left, foot);
    pen.fillStyle = style.tokens.css('selw');
    pen.fill();
    pen.strokeStyle = style.tokens.css('sel');
    strokeLine(pen, 1, box.left, box.bottom, area.left, foot);
    strokeLine(pen, 1, box.right, box.bottom, area.right, foot);
    strokeLine(pen, 2, area.left, foot, area.right, foot);
}

/**
 * A tick at each gap, filled; at what is more than the whole, open and upside down. A tick that would fall on the one
 * before it is left to that.
 * @param {CanvasRenderingContext2D} pen @param {Scene} scene
 */
function paintTicks(pen, scene) {
    const { layout, view, style, frame } = scene;
    const { left, right } = layout.positions;
    const { width, height, below } = TICK;
    const unit = style.unit;
    const top = frame.bottom + below * unit;
    pen.fillStyle = style.tokens.css('ink');
    let before = -Infinity;
    for (const gap of gapsInView(scene)) {
        const box = gapBox(scene, gap);
        const x = (box.left + box.right) / 2;
        if (x - before >= unit) {
            pen.beginPath();
            pen.moveTo(x, top);
            pen.lineTo(x + (width / 2) * unit, top + height * unit);
            pen.lineTo(x - (width / 2) * unit, top + height * unit);
            pen.fill();
            before = x;
        }
    }
    pen.strokeStyle = style.tokens.css('ink');
    pen.lineWidth = 1.2 * unit;
    for (const element of layout.overfull) {
        if (right[element] > view.from && left[element] < view.to) {
            const box = elementBox(scene, element);
            const x = box === null ? 0 : (box.left + box.right) / 2;
            pen.beginPath();
            pen.moveTo(x - (width / 2) * unit, top + 0.5);
            pen.lineTo(x + (width / 2) * unit, top + 0.5);
            pen.lineTo(x, top + height * unit);
            pen.closePath();
            pen.stroke();
        }
    }
}

/** @param {CanvasRenderingContext2D} pen @param {number} width @param {number} x0 @param {number} y0 @param {number} x1 @param {number} y1 */
function strokeLine(pen, width, x0, y0, x1, y1) {
    pen.lineWidth = width;
    pen.beginPath();
    pen.moveTo(x0, y0);
    pen.lineTo(x1, y1);
    pen.stroke();
}

/** @param {CanvasRenderingContext2D} pen @param {import('./patterns.js').Box} box @param {number} line */
function strokeBox(pen, box, line) {
    pen.lineWidth = line;
    pen.strokeRect(box.left, box.top, box.right - box.left, box.bottom - box.top);
}
