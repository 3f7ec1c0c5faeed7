// A table under the keys like a sheet of cells: one of them is active, a block of them can be selected, and rows that
// are not drawn yet can be reached. The page is told where the block is and which keys were pressed on it.

/**
 * @typedef {object} Options
 * @property {string[]} keys keys that the page takes, such as 'p', 'Delete', 'Ctrl+d'
 * @property {boolean} writes cells can be written into: Enter, F2 or a letter begins
 * @property {string} [begins] characters that begin to write where nothing else does
 * @property {number} first the first column that can be active
 */

/**
 * @param {HTMLElement | null} element table with data-rows and data-cols; its rows have data-row, its cells data-col
 * @param {HTMLElement} box what scrolls
 * @param {any} page object of the page with Moved, Pressed, Pasted, Copied, Written
 * @param {Options} options
 */
export function steerGrid(element, box, page, options) {
    if (element === null) {
        return; // the reader has gone on already
    }
    const table = element;
    let at = { row: 0, col: Math.max(0, options.first) };
    let from = { ...at };
    let told = 0;
    /** @type {HTMLInputElement | null} */
    let field = null;
    /** @type {Promise<unknown>} what was sent off so far */
    let written = Promise.resolve();
    /** @type {{ row: number, col: number, text: string }[]} */
    const refused = [];
    const rows = () => Number(table.dataset.rows);
    const cols = () => Number(table.dataset.cols);
    const cellAt = (/** @type {number} */ row, /** @type {number} */ col) =>
        /** @type {HTMLElement | null} */ (table.querySelector(`tr[data-row="${row}"] [data-col="${col}"]`));
    const isGroup = (/** @type {number} */ row) => table.querySelector(`tr[data-row="${row}"]`)?.classList.contains('grouprow') ?? false;

    table.addEventListener('keydown', onKey);
    table.addEventListener('mousedown', (event) => {
        const place = placeOf(event.target);
        if (place !== null && event.button === 0 && field === null) {
            moveTo(place, event.shiftKey);
            table.focus({ preventScroll: true });
            if (event.shiftKey) {
                event.preventDefault();
            }
        }
    });
    table.addEventListener('dblclick', (event) => {
        if (placeOf(event.target) !== null) {
            begin(null);
        }
    });
    table.addEventListener('copy', async (event) => {
        if (field === null && getSelection()?.isCollapsed !== false) {
            event.preventDefault();
            const text = await page.invokeMethodAsync('Copied', ...block());
            await navigator.clipboard.writeText(text).catch(() => undefined);
        }
    });
    table.addEventListener('paste', (event) => {
        if (field === null) {
            event.preventDefault();
            page.invokeMethodAsync('Pasted', event.clipboardData?.getData('text/plain') ?? '', ...block());
        }
    });
    new MutationObserver(paint).observe(table, { childList: true, subtree: true });
    paint();

    /** @param {KeyboardEvent} event */
    function onKey(event) {
        if (field !== null || event.altKey) {
            return;
        }
        const command = event.ctrlKey || event.metaKey;
        const step = move(event, command);
        if (step !== null) {
            event.preventDefault();
            moveTo(step, event.shiftKey);
            return;
        }
        const name = (command ? 'Ctrl+' : '') + (event.key.length === 1 ? event.key.toLowerCase() : event.key);
        if (options.keys.includes(name)) {
            event.preventDefault();
            event.stopPropagation();
            page.invokeMethodAsync('Pressed', name, ...block());
        } else if (options.writes && !command && (event.key === 'Enter' || event.key === 'F2')) {
            event.preventDefault();
            begin(null);
        } else if (!command && event.key.length === 1 && (options.begins?.includes(event.key) ?? (options.writes && event.key !== ' '))) {
            event.preventDefault();
            event.stopPropagation();
            begin(event.key);
        }
    }

    /** Where a key leads; null for a key that does not move. @param {KeyboardEvent} event @param {boolean} command */
    function move(event, command) {
        const page = Math.max(1, Math.floor(box.clientHeight / height()) - 4);
        switch (event.key) {
            case 'ArrowUp':
                return { row: command ? skip(0, 1) : skip(at.row - 1, -1), col: at.col };
            case 'ArrowDown':
                return { row: command ? skip(rows() - 1, -1) : skip(at.row + 1, 1), col: at.col };
            case 'ArrowLeft':
                return { row: at.row, col: at.col - 1 };
            case 'ArrowRight':
                return { row: at.row, col: at.col + 1 };
            case 'PageUp':
                return { row: skip(Math.max(0, at.row - page), 1), col: at.col };
            case 'PageDown':
                return { row: skip(Math.min(rows() - 1, at.row + page), -1), col: at.col };
            case 'Home':
                return { row: command ? skip(0, 1) : at.row, col: options.first };
            case 'End':
                return { row: command ? skip(rows() - 1, -1) : at.row, col: cols() - 1 };
            case 'Tab':
                return options.writes && at.col + (event.shiftKey ? -1 : 1) >= options.first && at.col + (event.shiftKey ? -1 : 1) < cols() && !command
                    ? { row: at.row, col: at.col + (event.shiftKey ? -1 : 1), single: true }
                    : null;
            default:
                return null;
        }
    }

    /** @param {number} row @param {1 | -1} by */
    function skip(row, by) {
        let next = row;
        while (next >= 0 && next < rows() && isGroup(next)) {
            next += by;
        }
        return next < 0 || next >= rows() ? at.row : next;
    }

    /** @param {{ row: number, col: number, single?: boolean }} place @param {boolean} extend */
    async function moveTo(place, extend) {
        at = {
            row: Math.min(Math.max(0, place.row), Math.max(0, rows() - 1)),
            col: Math.min(Math.max(options.first, place.col), cols() - 1),
        };
        if (!extend || place.single) {
            from = { ...at };
        }
        paint();
        await reach();
        paint();
        tell();
    }

    function tell() {
        clearTimeout(told);
        told = window.setTimeout(() => page.invokeMethodAsync('Moved', ...block()).catch(() => undefined), 60);
    }

    /** The active cell, then the other end of the block. */
    function block() {
        return [at.row, at.col, from.row, from.col];
    }

    /** @param {EventTarget | null} target */
    function placeOf(target) {
        const cell = target instanceof Element ? target.closest('[data-col]') : null;
        const row = cell?.closest('tr[data-row]');
        return cell instanceof HTMLElement && row instanceof HTMLElement && table.contains(cell)
            ? { row: Number(row.dataset.row), col: Number(cell.dataset.col) }
            : null;
    }

    function paint() {
        if (at.row >= rows()) {
            at = { row: Math.max(0, rows() - 1), col: at.col };
            from = { ...at };
        }
        if (at.col < options.first && cols() > options.first) {
            // the first columns have come
            at = { row: at.row, col: options.first };
            from = { row: from.row, col: options.first };
            tell();
        }
        const [top, bottom] = [Math.min(at.row, from.row), Math.max(at.row, from.row)];
        const [left, right] = [Math.min(at.col, from.col), Math.max(at.col, from.col)];
        for (const row of table.querySelectorAll('tr[data-row]')) {
            const number = Number(/** @type {HTMLElement} */ (row).dataset.row);
            const within = number >= top && number <= bottom && !row.classList.contains('grouprow');
            for (const cell of row.querySelectorAll('th.first, [data-col]')) {
                // without columns it is whole rows that are chosen, by their heads
                const own = /** @type {HTMLElement} */ (cell).dataset.col;
                const col = own !== undefined ? Number(own) : cols() === 0 ? at.col : NaN;
                const selected = within && col >= left && col <= right;
                const active = number === at.row && col === at.col;
                cell.classList.toggle('chosen', selected);
                cell.classList.toggle('active', active);
                if (own !== undefined || cols() === 0) {
                    cell.setAttribute('aria-selected', selected ? 'true' : 'false');
                } else {
                    cell.removeAttribute('aria-selected');
                }
                if (active) {
                    table.setAttribute('aria-activedescendant', cell.id);
                }
            }
        }
        if (cellAt(at.row, at.col) === null) {
            table.removeAttribute('aria-activedescendant');
        }
    }

    function height() {
        return table.querySelector('tr[data-row]')?.getBoundingClientRect().height || 24;
    }

    /** Scrolls until the active cell is drawn and can be seen. */
    async function reach() {
        for (let wait = 0; wait < 40; wait++) {
            const head = table.querySelector('thead')?.getBoundingClientRect().height ?? 0;
            const foot = table.querySelector('tfoot')?.getBoundingClientRect().height ?? 0;
            const top = at.row * height();
            const room = box.clientHeight - head - foot;
            if (top < box.scrollTop) {
                box.scrollTop = top;
            } else if (top + height() > box.scrollTop + room) {
                box.scrollTop = top + height() - room;
            }
            const cell = cellAt(at.row, at.col);
            if (cell !== null) {
                besideFixedColumns(cell);
                return;
            }
            const isDrawn = table.querySelector(`tr[data-row="${at.row}"]`) !== null;
            if ((cols() === 0 && isDrawn) || isGroup(at.row) || rows() === 0) {
                return;
            }
            await new Promise((resolve) => setTimeout(resolve, 25));
        }
    }

    /** @param {HTMLElement} cell */
    function besideFixedColumns(cell) {
        if (cell.classList.contains('first')) {
            return;
        }
        const frame = box.getBoundingClientRect();
        const first = table.querySelector('tbody .first')?.getBoundingClientRect().width ?? 0;
        const last = table.querySelector('tbody .sum')?.getBoundingClientRect().width ?? 0;
        const own = cell.getBoundingClientRect();
        if (own.left < frame.left + first) {
            box.scrollLeft -= frame.left + first - own.left + 8;
        } else if (own.right > frame.left + box.clientWidth - last) {
            box.scrollLeft += own.right - frame.left - box.clientWidth + last + 8;
        }
    }

    /** Opens a field over the active cell. @param {string | null} letter what was typed, in place of what stands there */
    function begin(letter) {
        const cell = cellAt(at.row, at.col);
        if (!options.writes && letter === null) {
            page.invokeMethodAsync('Pressed', 'Enter', ...block());
            return;
        }
        if (cell === null || cell.dataset.fixed !== undefined) {
            return;
        }
        const frame = box.getBoundingClientRect();
        const own = cell.getBoundingClientRect();
        field = document.createElement('input');
        field.className = 'gridfield';
        field.value = letter ?? cell.dataset.text ?? '';
        field.setAttribute('aria-label', cell.getAttribute('aria-label') ?? 'Cell');
        field.autocomplete = 'off';
        field.style.left = `${own.left - frame.left + box.scrollLeft}px`;
        field.style.top = `${own.top - frame.top + box.scrollTop}px`;
        field.style.width = `${Math.max(own.width, 96)}px`;
        field.style.height = `${own.height}px`;
        field.addEventListener('keydown', onFieldKey);
        field.addEventListener('blur', () => void end('stay'));
        box.append(field);
        field.focus();
        if (letter === null) {
            field.select();
        }
    }

    /** @param {KeyboardEvent} event */
    function onFieldKey(event) {
        event.stopPropagation();
        if (event.key === 'Escape') {
            event.preventDefault();
            close();
        } else if (event.key === 'Enter') {
            event.preventDefault();
            void end(event.shiftKey ? 'up' : 'down');
        } else if (event.key === 'Tab') {
            event.preventDefault();
            void end(event.shiftKey ? 'left' : 'right');
        }
    }

    /**
     * Sends off what is in the field, and goes on without waiting. What is refused comes back into its field as soon as
     * nothing else is being typed.
     * @param {'stay' | 'down' | 'up' | 'left' | 'right'} then
     */
    async function end(then) {
        if (field === null) {
            return;
        }
        const { row, col } = at;
        const text = field.value;
        const isNew = text !== (cellAt(row, col)?.dataset.text ?? '');
        close(then !== 'stay');
        if (isNew) {
            written = written.then(async () => {
                // without an answer it is not taken, and neither is it lost
                if (!(await page.invokeMethodAsync('Written', row, col, text).catch(() => false))) {
                    refused.push({ row, col, text });
                    await recall();
                }
            });
        }
        if (await recall()) {
            return;
        }
        const by = { stay: [0, 0], down: [1, 0], up: [-1, 0], left: [0, -1], right: [0, 1] }[then];
        if (then !== 'stay') {
            await moveTo({ row: skip(row + by[0], by[0] < 0 ? -1 : 1), col: col + by[1] }, false);
        }
    }

    /** Opens the field again that was refused first. @returns {Promise<boolean>} one was opened */
    async function recall() {
        const first = field === null ? refused.shift() : undefined;
        if (first === undefined) {
            return false;
        }
        await moveTo(first, false);
        begin(first.text);
        return true;
    }

    /** @param {boolean} takeKeys */
    function close(takeKeys = true) {
        const open = field;
        field = null;
        open?.remove();
        if (takeKeys) {
            table.focus({ preventScroll: true });
        }
    }

    return {
        /** Makes a cell of a row the active one. @param {number} row */
        show: async (row) => {
            at = { row: Math.max(0, row), col: at.col };
            from = { ...at };
            await reach();
            // it may be the heading of a group, which is seen only once it is drawn
            at.row = skip(at.row, 1);
            from.row = at.row;
            paint();
            tell();
        },
        /** Chooses a block. @param {number} row @param {number} col of the active cell @param {number} toRow @param {number} toCol of its other end */
        choose: (row, col, toRow, toCol) => {
            at = { row, col };
            from = { row: toRow, col: toCol };
            return reach().then(paint);
        },
        takeKeys: () => table.focus({ preventScroll: true }),
    };
}

/** @param {string} text */
export async function copyText(text) {
    await navigator.clipboard.writeText(text).catch(() => undefined);
}
