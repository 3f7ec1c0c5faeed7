// A list that is pasted: kept here until the page asks for it, because it can be longer than one message may be.

let kept = '';

/** @param {string} text */
export function keepPasted(text) {
    kept = text;
}

/**
 * @param {HTMLTextAreaElement | null} field
 * @param {any} page object of the page with the methods Read, Take, Leave
 */
export function steerPaste(field, page) {
    if (field === null) {
        return null; // the reader has gone on already
    }
    let waiting = 0;
    const tell = () => {
        clearTimeout(waiting);
        waiting = setTimeout(() => void page.invokeMethodAsync('Read'), 200);
    };
    field.addEventListener('input', tell);
    field.addEventListener('keydown', (event) => {
        if (event.key === 'Escape' || (event.key === 'Enter' && (event.ctrlKey || event.metaKey))) {
            event.preventDefault();
            void page.invokeMethodAsync(event.key === 'Escape' ? 'Leave' : 'Take');
        }
    });
    field.value = kept;
    kept = '';
    field.focus();
    field.setSelectionRange(0, 0);
    tell();
    return { text: () => new TextEncoder().encode(field.value) };
}
