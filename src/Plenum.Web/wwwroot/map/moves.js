// Where the keys go in the tree of elements.

import { hasChildren } from './data.js';

/** @typedef {import('./data.js').Project} Project */
/** @typedef {import('./layout.js').Layout} Layout */
/** @typedef {import('./layout.js').Window} Window */

/** @typedef {'next' | 'previous' | 'parent' | 'child' | 'first' | 'last'} Step */

/**
 * The element that a step leads to; the same element where there is none.
 * @param {Project} project @param {number} from @param {Step} step
 */
export function stepFrom(project, from, step) {
    const { parent, end } = project;
    const above = parent[from];
    if (step === 'child') {
        return hasChildren(project, from) ? from + 1 : from;
    }
    if (above < 0) {
        return from;
    }
    switch (step) {
        case 'parent':
            return above;
        case 'next':
            return end[from] < end[above] ? end[from] : from;
        case 'first':
            return above + 1;
        case 'previous':
            return lastBefore(project, above, from);
        case 'last':
            return lastBefore(project, above, end[above]);
    }
}

/** The last child of an element that stands before a position; its first if there is none. @param {Project} project @param {number} above @param {number} before */
function lastBefore(project, above, before) {
    let found = above + 1;
    for (let at = above + 1; at < before; at = project.end[at]) {
        found = at;
    }
    return found;
}

/**
 * The gap after the one last visited, else the first at or after the element; round to the first again.
 * @param {Layout} layout @param {number} element in focus, −1 if none
 * @param {number} visited position of the gap last visited, −1 if none
 * @returns {number} position in `layout.gaps`, −1 if there are none
 */
export function nextGap({ gaps, positions }, element, visited) {
    if (gaps.length === 0) {
        return -1;
    }
    if (visited >= 0 && visited < gaps.length && gaps[visited].owner === element) {
        return (visited + 1) % gaps.length;
    }
    const from = element < 0 ? 0 : positions.left[element];
    return Math.max(0, gaps.findIndex((gap) => gap.left >= from));
}

/** The window of the whole project. @type {Readonly<Window>} */
export const WHOLE = Object.freeze({ from: 0, to: 1 });

/**
 * The window that an element fills; that of the nearest ancestor with a width, if it has none.
 * @param {Layout} layout @param {number} index @returns {Window}
 */
export function windowOf(layout, index) {
    const { left, right } = layout.positions;
    let at = Math.max(0, index);
    while (at > 0 && right[at] <= left[at]) {
        at = layout.project.parent[at];
    }
    return at === 0 ? WHOLE : { from: left[at], to: right[at] };
}

/**
 * The element or its nearest ancestor that holds all of a window.
 * @param {Layout} layout @param {number} index @param {Window} view
 */
export function holderOf(layout, index, view) {
    const { left, right } = layout.positions;
    let at = index;
    while (at > 0 && (left[at] > view.from || right[at] < view.to)) {
        at = layout.project.parent[at];
    }
    return at;
}

/** @typedef {Step | 'open' | 'zoomIn' | 'zoomOut' | 'whole' | 'gap' | 'measure' | 'dismiss'} Action */

/** @type {Readonly<Record<string, Action>>} */
const KEYS = Object.freeze({
    ArrowRight: 'next',
    ArrowLeft: 'previous',
    ArrowUp: 'parent',
    ArrowDown: 'child',
    Home: 'first',
    End: 'last',
    Enter: 'open',
    Escape: 'dismiss',
    '+': 'zoomIn',
    '-': 'zoomOut',
    '−': 'zoomOut',
    0: 'whole',
});

/** @type {Readonly<Record<string, Action>>} */
const LETTERS = Object.freeze({ g: 'gap', m: 'measure' });

/**
 * What a key does on the map, null if nothing.
 * @param {{ key: string, ctrlKey: boolean, altKey: boolean, metaKey: boolean }} press
 * @param {boolean} letters false where single letters are switched off
 * @returns {Action | null}
 */
export function actionOf(press, letters) {
    if (press.ctrlKey || press.altKey || press.metaKey) {
        return null;
    }
    const letter = letters ? LETTERS[press.key.toLowerCase()] : undefined;
    return KEYS[press.key] ?? letter ?? null;
}
