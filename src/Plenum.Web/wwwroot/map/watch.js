// What the page does to the map: its size, the theme, the pixel ratio, the fonts, and paper.

/**
 * @param {HTMLElement} root of the map
 * @param {object} told
 * @param {() => void} told.resized
 * @param {() => void} told.restyled colours, text size, pixel ratio or fonts may be others
 * @param {(onPaper: boolean) => void} told.printing true before printing, false after it
 * @returns {() => void} stops watching
 */
export function watchPage(root, told) {
    const stop = new AbortController();
    const { signal } = stop;
    const sizes = new ResizeObserver(told.resized);
    sizes.observe(root);
    const themes = new MutationObserver(told.restyled);
    themes.observe(document.documentElement, { attributes: true, attributeFilter: ['class', 'style', 'data-theme'] });
    const dark = window.matchMedia('(prefers-color-scheme: dark)');
    dark.addEventListener('change', told.restyled, { signal });
    window.addEventListener('resize', told.restyled, { signal });
    document.fonts.addEventListener('loadingdone', told.restyled, { signal });
    window.addEventListener('beforeprint', () => told.printing(true), { signal });
    window.addEventListener('afterprint', () => told.printing(false), { signal });
    return () => {
        stop.abort();
        sizes.disconnect();
        themes.disconnect();
    };
}
