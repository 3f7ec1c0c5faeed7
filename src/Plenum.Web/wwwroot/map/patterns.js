// Fills: a colour, and a pattern that carries the sign. Favourable is plain, unfavourable is ruled, due or finished is
// dotted. Patterns hang on the sheet's origin, so that rules run through from one block to the next.

/** @typedef {import('./tokens.js').Tokens} Tokens */

/**
 * A class of a lens, as the page's legend has it.
 * @typedef {object} LensClass
 * @property {string} word words of the legend
 * @property {string} fill token of the colour, such as `fav2`
 * @property {'plain' | 'ruled' | 'dotted'} [pattern] plain unless said otherwise; ruled for unf1 to unf3
 * @property {string} [mark] token of the rules or dots
 * @property {number} [pitch] distance of rules or dots, CSS pixels
 * @property {import('./glyphs.js').Glyph} [glyph] split logic drawn at the right end of wide parents
 */

/**
 * A fill ready to be drawn: `tile` repeats from the origin; a plain fill is a tile of one pixel.
 * @typedef {object} Fill
 * @property {number} columns width of the tile, device pixels
 * @property {number} rows height of the tile
 * @property {Uint32Array} tile pixels as the bytes R, G, B, A
 * @property {boolean} plain
 * @property {string} base colour without the pattern
 * @property {string} text colour of a label on it
 */

/** Rules and dots where a class does not name its own. */
const RULES = new Map([
    ['unf1', { mark: 'unf2', pitch: 5 }],
    ['unf2', { mark: 'unf4', pitch: 3 }],
    ['unf3', { mark: 'unf4', pitch: 3 }],
]);
const OTHER_RULE = Object.freeze({ mark: 'ink3', pitch: 4 });
const DOTS = Object.freeze({ mark: 'ink2', pitch: 5 });

/** Pitch of the hatching of gaps, CSS pixels at right angles to the axes. */
export const HATCH = 6;

/** @param {LensClass} lensClass */
export function patternOf(lensClass) {
    const kind = lensClass.pattern ?? (RULES.has(lensClass.fill) ? 'ruled' : 'plain');
    const usual = kind === 'dotted' ? DOTS : (RULES.get(lensClass.fill) ?? OTHER_RULE);
    return { kind, mark: lensClass.mark ?? usual.mark, pitch: lensClass.pitch ?? usual.pitch };
}

/**
 * @param {LensClass} lensClass @param {Tokens} tokens
 * @param {number} scale device pixels per CSS pixel of the design
 * @returns {Fill}
 */
export function makeFill(lensClass, tokens, scale) {
    const { kind, mark, pitch } = patternOf(lensClass);
    const base = tokens.css(lensClass.fill);
    const ground = tokens.pixel(lensClass.fill);
    const text = lensClass.fill === 'none' ? tokens.css('ink3') : tokens.textOn(lensClass.fill);
    if (kind === 'plain') {
        return { columns: 1, rows: 1, tile: Uint32Array.of(ground), plain: true, base, text };
    }
    const rows = Math.max(2, Math.round(pitch * scale));
    const columns = kind === 'dotted' ? rows : 1;
    const thick = Math.max(1, Math.round(scale));
    const tile = new Uint32Array(rows * columns).fill(ground);
    for (let y = 0; y < thick; y++) {
        tile.fill(tokens.pixel(mark), y * columns, y * columns + Math.min(columns, thick));
    }
    return { columns, rows, tile, plain: false, base, text };
}

/**
 * Hatching at 45 degrees for what is missing, as a repeating tile.
 * @param {CanvasRenderingContext2D} context @param {Tokens} tokens @param {number} scale device pixels per CSS pixel
 */
export function makeHatch(context, tokens, scale) {
    const pitch = Math.max(3, Math.round(HATCH * scale));
    const tile = document.createElement('canvas');
    tile.width = pitch;
    tile.height = pitch;
    const pen = tile.getContext('2d');
    if (pen === null) {
        throw new Error('no drawing surface for the hatching');
    }
    pen.fillStyle = tokens.css('sheet');
    pen.fillRect(0, 0, pitch, pitch);
    pen.strokeStyle = tokens.css('ink');
    pen.lineWidth = scale;
    pen.beginPath();
    for (const shift of [-pitch, 0, pitch]) {
        pen.moveTo(shift - scale, pitch + scale);
        pen.lineTo(shift + pitch + scale, -scale);
    }
    pen.stroke();
    const pattern = context.createPattern(tile, 'repeat');
    if (pattern === null) {
        throw new Error('no pattern for the hatching');
    }
    pattern.setTransform(new DOMMatrix().scale(1 / scale));
    return pattern;
}

/**
 * Draws a class, or what is missing, as the legend shows it, with the same fill as the map.
 * @param {HTMLCanvasElement} canvas @param {LensClass | 'missing'} lensClass @param {Tokens} tokens
 */
export function drawSwatch(canvas, lensClass, tokens) {
    const scale = window.devicePixelRatio || 1;
    const width = Math.round(canvas.clientWidth * scale);
    const height = Math.round(canvas.clientHeight * scale);
    const context = canvas.getContext('2d');
    if (context === null || width === 0 || height === 0) {
        return;
    }
    canvas.width = width;
    canvas.height = height;
    if (lensClass === 'missing') {
        context.scale(scale, scale);
        context.fillStyle = makeHatch(context, tokens, scale);
        drawGapBox(context, tokens, { left: 0, right: width / scale, top: 0, bottom: height / scale });
        return;
    }
    const image = context.createImageData(width, height);
    const raster = { width, height, pixels: new Uint32Array(image.data.buffer) };
    fillBlock(raster, makeFill(lensClass, tokens, scale), { left: 0, right: width, top: 0, bottom: height });
    context.putImageData(image, 0, 0);
}

/** Narrowest gap that gets a frame of its own, CSS pixels. */
const LEAST_FRAMED = 5;

/**
 * One gap: hatched in the fill that is set, framed dashed 3-2 unless it is narrow.
 * @param {CanvasRenderingContext2D} context @param {Tokens} tokens @param {Box} box CSS pixels
 */
export function drawGapBox(context, tokens, box) {
    const { left, right, top, bottom } = box;
    context.fillRect(left, top, right - left, bottom - top);
    if (right - left >= LEAST_FRAMED) {
        context.strokeStyle = tokens.css('ink');
        context.lineWidth = 1;
        context.setLineDash([3, 2]);
        context.strokeRect(left + 0.5, top + 0.5, right - left - 1, bottom - top - 1);
        context.setLineDash([]);
    }
}

/** @typedef {{ width: number, height: number, pixels: Uint32Array }} Raster */
/** Right and lower edge exclusive. @typedef {{ left: number, right: number, top: number, bottom: number }} Box */

/** @param {Raster} raster @param {Fill} fill @param {Box} box inside the raster */
export function fillBlock(raster, fill, box) {
    const { left, right, top, bottom } = box;
    const { columns, rows, tile } = fill;
    for (let y = top; y < bottom; y++) {
        const row = y * raster.width;
        const tileRow = (y % rows) * columns;
        if (columns === 1) {
            raster.pixels.fill(tile[tileRow], row + left, row + right);
        } else {
            for (let x = left; x < right; x++) {
                raster.pixels[row + x] = tile[tileRow + (x % columns)];
            }
        }
    }
}

/**
 * A stack in legend order, the first class on top; heights are rounded on the running total, so that they fill the box.
 * @param {Raster} raster @param {Fill[]} fills @param {Box} box
 * @param {ArrayLike<number>} amounts of the classes @param {number} at position of the first in it
 */
export function fillStack(raster, fills, box, amounts, at) {
    let total = 0;
    for (let c = 0; c < fills.length; c++) {
        total += amounts[at + c];
    }
    if (!(total > 0)) {
        return;
    }
    const height = box.bottom - box.top;
    let running = 0;
    let top = box.top;
    for (let c = 0; c < fills.length; c++) {
        running += amounts[at + c];
        const bottom = box.top + Math.min(height, Math.round((running / total) * height));
        if (bottom > top) {
            fillBlock(raster, fills[c], { left: box.left, right: box.right, top, bottom });
            top = bottom;
        }
    }
}
