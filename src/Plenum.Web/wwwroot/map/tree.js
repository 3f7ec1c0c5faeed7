// The map for screen readers: a tree in which only the branches on the way to the focus are open.

import { hasChildren } from './data.js';
import { lensText, missingText, pathOf, shareOfWhole, shareText, titleOf } from './words.js';

/** @typedef {import('./layout.js').Layout} Layout */
/** @typedef {import('./scene.js').Shown} Shown */

/** Sisters that are present on either side of the one that is open or in focus. */
export const SISTERS = 60;

/**
 * One line of the tree.
 * @typedef {object} Row
 * @property {number} element
 * @property {number} level root = 1
 * @property {number} place among its sisters, from 1
 * @property {number} sisters number of them, itself included
 * @property {boolean | null} open null if there is nothing to open
 */

/**
 * The rows that are present: the way from the root to the focus, the sisters at each step of it, and the children of
 * the focus are left closed. Far sisters are left out; `place` and `sisters` still count them.
 * @param {Layout['project']} project @param {number} focus @returns {Row[]}
 */
export function rowsOf(project, focus) {
    const way = [...pathOf(project, focus), focus];
    /** @type {Row[]} */
    const before = [row(project, 0, 1, 1, way.length > 1)];
    /** @type {Row[]} */
    const after = [];
    for (let step = 1; step < way.length; step++) {
        const children = childrenOf(project, way[step - 1]);
        const at = children.indexOf(way[step]);
        const isOpen = step < way.length - 1;
        for (let i = Math.max(0, at - SISTERS); i <= at; i++) {
            before.push(row(project, children[i], i + 1, children.length, i === at && isOpen));
        }
        const following = [];
        for (let i = at + 1; i <= Math.min(children.length - 1, at + SISTERS); i++) {
            following.push(row(project, children[i], i + 1, children.length, false));
        }
        after.unshift(...following);
    }
    return [...before, ...after];
}

/** @param {Layout['project']} project @param {number} element @param {number} place @param {number} sisters @param {boolean} open @returns {Row} */
function row(project, element, place, sisters, open) {
    const level = project.level[element];
    return { element, level, place, sisters, open: hasChildren(project, element) ? open : null };
}

/** @param {Layout['project']} project @param {number} element */
function childrenOf(project, element) {
    /** @type {number[]} */
    const children = [];
    for (let i = element + 1; i < project.end[element]; i = project.end[i]) {
        children.push(i);
    }
    return children;
}

/** Name, share and lens value, and what is missing. @param {Layout} layout @param {Shown} shown @param {number} element */
export function spokenText(layout, shown, element) {
    return [
        titleOf(layout.project, element),
        `${shareText(shareOfWhole(layout, element))} of the project`,
        lensText(shown, element),
        missingText(layout, element),
    ]
        .filter((text) => text !== '')
        .join(', ');
}

let maps = 0;

/**
 * The tree beside the canvas. It takes the keyboard focus for the map and lies over the strips, so that its focus
 * ring is the map's; the ring shows when the keys led here, not the pointer.
 * @param {(element: number) => void} pick called when a reader activates an item
 * @param {string} prefix of the custom properties
 */
export function makeTree(pick, prefix) {
    const id = `plenum-map-${++maps}`;
    const root = document.createElement('div');
    root.setAttribute('role', 'tree');
    root.setAttribute('aria-label', 'Map of the project');
    root.tabIndex = 0;
    Object.assign(root.style, { position: 'absolute', outline: 'none', outlineOffset: '2px' });
    root.addEventListener('focus', () => {
        root.style.outline = root.matches(':focus-visible') ? `2px solid var(${prefix}sel, #2F43C4)` : 'none';
    });
    root.addEventListener('blur', () => {
        root.style.outline = 'none';
    });
    const items = document.createElement('div');
    items.setAttribute('role', 'none');
    Object.assign(items.style, {
        position: 'absolute',
        width: '1px',
        height: '1px',
        overflow: 'hidden',
        clipPath: 'inset(50%)',
        whiteSpace: 'nowrap',
    });
    root.append(items);
    return {
        root,
        /** @param {import('./frame.js').Frame} frame @param {boolean} onPaper true: without a ring */
        place(frame, onPaper) {
            root.style.opacity = onPaper ? '0' : '1';
            root.style.left = `${frame.left}px`;
            root.style.top = `${frame.tops[0]}px`;
            root.style.width = `${frame.right - frame.left}px`;
            root.style.height = `${frame.bottom - frame.tops[0]}px`;
        },
        /** @param {Layout} layout @param {Shown} shown @param {number} focus −1 if none: then the root is offered */
        update(layout, shown, focus) {
            const current = Math.max(0, focus);
            const present = rowsOf(layout.project, current).map((line) => {
                const item = document.createElement('div');
                item.id = `${id}-${line.element}`;
                item.setAttribute('role', 'treeitem');
                item.setAttribute('aria-level', String(line.level));
                item.setAttribute('aria-posinset', String(line.place));
                item.setAttribute('aria-setsize', String(line.sisters));
                item.setAttribute('aria-selected', String(line.element === focus));
                if (line.open !== null) {
                    item.setAttribute('aria-expanded', String(line.open));
                }
                item.textContent = spokenText(layout, shown, line.element);
                item.addEventListener('click', (event) => {
                    event.stopPropagation();
                    pick(line.element);
                });
                return item;
            });
            items.replaceChildren(...present);
            root.setAttribute('aria-activedescendant', `${id}-${current}`);
        },
    };
}
