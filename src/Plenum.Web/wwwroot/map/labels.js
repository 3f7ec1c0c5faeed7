// Which words fit a block: the name, else the code, else nothing.

/** Narrowest block on the first three levels that gets a cut name, CSS pixels. */
export const LEAST_CUT = 44;

/** Space before and after a label, CSS pixels. */
export const PAD = Object.freeze({ before: 5, after: 3 });

/** Levels, counted from the root, on which a name may be cut and a code is given whole. */
const UPPER_LEVELS = 3;

/** Fewest letters that are left of a cut name. */
const LEAST_LETTERS = 3;

/**
 * @typedef {object} Block
 * @property {string} name
 * @property {string} code
 * @property {string} parentCode empty for the root
 * @property {number} level root = 1
 * @property {number} width room for the label with its padding, pixels of the design
 */

/**
 * The label of a block, empty if none fits. Below the third level a code is given as what it adds to its parent's.
 * @param {Block} block @param {(text: string) => number} measure width of a text, pixels of the design
 */
export function fitLabel(block, measure) {
    const room = block.width - PAD.before - PAD.after;
    if (room <= 0) {
        return '';
    }
    if (block.name !== '' && measure(block.name) <= room) {
        return block.name;
    }
    if (block.level <= UPPER_LEVELS && block.width >= LEAST_CUT) {
        const cut = cutToFit(block.name, room, measure);
        if (cut !== '') {
            return cut;
        }
    }
    const code = block.level <= UPPER_LEVELS ? block.code : ownPart(block.code, block.parentCode);
    return code !== '' && measure(code) <= room ? code : '';
}

/**
 * The longest beginning of a text that fits with "…", empty if fewer than three letters would be left.
 * @param {string} text @param {number} room @param {(text: string) => number} measure
 */
export function cutToFit(text, room, measure) {
    const letters = [...text];
    let low = 0;
    let high = letters.length - 1;
    while (low < high) {
        const middle = (low + high + 1) >> 1;
        if (measure(cutAt(letters, middle)) <= room) {
            low = middle;
        } else {
            high = middle - 1;
        }
    }
    return low >= LEAST_LETTERS && measure(cutAt(letters, low)) <= room ? cutAt(letters, low) : '';
}

/** @param {string[]} letters @param {number} length */
function cutAt(letters, length) {
    return `${letters.slice(0, length).join('').trimEnd()}…`;
}

/** What a code adds to its parent's, with the separator: ".2" for 03.1.2 below 03.1. @param {string} code @param {string} parentCode */
export function ownPart(code, parentCode) {
    return parentCode !== '' && code.length > parentCode.length && code.startsWith(parentCode)
        ? code.slice(parentCode.length)
        : code;
}

/** Widths kept before they are forgotten. */
const KEPT = 20_000;

/**
 * Measures texts in a font and remembers the widths.
 * @param {CanvasRenderingContext2D} context
 * @returns {(font: string, text: string) => number} CSS pixels
 */
export function makeMeasure(context) {
    /** @type {Map<string, number>} */
    const widths = new Map();
    return (font, text) => {
        const key = `${font}\n${text}`;
        let width = widths.get(key);
        if (width === undefined) {
            if (widths.size >= KEPT) {
                widths.clear();
            }
            context.font = font;
            width = context.measureText(text).width;
            widths.set(key, width);
        }
        return width;
    };
}
