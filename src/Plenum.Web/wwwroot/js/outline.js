// The outline under the keys: left closes a branch or goes to the parent, right opens it or goes to its first part.

import { keepOneStop } from './roving.js';
import { focusRow } from './tables.js';

/** @param {HTMLElement | null} table */
export function steerOutline(table) {
    if (table === null) {
        return; // the reader has gone on already
    }
    keepOneStop(table, '[data-rowlink]');
    table.addEventListener('keydown', (event) => {
        const row = event.target instanceof Element ? event.target.closest('tr[data-row]') : null;
        const isArrow = event.key === 'ArrowLeft' || event.key === 'ArrowRight';
        if (!(row instanceof HTMLElement) || !isArrow || event.ctrlKey || event.altKey || event.metaKey || event.shiftKey) {
            return;
        }
        event.preventDefault();
        const isOpen = row.getAttribute('aria-expanded');
        const turns = event.key === 'ArrowRight' ? isOpen === 'false' : isOpen === 'true';
        if (turns) {
            /** @type {HTMLElement | null} */ (row.querySelector('.twisty'))?.click();
        } else if (event.key === 'ArrowRight' && isOpen === 'true') {
            void focusRow(row, Number(row.dataset.row) + 1);
        } else if (event.key === 'ArrowLeft' && Number(row.dataset.parent) >= 0) {
            void focusRow(row, Number(row.dataset.parent));
        }
    });
}

/** @param {HTMLElement | null} list */
export function steerFindings(list) {
    if (list === null) {
        return; // the reader has gone on already
    }
    keepOneStop(list, '[data-rowlink]');
}

/**
 * Scrolls a row into view, in a box with rows of one height of which only some are drawn.
 * @param {HTMLElement} box @param {number} number
 */
export async function showLine(box, number) {
    for (let wait = 0; wait < 40; wait++) {
        const drawn = /** @type {HTMLElement | null} */ (box.querySelector('[data-row]'));
        const rows = Number(/** @type {HTMLElement | null} */ (box.querySelector('[data-rows]'))?.dataset.rows ?? 0);
        if (drawn !== null && rows > number) {
            const head = box.querySelector('thead')?.getBoundingClientRect().height ?? 0;
            const height = drawn.getBoundingClientRect().height;
            const top = number * height;
            const room = box.clientHeight - head;
            if (top < box.scrollTop || top + height > box.scrollTop + room) {
                box.scrollTop = Math.max(0, top - room / 3);
            }
            const there = box.scrollHeight - box.clientHeight;
            if (box.querySelector(`[data-row="${number}"]`) !== null || (there > 0 && box.scrollTop >= there - 1)) {
                return;
            }
        }
        await new Promise((resolve) => setTimeout(resolve, 50));
    }
}
