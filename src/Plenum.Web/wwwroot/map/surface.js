// Two canvases, one over the other: the sheet, and the marks that follow keys and pointer.

/** @typedef {{ canvas: HTMLCanvasElement, pen: CanvasRenderingContext2D }} Layer */

/** @param {HTMLElement} root @returns {{ sheet: Layer, marks: Layer }} */
export function makeSurface(root) {
    root.style.position = 'relative';
    const sheet = makeLayer();
    sheet.canvas.style.display = 'block';
    const marks = makeLayer();
    Object.assign(marks.canvas.style, { position: 'absolute', left: '0', top: '0', pointerEvents: 'none' });
    root.append(sheet.canvas, marks.canvas);
    return { sheet, marks };
}

/** @returns {Layer} */
function makeLayer() {
    const canvas = document.createElement('canvas');
    canvas.setAttribute('aria-hidden', 'true');
    const pen = canvas.getContext('2d');
    if (pen === null) {
        throw new Error('no drawing surface for the map');
    }
    return { canvas, pen };
}

/**
 * Gives a layer its size and its scale. What was drawn on it is gone only if the size changes.
 * @param {Layer} layer @param {{ width: number, height: number }} size CSS pixels
 * @param {number} scale device pixels per CSS pixel @param {boolean} onPaper true: as wide as the page
 */
export function fitLayer({ canvas, pen }, { width, height }, scale, onPaper) {
    const [across, down] = [Math.round(width * scale), Math.round(height * scale)];
    if (canvas.width !== across || canvas.height !== down) {
        canvas.width = across;
        canvas.height = down;
    }
    canvas.style.width = onPaper ? '100%' : `${width}px`;
    canvas.style.height = onPaper ? 'auto' : `${height}px`;
    pen.setTransform(scale, 0, 0, scale, 0, 0);
}
