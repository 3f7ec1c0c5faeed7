// The words beside the pointer.

/** Distance from the pointer, CSS pixels. */
const AWAY = Object.freeze({ x: 14, y: 18 });

/** @param {HTMLElement} root of the map @param {string} prefix of the custom properties */
export function makeTooltip(root, prefix) {
    const box = document.createElement('div');
    box.setAttribute('aria-hidden', 'true');
    Object.assign(box.style, {
        position: 'absolute',
        display: 'none',
        zIndex: '20',
        maxWidth: '24rem',
        padding: '0.5rem 0.625rem',
        pointerEvents: 'none',
        font: '400 0.75rem/1rem var(--map-font)',
        color: `var(${prefix}ink, #16212B)`,
        background: `var(${prefix}raised, #FFFFFF)`,
        border: `1px solid var(${prefix}ink, #16212B)`,
    });
    root.append(box);
    return {
        /** @param {{ path: string, title: string, lines: string[] }} text @param {number} x @param {number} y */
        show(text, x, y) {
            box.replaceChildren(
                ...(text.path === '' ? [] : [line(text.path, '400', `var(${prefix}ink3, #59646C)`)]),
                line(text.title, '600', 'inherit'),
                ...text.lines.map((words) => line(words, '400', 'inherit')),
            );
            box.style.display = 'block';
            const room = root.clientWidth;
            const left = x + AWAY.x + box.offsetWidth > room ? x - AWAY.x - box.offsetWidth : x + AWAY.x;
            box.style.left = `${Math.max(0, left)}px`;
            box.style.top = `${y + AWAY.y}px`;
        },
        hide() {
            box.style.display = 'none';
        },
        isShown: () => box.style.display !== 'none',
    };
}

/** @param {string} text @param {string} weight @param {string} color */
function line(text, weight, color) {
    const element = document.createElement('div');
    element.textContent = text;
    element.style.fontWeight = weight;
    element.style.color = color;
    return element;
}
