// Buttons that copy the words of a part of the page, or print the page.

export function listenToCopying() {
    document.addEventListener('click', (event) => {
        const button = event.target instanceof Element ? event.target.closest('[data-copies], [data-prints]') : null;
        if (!(button instanceof HTMLElement)) {
            return;
        }
        if (button.dataset.prints !== undefined) {
            window.print();
            return;
        }
        const part = document.getElementById(button.dataset.copies ?? '');
        if (part !== null) {
            void navigator.clipboard.writeText(part.innerText);
        }
    });
}
