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

    /** Leaves the line, if the work says that it is left. @param {() => Promise<boolean>} work */
    const leave = (work) => {
        const release = holdKeys(box);
        inTurn(async () => {
            if (!(await work())) {
                release();
            }
        });
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
            const take = async () => {
                const isTaken = await page.invokeMethodAsync('Take', typed);
                if (!isTaken && field.value === '') {
                    field.value = typed; // it was refused: what was typed stays
                    field.focus();
                }
                return isTaken;
            };
            const isLast = typed.trim() === '' || !(shown ?? '').endsWith('/0');
            (isLast ? leave : inTurn)(take);
        } else if (event.key === 'Tab' && isPlain) {
            event.preventDefault();
            const down = !event.shiftKey;
            inTurn(() => page.invokeMethodAsync('Level', down, field.value));
        } else if (event.key === 'Escape') {
            event.preventDefault();
            event.stopPropagation();
            field.value = '';
            leave(async () => {
                await page.invokeMethodAsync('Leave');
                return true;
            });
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
            const isNew = shown !== which;
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

/** A row that is to take the keys has this long to do so, ms. */
const LONGEST_HOLD = 2000;

/**
 * Holds keys that are pressed while the line is put away: they are meant for the row that takes the focus then.
 * @param {HTMLElement} box of the rows
 * @returns {() => void} lets them go at once
 */
function holdKeys(box) {
    /** @type {KeyboardEvent[]} */
    const held = [];
    const frame = () => new Promise((resolve) => requestAnimationFrame(resolve));
    const hold = (/** @type {KeyboardEvent} */ event) => {
        if (event.isTrusted) {
            event.preventDefault();
            event.stopImmediatePropagation();
            held.push(event);
        }
    };
    const release = async () => {
        clearTimeout(late);
        box.removeEventListener('focusin', onFocus);
        for (let event = held.shift(); event !== undefined; event = held.shift()) {
            // one after the other: each may move the focus. A letter acts on nothing that it was not seen to act on.
            const target = document.activeElement ?? document.body;
            if (event.key.length > 1 || event.ctrlKey || event.altKey || event.metaKey) {
                target.dispatchEvent(new KeyboardEvent('keydown', event));
            } else if (target.matches('input, textarea')) {
                document.execCommand('insertText', false, event.key);
            }
            await frame();
            await frame();
        }
        document.removeEventListener('keydown', hold, true);
    };
    const onFocus = (/** @type {FocusEvent} */ event) => {
        if (event.target instanceof Element && event.target.matches('[data-rowlink]')) {
            void release();
        }
    };
    document.addEventListener('keydown', hold, true);
    box.addEventListener('focusin', onFocus);
    const late = setTimeout(release, LONGEST_HOLD);
    return release;
}
