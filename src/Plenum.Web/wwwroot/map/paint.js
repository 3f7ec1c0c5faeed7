// Draws the sheet: blocks, labels, gaps, outlines of control accounts, ruler, gutters and the overview.

import { drawBlocks, edgeOf, rasterBox } from './blocks.js';
import { hasChildren } from './data.js';
import { rulerSteps, topOf, xOf } from './frame.js';
import { drawGlyph } from './glyphs.js';
import { fitLabel, PAD } from './labels.js';
import { drawGapBox } from './patterns.js';
import { LEAST_GAP } from './scene.js';
import { countText, shareText, tickText } from './words.js';

/** @typedef {import('./blocks.js').Single} Single */
/** @typedef {import('./layout.js').Gap} Gap */
/** @typedef {import('./scene.js').Scene} Scene */

/** Outlines of control accounts: most that are drawn together; widths of the line, and where it gets thin. */
const OUTLINE = Object.freeze({ most: 400, line: 1.4, thin: 0.7, thinBelow: 9 });

const GLYPH = 12;

/**
 * Draws everything that does not follow the pointer.
 * @param {CanvasRenderingContext2D} pen in CSS pixels @param {Scene} scene
 * @returns {number} number of elements in view
 */
export function paintSheet(pen, scene) {
    const { frame, style } = scene;
    pen.fillStyle = style.tokens.css('sheet');
    pen.fillRect(0, 0, frame.width, frame.height);
    const box = rasterBox(scene);
    const image = pen.createImageData(box.width, box.height);
    const raster = { width: box.width, height: box.height, pixels: new Uint32Array(image.data.buffer) };
    const { singles, blocks } = drawBlocks(scene, raster);
    pen.putImageData(image, box.x, box.y);
    paintLabels(pen, scene, singles);
    paintOutlines(pen, scene);
    paintGaps(pen, scene);
    paintRuler(pen, scene);
    paintGutters(pen, scene);
    if (frame.overview) {
        paintOverview(pen, scene);
    }
    return blocks;
}

/** Narrowest block that a label or a sign is tried on, pixels of the design. */
const LEAST_LABELLED = 14;

/** @param {CanvasRenderingContext2D} pen @param {Scene} scene @param {Single[]} singles */
function paintLabels(pen, scene, singles) {
    const { layout, style } = scene;
    const { project } = layout;
    pen.textAlign = 'left';
    pen.textBaseline = 'middle';
    for (const single of singles) {
        const width = (single.right - single.left) / style.unit;
        if (width < LEAST_LABELLED) {
            continue;
        }
        const { item } = single;
        const level = project.level[item];
        const glyph = glyphOf(scene, item);
        const glyphRoom = glyph !== null && width >= 5 * GLYPH ? GLYPH + PAD.before : 0;
        const font = level <= 2 ? style.font(12, 600, true) : style.font(level === 3 ? 12 : 11.5, 400, true);
        const above = project.parent[item];
        const text = fitLabel(
            {
                name: project.names.at(item),
                code: project.codes.at(item),
                parentCode: above < 0 ? '' : project.codes.at(above),
                level,
                width: width - glyphRoom,
            },
            (candidate) => style.measure(font, candidate) / style.unit,
        );
        if (text !== '') {
            paintLabel(pen, scene, single, text, font);
        }
        if (glyph !== null && glyphRoom > 0) {
            const size = GLYPH * style.unit;
            const y = scene.frame.tops[single.row] + (scene.frame.heights[single.row] - size) / 2;
            const x = single.right - size - PAD.before * style.unit;
            drawGlyph(pen, glyph, x, y, size, style.tokens.css('ink2'));
        }
    }
}

/** @param {CanvasRenderingContext2D} pen @param {Scene} scene @param {Single} single @param {string} text @param {string} font */
function paintLabel(pen, scene, single, text, font) {
    const { style, frame } = scene;
    const { base, colour, isPatched } = groundOf(scene, single.item);
    const unit = style.unit;
    const x = single.left + PAD.before * unit;
    const middle = frame.tops[single.row] + frame.heights[single.row] / 2;
    if (isPatched) {
        const width = Math.min(style.measure(font, text) + 2 * PAD.after * unit, single.right - x + PAD.after * unit);
        pen.fillStyle = base;
        pen.fillRect(Math.round(x - PAD.after * unit), Math.round(middle - 8 * unit), Math.round(width), 16 * unit);
    }
    pen.font = font;
    pen.fillStyle = colour;
    pen.fillText(text, x, middle + unit / 2);
}

/** What a label stands on: a pattern, or a mix of colours, needs a plain patch. @param {Scene} scene @param {number} item */
function groundOf({ shown, style }, item) {
    const { shares, classes, classOf } = shown.weights;
    if (shares === null) {
        const fill = style.fills[classOf[item]];
        return { base: fill.base, colour: fill.text, isPatched: !fill.plain };
    }
    const present = style.fills.filter((_, c) => shares[item * classes + c] > 0);
    return present.length === 1
        ? { base: present[0].base, colour: present[0].text, isPatched: !present[0].plain }
        : { base: style.tokens.css('sheet'), colour: style.tokens.css('ink'), isPatched: true };
}

/** The sign of the split logic is drawn on the first two levels. @param {Scene} scene @param {number} item */
function glyphOf({ layout, shown }, item) {
    const { project } = layout;
    const lensClass = shown.lens.classes[shown.weights.classOf[item]];
    const isUpper = project.level[item] <= 2 && hasChildren(project, item) && shown.weights.shares === null;
    return isUpper ? (lensClass.glyph ?? null) : null;
}

/**
 * Where a gap is drawn, at least two pixels wide and inside the strips. CSS pixels.
 * @param {Scene} scene @param {Gap} gap
 */
export function gapBox(scene, gap) {
    const { frame, style } = scene;
    const least = Math.round(LEAST_GAP * style.unit * style.scale) / style.scale;
    let left = edgeOf(scene, gap.left);
    let right = edgeOf(scene, gap.right);
    if (right - left < least) {
        left = Math.round((left + right - least) * 0.5 * style.scale) / style.scale;
        right = left + least;
    }
    return {
        left: Math.max(frame.left, Math.min(left, frame.right - least)),
        right: Math.min(frame.right, Math.max(right, frame.left + least)),
        top: topOf(frame, gap.level),
        bottom: frame.bottom,
    };
}

/** Gaps in the window. @param {Scene} scene */
export function gapsInView({ layout, view }) {
    return layout.gaps.filter((gap) => gap.right > view.from && gap.left < view.to);
}

/** A gap on a level too deep to be shown has only its tick. @param {CanvasRenderingContext2D} pen @param {Scene} scene */
function paintGaps(pen, scene) {
    const lowest = scene.frame.firstLevel + scene.frame.tops.length - 1;
    for (const gap of gapsInView(scene).filter((candidate) => candidate.level <= lowest)) {
        pen.fillStyle = scene.style.hatch;
        drawGapBox(pen, scene.style.tokens, gapBox(scene, gap));
    }
}

/** @param {CanvasRenderingContext2D} pen @param {Scene} scene */
function paintOutlines(pen, scene) {
    const { layout, view, frame, style } = scene;
    const inWindow = layout.outlines.filter((outline) => outline.right > view.from && outline.left < view.to);
    if (inWindow.length > OUTLINE.most || scene.shown.lens.outlines === false) {
        return;
    }
    pen.strokeStyle = style.tokens.css('ink');
    pen.save();
    pen.beginPath();
    pen.rect(frame.left - 1, 0, frame.right - frame.left + 2, frame.height);
    pen.clip();
    // Lines run on the seams, so that they are sharp and neighbours share one.
    const seam = 0.5 / style.scale;
    for (const outline of inWindow) {
        const left = Math.max(frame.left, edgeOf(scene, outline.left)) - seam;
        const right = Math.min(frame.right, edgeOf(scene, outline.right)) - seam;
        const top = topOf(frame, outline.level) - seam;
        pen.lineWidth = right - left < OUTLINE.thinBelow ? OUTLINE.thin : OUTLINE.line;
        pen.strokeRect(left, top, right - left, frame.bottom - seam - top);
    }
    pen.restore();
}

/** @param {CanvasRenderingContext2D} pen @param {Scene} scene */
function paintRuler(pen, scene) {
    const { frame, view, style } = scene;
    const unit = style.unit;
    const bottom = frame.rulerTop + 18.5 * unit;
    const apart = 72 * unit;
    const { step, minor, decimals } = rulerSteps(view, frame.right - frame.left, apart);
    pen.strokeStyle = style.tokens.css('edge');
    pen.fillStyle = style.tokens.css('ink3');
    pen.font = style.font(10.5, 400);
    pen.textBaseline = 'middle';
    pen.lineWidth = 1;
    pen.beginPath();
    const first = Math.ceil((view.from * 100) / minor - 1e-6);
    const last = Math.floor((view.to * 100) / minor + 1e-6);
    for (let tick = first; tick <= last; tick++) {
        const percent = tick * minor;
        const isMajor = Math.abs(percent / step - Math.round(percent / step)) < 1e-6;
        const x = Math.min(frame.right - 1, Math.floor(xOf(frame, view, percent / 100))) + 0.5;
        pen.moveTo(x, bottom - (isMajor ? 4.5 : 3) * unit);
        pen.lineTo(x, bottom);
        if (isMajor) {
            paintTickText(pen, scene, tickText(percent, decimals), x);
        }
    }
    pen.stroke();
}

/** Centred on its tick, inside the strips' edges. @param {CanvasRenderingContext2D} pen @param {Scene} scene @param {string} text @param {number} x */
function paintTickText(pen, { frame, style }, text, x) {
    const width = style.measure(pen.font, text);
    pen.textAlign = 'left';
    const left = Math.max(frame.left, Math.min(frame.right - width, x - width / 2));
    pen.fillText(text, left, frame.rulerTop + 8 * style.unit);
}

/** @param {CanvasRenderingContext2D} pen @param {Scene} scene */
function paintGutters(pen, { layout, frame, style }) {
    const unit = style.unit;
    const { project, coverage } = layout;
    pen.textBaseline = 'middle';
    frame.tops.forEach((top, row) => {
        const at = frame.firstLevel - 1 + row;
        const middle = top + frame.heights[row] / 2 + unit / 2;
        const count = countText(project.levelCounts[at]);
        pen.font = style.font(12, 400);
        pen.textAlign = 'right';
        pen.fillStyle = style.tokens.css('ink3');
        pen.fillText(count, frame.left - 9 * unit, middle);
        pen.textAlign = 'left';
        pen.fillStyle = style.tokens.css('ink2');
        const room = frame.left - 9 * unit - style.measure(pen.font, count) - 4 * unit - 14 * unit;
        pen.fillText(project.levelNames[at], 14 * unit, middle, room);
        const isWhole = coverage[at] >= 1 - 1e-9;
        pen.font = style.font(12, isWhole ? 400 : 600);
        pen.fillStyle = style.tokens.css(isWhole ? 'ink3' : 'ink');
        // the gutter is narrow
        pen.fillText(shareText(isWhole ? 1 : coverage[at]).replace('under ', '<'), frame.right + 10 * unit, middle);
    });
}

/** The whole project above a part of it: its second level, and where the window lies. @param {CanvasRenderingContext2D} pen @param {Scene} scene */
function paintOverview(pen, { layout, frame, view, style }) {
    const unit = style.unit;
    const [top, height] = [0, 8 * unit];
    const width = frame.right - frame.left;
    const strip = layout.strips[Math.min(1, layout.strips.length - 1)];
    pen.fillStyle = style.tokens.css('neu');
    pen.fillRect(frame.left, top, width, height);
    pen.fillStyle = style.tokens.css('sheet');
    for (const element of strip) {
        pen.fillRect(Math.round(frame.left + layout.positions.right[element] * width) - 1, top, 1, height);
    }
    const left = frame.left + view.from * width;
    const right = Math.max(left + 3 * unit, frame.left + view.to * width);
    pen.fillStyle = style.tokens.css('selw');
    pen.strokeStyle = style.tokens.css('sel');
    pen.lineWidth = 1;
    pen.beginPath();
    pen.moveTo(frame.left, frame.rulerTop);
    pen.lineTo(left, top + height);
    pen.lineTo(right, top + height);
    pen.lineTo(frame.right, frame.rulerTop);
    pen.fill();
    pen.stroke();
    pen.lineWidth = 2 * unit;
    pen.strokeRect(left, top + unit, right - left, height - 2 * unit);
    pen.font = style.font(12, 400);
    pen.fillStyle = style.tokens.css('ink2');
    pen.textAlign = 'left';
    pen.textBaseline = 'middle';
    pen.fillText('Whole project', 14 * unit, top + height / 2 + unit);
}
