// Many things to press, one stop for the Tab key: the one that had the focus last, else the first that is drawn.

/**
 * @param {HTMLElement | null} container
 * @param {string} item selector of the things that can be pressed; they are drawn with tabindex −1
 */
export function keepOneStop(container, item) {
    if (container === null) {
        return; // the reader has gone on already
    }
    const stops = () => /** @type {NodeListOf<HTMLElement>} */ (container.querySelectorAll(`:is(${item})[tabindex="0"]`));
    const give = (/** @type {HTMLElement} */ next) => {
        for (const other of stops()) {
            other.tabIndex = -1;
        }
        next.tabIndex = 0;
    };
    const ensure = () => {
        if (stops().length === 0) {
            const next = container.querySelector(`[aria-selected="true"] :is(${item})`) ?? container.querySelector(item);
            if (next instanceof HTMLElement) {
                next.tabIndex = 0;
            }
        }
    };
    container.addEventListener('focusin', (event) => {
        const next = event.target instanceof Element ? event.target.closest(item) : null;
        if (next instanceof HTMLElement) {
            give(next);
        }
    });
    new MutationObserver(ensure).observe(container, { childList: true, subtree: true });
    ensure();
}
