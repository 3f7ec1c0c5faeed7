// The line of the outline that somebody types in: it keeps its letters until they are written, and never waits for an
// answer. What is entered goes off one after another, in the order in which it was typed.

/**
 * @param {HTMLElement | null} frame
 * @param {any} page object of the page with the methods Take, Level, Leave, Look, TakeOver, Move
 */
export function steerEntry(frame, page) {
    if (frame === null) {
        return null; // the reader has gone on already
    }
    const entry = frame;
    const field = /** @type {HTMLInputElement} */ (entry.querySelector('#entry-text'));
    const box = /** @type {HTMLElement} */ (entry.closest('.tablebox'));
    /** @type {string | null} */
    let shown = null;
    /** @type {Promise<unknown>} */
    let last = Promise.resolve();
    let looked = 0;
    let waiting = 0;

    const place = () => {
        const row = box.querySelector('.entryplace');
        if (row instanceof HTMLElement && shown !== null) {
            const top = row.offsetTop;
            entry.style.top = `${top}px`;
            const head = box.querySelector('thead')?.getBoundingClientRect().height ?? 0;
            if (top < box.scrollTop + head) {
                box.scrollTop = Math.max(0, top - head - 26);
            } else if (top + 3 * row.offsetHeight > box.scrollTop + box.clientHeight) {
                box.scrollTop = top - box.clientHeight + 4 * row.offsetHeight;
            }
        }
    };
    new MutationObserver(place).observe(/** @type {HTMLElement} */ (box.querySelector('tbody')), { childList: true });

    /** @param {() => Promise<unknown>} work */
    const inTurn = (work) => {
        waiting++;
        last = last.then(work).catch(() => undefined).finally(() => waiting--);
    };

    field.addEventListener('input', () => {
        const mine = ++looked;
        setTimeout(() => {
            if (mine === looked && shown !== null) {
                void page.invokeMethodAsync('Look', field.value);
            }
        }, 60);
    });
    field.addEventListener('keydown', (event) => {
        const isPlain = !event.altKey && !event.metaKey && !event.ctrlKey;
        if (event.key === 'Enter' && event.ctrlKey) {
            event.preventDefault();
            inTurn(async () => {
                if (await page.invokeMethodAsync('TakeOver')) {
                    field.value = '';
                }
            });
        } else if (event.key === 'Enter' && isPlain) {
            event.preventDefault();
            const typed = field.value;
            field.value = '';
            looked++;
            inTurn(async () => {
                if (!(await page.invokeMethodAsync('Take', typed)) && field.value === '') {
                    field.value = typed; // it was refused: what was typed stays
                    field.focus();
                }
            });
        } else if (event.key === 'Tab' && isPlain) {
            event.preventDefault();
            const down = !event.shiftKey;
            inTurn(() => page.invokeMethodAsync('Level', down, field.value));
        } else if (event.key === 'Escape') {
            event.preventDefault();
            event.stopPropagation();
            field.value = '';
            inTurn(() => page.invokeMethodAsync('Leave'));
        } else if ((event.key === 'ArrowDown' || event.key === 'ArrowUp') && isPlain) {
            event.preventDefault();
            void page.invokeMethodAsync('Move', event.key === 'ArrowDown' ? 1 : -1);
        }
    });
    field.addEventListener('blur', () => {
        // left with nothing in it: the line goes; with letters in it, it stays
        setTimeout(() => {
            if (shown !== null && field.value.trim() === '' && waiting === 0 && document.activeElement !== field && document.hasFocus()) {
                inTurn(() => page.invokeMethodAsync('Leave'));
            }
        }, 200);
    });

    return {
        /** @param {string} which @param {string | null} value */
        open(which, value) {
            const isNew = shown === null;
            shown = which;
            entry.hidden = false;
            if (value !== null && isNew) {
                field.value = value;
            }
            place();
            setTimeout(place, 30);
            if (isNew || document.activeElement === document.body) {
                field.focus({ preventScroll: true });
                if (value !== null) {
                    field.select();
                }
            }
        },
        close() {
            shown = null;
            entry.hidden = true;
        },
        clear() {
            field.value = '';
            field.focus({ preventScroll: true });
        },
    };
}
