// Keys in tables: from row to row, also where rows are drawn only while they are in view, and from figure to figure.

const STOPS = '[data-rowlink], a.figure';

export function steerTables() {
    document.addEventListener('keydown', (event) => {
        const link = event.target instanceof Element ? event.target.closest('[data-row] :is([data-rowlink], a.figure)') : null;
        if (link === null || event.ctrlKey || event.altKey || event.metaKey) {
            return;
        }
        const row = /** @type {HTMLElement} */ (link.closest('[data-row]'));
        const box = row.closest('.tablebox');
        const at = Number(row.dataset.row);
        const count = Number(/** @type {HTMLElement} */ (row.closest('[data-rows]')).dataset.rows);
        const page = box === null ? 10 : Math.max(1, Math.floor(box.clientHeight / row.offsetHeight) - 2);
        const stops = [...row.querySelectorAll(STOPS)];
        const place = stops.indexOf(link);
        const to = targetOf(event.key, at, count, page);
        if (to !== null) {
            event.preventDefault();
            void focusRow(row, to, place);
        } else if (event.key === 'ArrowRight' || event.key === 'ArrowLeft') {
            event.preventDefault();
            const next = stops[place + (event.key === 'ArrowRight' ? 1 : -1)];
            if (next instanceof HTMLElement) {
                next.focus();
            }
        }
    });
}

/**
 * @param {string} key
 * @param {number} at
 * @param {number} count
 * @param {number} page
 */
function targetOf(key, at, count, page) {
    switch (key) {
        case 'ArrowUp':
            return at > 0 ? at - 1 : null;
        case 'ArrowDown':
            return at < count - 1 ? at + 1 : null;
        case 'PageUp':
            return Math.max(0, at - page);
        case 'PageDown':
            return Math.min(count - 1, at + page);
        case 'Home':
            return 0;
        case 'End':
            return count - 1;
        default:
            return null;
    }
}

/** Focuses a stop of a row, once it is drawn. @param {HTMLElement} from @param {number} to @param {number} [place] */
export async function focusRow(from, to, place = 0) {
    const table = /** @type {HTMLElement} */ (from.closest('[data-rows]'));
    const box = from.closest('.tablebox');
    const height = from.offsetHeight;
    const at = Number(from.dataset.row);
    if (box !== null) {
        const head = table.querySelector('thead')?.getBoundingClientRect().height ?? 0;
        const foot = table.querySelector('tfoot')?.getBoundingClientRect().height ?? 0;
        const top = from.getBoundingClientRect().top - box.getBoundingClientRect().top + (to - at) * height;
        if (top < head) {
            box.scrollTop += top - head;
        } else if (top + height > box.clientHeight - foot) {
            box.scrollTop += top + height - box.clientHeight + foot;
        }
    }
    for (let wait = 0; wait < 60; wait++) {
        const stops = table.querySelectorAll(`[data-row="${to}"] :is(${STOPS})`);
        const link = stops[Math.min(place, stops.length - 1)];
        if (link instanceof HTMLElement) {
            link.focus({ preventScroll: true });
            return;
        }
        await new Promise((resolve) => setTimeout(resolve, 25));
    }
}

/** Copies text for a spreadsheet: a table with tabs. @param {string} text */
export async function copyText(text) {
    try {
        await navigator.clipboard.writeText(text);
        return true;
    } catch {
        // an older way, for browsers that refuse the newer one
        const area = document.createElement('textarea');
        area.value = text;
        area.className = 'offsheet';
        document.body.append(area);
        area.select();
        const done = document.execCommand('copy');
        area.remove();
        return done;
    }
}

/** Scrolls a row of a table with rows of one height into view. @param {HTMLElement | null} box @param {number} row @param {number} height */
export function showRow(box, row, height) {
    if (box === null) {
        return; // the reader has gone on already
    }
    const top = row * height;
    const head = box.querySelector('thead')?.getBoundingClientRect().height ?? 0;
    const foot = box.querySelector('tfoot')?.getBoundingClientRect().height ?? 0;
    const room = box.clientHeight - head - foot;
    if (top < box.scrollTop || top + height > box.scrollTop + room) {
        box.scrollTop = Math.max(0, top - room / 3);
    }
}
