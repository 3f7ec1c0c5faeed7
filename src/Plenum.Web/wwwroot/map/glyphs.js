// The signs of the split logics, on a grid of 12, drawn with a stroke of 1.2.

/** @typedef {'phase' | 'part' | 'function' | 'place' | 'discipline' | 'organisation' | 'contract'} Glyph */

/** @type {Record<Glyph, (pen: CanvasRenderingContext2D) => void>} */
const SIGNS = {
    phase: (pen) => line(pen, [0.5, 10.5, 3.5, 10.5, 3.5, 7, 7, 7, 7, 3.5, 10.5, 3.5, 10.5, 1]),
    part: (pen) => {
        pen.rect(1, 5, 6, 6);
        pen.rect(8.5, 0.8, 2.7, 2.7);
        line(pen, [7, 5, 8.5, 3.5]);
    },
    function: (pen) => {
        pen.arc(6, 6, 3, 0, 2 * Math.PI);
        line(pen, [0, 6, 3, 6]);
        line(pen, [9, 6, 12, 6]);
    },
    place: (pen) => {
        pen.rect(3.5, 3.5, 5, 5);
        line(pen, [6, 0.5, 6, 3.5]);
        line(pen, [6, 8.5, 6, 11.5]);
        line(pen, [0.5, 6, 3.5, 6]);
        line(pen, [8.5, 6, 11.5, 6]);
    },
    discipline: (pen) => line(pen, [1.5, 1, 1.5, 10.5, 11, 10.5, 1.5, 1]),
    organisation: (pen) => {
        pen.rect(4, 0.8, 4, 3);
        pen.rect(0.8, 8, 3.6, 3);
        pen.rect(7.6, 8, 3.6, 3);
        line(pen, [6, 3.8, 6, 6, 2.6, 6, 2.6, 8]);
        line(pen, [6, 6, 9.4, 6, 9.4, 8]);
    },
    contract: (pen) => {
        pen.rect(1.5, 0.8, 9, 10.4);
        line(pen, [4, 3.5, 8, 3.5]);
        line(pen, [3.8, 8.5, 5.2, 7, 6.5, 8.8, 8.2, 7.2]);
    },
};

/** @param {CanvasRenderingContext2D} pen @param {number[]} points x and y in turn */
function line(pen, points) {
    pen.moveTo(points[0], points[1]);
    for (let at = 2; at < points.length; at += 2) {
        pen.lineTo(points[at], points[at + 1]);
    }
}

/**
 * @param {CanvasRenderingContext2D} pen @param {Glyph} glyph
 * @param {number} x left @param {number} y top @param {number} size side of the grid, CSS pixels @param {string} colour
 */
export function drawGlyph(pen, glyph, x, y, size, colour) {
    pen.save();
    pen.translate(x, y);
    pen.scale(size / 12, size / 12);
    pen.strokeStyle = colour;
    pen.lineWidth = 1.2;
    pen.beginPath();
    SIGNS[glyph](pen);
    pen.stroke();
    pen.restore();
}
