// Says when the connection to the program is lost, keeps what was typed, and comes back by itself.

const KEPT = 'plenum.kept';

/** Fields whose text is kept while the connection is away. */
const fields = () =>
    /** @type {HTMLInputElement[]} */ ([...document.querySelectorAll('input[data-keep], textarea[data-keep]')]);

export function watchConnection() {
    const strip = document.getElementById('components-reconnect-modal');
    if (strip === null) {
        return;
    }
    strip.addEventListener('components-reconnect-state-changed', (event) => {
        const { state } = /** @type {CustomEvent} */ (event).detail;
        if (state === 'hide') {
            say('', '');
        } else if (state === 'rejected') {
            // the program was started anew: its sheet is gone, what was typed is not
            keep();
            location.reload();
        } else {
            const kept = fields().filter((field) => field.value !== '').length;
            say(
                kept === 0 ? 'not connected' : `not connected, ${kept} ${kept === 1 ? 'entry' : 'entries'} kept`,
                state === 'failed'
                    ? 'The program does not answer. What you typed is kept here. Start it again, then try.'
                    : 'The program does not answer. What you typed is kept here; it is tried again by itself.',
            );
            if (state === 'failed') {
                retryUntilAnswered();
            }
        }
    });
    restore();
}

/**
 * @param {string} short for the title block
 * @param {string} long for the strip above it; empty hides it
 */
function say(short, long) {
    const words = document.getElementById('connection-words');
    if (words !== null) {
        words.textContent = short;
    }
    const strip = /** @type {HTMLElement} */ (document.getElementById('components-reconnect-modal'));
    strip.classList.toggle('lost', long !== '');
    if (strip.dataset.said === long) {
        return;
    }
    strip.dataset.said = long;
    strip.textContent = long;
    if (long !== '') {
        const button = document.createElement('button');
        button.type = 'button';
        button.textContent = 'Try now';
        button.addEventListener('click', () => void tryNow());
        strip.append(' ', button);
    }
}

async function tryNow() {
    try {
        const blazor = /** @type {any} */ (window).Blazor;
        if (!(await blazor.reconnect())) {
            keep();
            location.reload();
        }
    } catch {
        // it does not answer yet; the strip still says so
    }
}

function retryUntilAnswered() {
    const timer = setInterval(async () => {
        try {
            await fetch('icon.svg', { cache: 'no-store' });
            clearInterval(timer);
            await tryNow();
        } catch {
            // not yet
        }
    }, 3000);
}

function keep() {
    const texts = fields()
        .filter((field) => field.value !== '')
        .map((field) => [field.id, field.value]);
    sessionStorage.setItem(KEPT, JSON.stringify(texts));
}

/** Puts back what was typed, as soon as the fields are there. */
function restore() {
    const stored = sessionStorage.getItem(KEPT);
    if (stored === null) {
        return;
    }
    sessionStorage.removeItem(KEPT);
    const waiting = new Map(/** @type {[string, string][]} */ (JSON.parse(stored)));
    const observer = new MutationObserver(put);
    observer.observe(document.body, { childList: true, subtree: true });
    setTimeout(() => observer.disconnect(), 30_000);
    put();

    function put() {
        for (const field of fields()) {
            const text = waiting.get(field.id);
            if (text !== undefined) {
                waiting.delete(field.id);
                field.value = text;
                field.dispatchEvent(new Event('input', { bubbles: true }));
                field.dispatchEvent(new Event('change', { bubbles: true }));
            }
        }
        if (waiting.size === 0) {
            observer.disconnect();
        }
    }
}
