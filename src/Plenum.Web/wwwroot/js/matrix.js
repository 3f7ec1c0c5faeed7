// The matrix under the keys: arrows lead from crossing to crossing, also to rows that are not drawn yet; other keys do
// something at a crossing.

import { lettersAct } from './keys.js';
import { keepOneStop } from './roving.js';

const MOVES = ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown', 'Home', 'End'];
const DEEDS = ['Enter', 'Delete', 'm', 'd', 'h', 'g'];

/**
 * @param {HTMLElement | null} element
 * @param {HTMLElement} box what scrolls
 * @param {any} page object of the page with the methods Next and Act
 */
export function steerMatrix(element, box, page) {
    if (element === null) {
        return; // the reader has gone on already
    }
    const table = element;
    keepOneStop(table, '[data-account], [data-rowlink]');
    table.addEventListener('keydown', async (event) => {
        const part = event.target instanceof Element ? event.target.closest('[data-rowlink]') : null;
        if (part !== null && event.key === 'ArrowRight') {
            event.preventDefault();
            focusOn(part.closest('[data-row]')?.querySelector('[data-account]') ?? null);
            return;
        }
        const here = event.target instanceof Element ? event.target.closest('[data-account]') : null;
        if (!(here instanceof HTMLElement) || event.ctrlKey || event.altKey || event.metaKey || event.shiftKey) {
            return;
        }
        const row = /** @type {HTMLElement} */ (here.closest('[data-row]'));
        const place = [Number(row.dataset.row), Number(here.dataset.column), here.dataset.account];
        const deed = event.key.length === 1 ? event.key.toLowerCase() : event.key;
        if (DEEDS.includes(deed) && (deed.length > 1 || lettersAct())) {
            event.preventDefault();
            event.stopPropagation();
            await page.invokeMethodAsync('Act', ...place, deed);
            return;
        }
        if (!MOVES.includes(event.key)) {
            return;
        }
        event.preventDefault();
        const to = await page.invokeMethodAsync('Next', ...place, event.key);
        if (to !== null) {
            await take(to.row, to.column, to.account);
        } else if (event.key === 'ArrowLeft') {
            focusOn(row.querySelector('[data-rowlink]'));
        }
    });

    /** Gives a crossing the keys. @param {number} row @param {number} column @param {string} account */
    async function take(row, column, account) {
        await reach(row);
        focusOn(table.querySelector(`[data-row="${row}"] [data-column="${column}"][data-account="${CSS.escape(account)}"]`));
    }

    /** @param {Element | null} next */
    function focusOn(next) {
        if (next instanceof HTMLElement) {
            next.focus({ preventScroll: true });
            if (next.dataset.account !== undefined) {
                besideFirstColumn(next);
            }
        }
    }

    /** Scrolls until a row is drawn and can be seen. @param {number} number */
    async function reach(number) {
        for (let wait = 0; wait < 40; wait++) {
            const drawn = /** @type {HTMLElement | null} */ (table.querySelector('[data-row]'));
            if (drawn !== null) {
                const height = drawn.getBoundingClientRect().height;
                const head = table.querySelector('thead')?.getBoundingClientRect().height ?? 0;
                const foot = table.querySelector('tfoot')?.getBoundingClientRect().height ?? 0;
                const top = number * height;
                const room = box.clientHeight - head - foot;
                if (top < box.scrollTop) {
                    box.scrollTop = top;
                } else if (top + height > box.scrollTop + room) {
                    box.scrollTop = top + height - room;
                }
            }
            if (table.querySelector(`[data-row="${number}"]`) !== null) {
                return;
            }
            await new Promise((resolve) => setTimeout(resolve, 25));
        }
    }

    /** The first and the last columns stay: nothing is to lie below them. @param {HTMLElement} crossing */
    function besideFirstColumn(crossing) {
        const frame = box.getBoundingClientRect();
        const first = table.querySelector('tbody .first')?.getBoundingClientRect().width ?? 0;
        const sums = [...table.querySelectorAll('thead .sum')].reduce((width, head) => width + head.getBoundingClientRect().width, 0);
        const own = crossing.getBoundingClientRect();
        const right = frame.left + box.clientWidth - sums;
        if (own.left < frame.left + first) {
            box.scrollLeft -= frame.left + first - own.left + 8;
        } else if (own.right > right) {
            box.scrollLeft += own.right - right + 8;
        }
    }

    return { show: reach, take };
}
