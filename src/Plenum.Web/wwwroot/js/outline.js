// The outline under the keys: left closes a branch or goes to the parent, right opens it or goes to its first part.

import { keepOneStop } from './roving.js';
import { lettersAct } from './keys.js';
import { copyText, focusRow } from './tables.js';
import { keepPasted } from './paste.js';

// characters of a message to the page; it takes 32 768 bytes
const LONGEST_MESSAGE = 8000;

const ACTS = new Map([
    ['Enter', 'sister'],
    ['Shift Enter', 'below'],
    ['F2', 'rename'],
    ['Alt ArrowUp', 'up'],
    ['Alt ArrowDown', 'down'],
    ['Delete', 'remove'],
    ['Ctrl d', 'repeat'],
]);
const LETTERS = new Map([
    ['l', 'logic'],
    ['w', 'package'],
]);

/** @param {KeyboardEvent} event */
function actOf(event) {
    const with_ = (event.ctrlKey || event.metaKey ? 'Ctrl ' : '') + (event.altKey ? 'Alt ' : '') + (event.shiftKey ? 'Shift ' : '');
    const plain = with_ === '' && lettersAct() ? LETTERS.get(event.key.toLowerCase()) : undefined;
    return plain ?? ACTS.get(with_ + (event.key.length === 1 ? event.key.toLowerCase() : event.key));
}

/**
 * @param {HTMLElement | null} table
 * @param {any} page object of the page with the methods Act, Copy, Paste
 */
export function steerOutline(table, page) {
    if (table === null) {
        return; // the reader has gone on already
    }
    keepOneStop(table, '[data-rowlink]');
    /** @param {EventTarget | null} target */
    const positionOf = (target) => {
        const row = target instanceof Element ? target.closest('tr[data-position]') : null;
        return row instanceof HTMLElement ? Number(row.dataset.position) : -1;
    };
    let follows = 0;
    table.addEventListener('focusin', (event) => {
        // the sheet follows the row once the keys rest
        const position = positionOf(event.target);
        const mine = ++follows;
        if (position >= 0 && event.target instanceof Element && event.target.matches('[data-rowlink]')) {
            setTimeout(() => {
                if (mine === follows && document.activeElement === event.target) {
                    void page.invokeMethodAsync('Act', 'follow', position);
                }
            }, 180);
        }
    });
    table.addEventListener('keydown', (event) => {
        const position = positionOf(event.target);
        const act = event.target instanceof Element && event.target.matches('[data-rowlink]') ? actOf(event) : undefined;
        if (position >= 0 && act !== undefined) {
            event.preventDefault();
            event.stopPropagation();
            void page.invokeMethodAsync('Act', act, position);
        }
    });
    table.addEventListener('copy', async (event) => {
        const position = positionOf(document.activeElement);
        if (position >= 0 && (document.getSelection()?.isCollapsed ?? true)) {
            event.preventDefault();
            await copyText(await page.invokeMethodAsync('Copy', position));
        }
    });
    document.addEventListener('paste', (event) => {
        const position = table.contains(document.activeElement) ? positionOf(document.activeElement) : -1;
        const text = event.clipboardData?.getData('text/plain') ?? '';
        if (position >= 0 && text !== '') {
            event.preventDefault();
            keepPasted(text);
            // a message has a bound; a longer list is fetched in pieces
            void page.invokeMethodAsync('Paste', position, text.slice(0, LONGEST_MESSAGE));
        }
    });
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
 * @param {HTMLElement | null} box @param {number} number
 */
export async function showLine(box, number) {
    if (box === null) {
        return; // the reader has gone on already
    }
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

/**
 * Scrolls a row into view and gives it the focus, once the row that stands there is that of the element.
 * @param {HTMLElement | null} box @param {number} number @param {number} id
 */
export async function focusLine(box, number, id) {
    if (box === null) {
        return; // the reader has gone on already
    }
    await showLine(box, number);
    for (let wait = 0; wait < 40; wait++) {
        const link = box.querySelector(`[data-id="${id}"] [data-rowlink]`);
        if (link instanceof HTMLElement) {
            link.focus({ preventScroll: true });
            return;
        }
        await new Promise((resolve) => setTimeout(resolve, 25));
    }
}
