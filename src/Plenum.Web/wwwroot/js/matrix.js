// The matrix under the keys: arrows lead from account to account, also to rows that are not drawn yet.

import { keepOneStop } from './roving.js';

const MOVES = ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown', 'Home', 'End'];

/**
 * @param {HTMLElement | null} element
 * @param {HTMLElement} box what scrolls
 * @param {any} page object of the page with the method Next
 */
export function steerMatrix(element, box, page) {
    if (element === null) {
        return; // the reader has gone on already
    }
    const table = element;
    keepOneStop(table, '[data-account], [data-rowlink]');
    // up and down keep to one column, also across rows that have no account in it
    let column = 0;
    let keeps = false;
    table.addEventListener('focusin', (event) => {
        const here = event.target instanceof Element ? event.target.closest('[data-account]') : null;
        if (here instanceof HTMLElement && !keeps) {
            column = Number(here.dataset.column);
        }
    });
    table.addEventListener('keydown', async (event) => {
        const part = event.target instanceof Element ? event.target.closest('[data-rowlink]') : null;
        if (part !== null && event.key === 'ArrowRight') {
            event.preventDefault();
            focusOn(part.closest('[data-row]')?.querySelector('[data-account]') ?? null);
            return;
        }
        const here = event.target instanceof Element ? event.target.closest('[data-account]') : null;
        if (!(here instanceof HTMLElement) || !MOVES.includes(event.key) || event.ctrlKey || event.altKey || event.metaKey || event.shiftKey) {
            return;
        }
        event.preventDefault();
        const row = /** @type {HTMLElement} */ (here.closest('[data-row]'));
        const to = await page.invokeMethodAsync('Next', Number(row.dataset.row), here.dataset.account, event.key, column);
        if (to !== null) {
            await reach(to.row);
            keeps = event.key === 'ArrowUp' || event.key === 'ArrowDown';
            focusOn(table.querySelector(`[data-row="${to.row}"] [data-account="${CSS.escape(to.account)}"]`));
            keeps = false;
        } else if (event.key === 'ArrowLeft') {
            focusOn(row.querySelector('[data-rowlink]'));
        }
    });

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

    return { show: reach };
}
