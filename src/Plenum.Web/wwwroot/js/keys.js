// The keys that act on every page. Single letters act only outside text fields, and can be switched off.

const LETTERS = 'plenum.letters';
const REGIONS = ['map', 'work', 'side'];

export const lettersAct = () => localStorage.getItem(LETTERS) !== 'off';

/** @param {boolean} act */
export function letLettersAct(act) {
    localStorage.setItem(LETTERS, act ? 'on' : 'off');
    document.dispatchEvent(new CustomEvent('plenum-letters', { detail: act }));
}

/** @param {'auto' | 'light' | 'dark'} theme */
export function chooseTheme(theme) {
    if (theme === 'auto') {
        localStorage.removeItem('plenum.theme');
        delete document.documentElement.dataset.theme;
    } else {
        localStorage.setItem('plenum.theme', theme);
        document.documentElement.dataset.theme = theme;
    }
}

export function listenToKeys() {
    document.addEventListener('keydown', onKey);
    document.addEventListener('click', (event) => {
        const opener = event.target instanceof Element ? event.target.closest('[data-opens]') : null;
        if (opener !== null) {
            openDialog(/** @type {HTMLElement} */ (opener).dataset.opens ?? '');
        }
    });
    document.addEventListener('submit', (event) => {
        const form = event.target instanceof HTMLFormElement ? event.target : null;
        for (const field of form?.querySelectorAll('input[data-once]') ?? []) {
            /** @type {HTMLInputElement} */ (field).value = ''; // its text is known already; the next is typed at once
        }
    });
    document.addEventListener('change', (event) => {
        const field = event.target;
        if (field instanceof HTMLInputElement && field.id === 'letters-act') {
            letLettersAct(field.checked);
        }
        if (field instanceof HTMLInputElement && field.name === 'theme') {
            chooseTheme(/** @type {'auto' | 'light' | 'dark'} */ (field.value));
        }
    });
}

/** Puts a text back into a field, unless something else was typed. @param {string} id @param {string} text */
export function putBack(id, text) {
    const field = document.getElementById(id);
    if (field instanceof HTMLInputElement && field.value === '') {
        field.value = text;
    }
}

/** @param {string} id */
export function openDialog(id) {
    const dialog = document.getElementById(id);
    if (!(dialog instanceof HTMLDialogElement) || dialog.open) {
        return;
    }
    const letters = dialog.querySelector('#letters-act');
    if (letters instanceof HTMLInputElement) {
        letters.checked = lettersAct();
    }
    const theme = document.documentElement.dataset.theme ?? 'auto';
    for (const choice of dialog.querySelectorAll('input[name="theme"]')) {
        /** @type {HTMLInputElement} */ (choice).checked = /** @type {HTMLInputElement} */ (choice).value === theme;
    }
    dialog.showModal();
}

/** @param {string} id */
export function closeDialog(id) {
    const dialog = document.getElementById(id);
    if (dialog instanceof HTMLDialogElement) {
        dialog.close();
    }
}

/** @param {EventTarget | null} target */
function isTyping(target) {
    return (
        target instanceof HTMLElement &&
        (target.isContentEditable || target.matches('input:not([type=checkbox], [type=radio], [type=file]), textarea, select'))
    );
}

/** @param {KeyboardEvent} event */
function onKey(event) {
    if (event.key === 'F6') {
        event.preventDefault();
        toNextRegion(event.shiftKey ? -1 : 1);
        return;
    }
    if (event.altKey && !event.ctrlKey && !event.metaKey) {
        const link = document.querySelector(`.rail a[data-key="${CSS.escape(event.key)}"]`);
        if (link instanceof HTMLElement) {
            event.preventDefault();
            (link.matches('[aria-current]') ? (nextPlace() ?? link) : link).click();
        }
        return;
    }
    if ((event.ctrlKey || event.metaKey) && !event.altKey && !event.shiftKey && !isTyping(event.target)) {
        // what was typed into a field is taken back by the field itself
        const taker = document.querySelector(`[data-ctrl="${CSS.escape(event.key.toLowerCase())}"]`);
        if (taker instanceof HTMLElement) {
            event.preventDefault();
            taker.click();
        }
        return;
    }
    if (event.ctrlKey || event.metaKey || event.altKey || isTyping(event.target) || !lettersAct()) {
        return;
    }
    if (event.key === '/') {
        event.preventDefault();
        document.getElementById('go-to')?.focus();
    } else if (event.key === '?') {
        event.preventDefault();
        openDialog('keys');
    } else {
        // a key that this page gives to one of its buttons or links
        const taker = document.querySelector(`[data-letter="${CSS.escape(event.key.toLowerCase())}"]`);
        const inMap = event.target instanceof Element && event.target.closest('#map') !== null;
        if (taker instanceof HTMLElement && !inMap) {
            event.preventDefault();
            if (taker.matches('input, textarea, select')) {
                taker.focus();
            } else {
                taker.click();
            }
        }
    }
}

/** The place after the one that is shown, in a chapter that has several. @returns {HTMLElement | null} */
function nextPlace() {
    const places = /** @type {HTMLElement[]} */ ([...document.querySelectorAll('.places a')]);
    const at = places.findIndex((place) => place.matches('[aria-current]'));
    return at < 0 ? null : places[(at + 1) % places.length];
}

/** Moves the focus between map, work area and side sheet. @param {1 | -1} by */
function toNextRegion(by) {
    const regions = REGIONS.map((id) => document.getElementById(id)).filter((region) => region !== null);
    if (regions.length === 0) {
        return;
    }
    const at = regions.findIndex((region) => region.contains(document.activeElement));
    const next = regions[(at + by + regions.length) % regions.length];
    if (next.id === 'map') {
        next.dispatchEvent(new CustomEvent('plenum-take-keys'));
    } else {
        next.focus();
    }
}
