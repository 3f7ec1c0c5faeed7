// The colours of the page, read from its custom properties (`--ink`, `--sheet`, …), so that the map follows the theme.

/** Light values of the tokens that the map uses: what print uses, and what stands in where the page sets none. */
const LIGHT = Object.freeze({
    paper: '#EFEEE8',
    sheet: '#FAF9F5',
    raised: '#FFFFFF',
    wash: '#E4E2DA',
    ink: '#16212B',
    ink2: '#3B4751',
    ink3: '#59646C',
    edge: '#737C82',
    rule: '#AEAFA8',
    hair: '#D8D5CB',
    neu: '#DDDBD1',
    none: '#EAE8E1',
    fav4: '#0B5162',
    fav3: '#3B8392',
    fav2: '#8FBFC7',
    fav1: '#D2E5E7',
    unf4: '#85470B',
    unf3: '#BE7424',
    unf2: '#E4B377',
    unf1: '#F4E0C3',
    sel: '#2F43C4',
    selw: '#E6E8F8',
    c1: '#D9DEE3',
    c2: '#E3DCCB',
    c3: '#D3E0D8',
    c4: '#E2D6DC',
    c5: '#D6D6E6',
    c6: '#DCE0CC',
    c7: '#E7D9CE',
});

/**
 * @typedef {object} Tokens
 * @property {(name: string) => string} css colour of a token as CSS text
 * @property {(name: string) => number} pixel the colour as the bytes R, G, B, A of one pixel
 * @property {(name: string) => string} textOn `ink` or `sheet`, whichever reads better on the token's colour
 * @property {(name: string, alpha: number) => string} faint the colour with an opacity of 0 to 1
 */

/**
 * @param {Element} element where the custom properties are looked up
 * @param {string} prefix what stands before the token's name, such as `--`
 * @returns {Tokens}
 */
export function readTokens(element, prefix) {
    const style = getComputedStyle(element);
    return tokensFrom((name) => style.getPropertyValue(prefix + name).trim(), toRgb);
}

/** The light tokens, for paper. */
export function printTokens() {
    return tokensFrom(() => '', toRgb);
}

/**
 * @param {(name: string) => string} lookUp colour of a token, empty if the page sets none
 * @param {(css: string) => number[]} convert to red, green and blue
 * @returns {Tokens}
 */
export function tokensFrom(lookUp, convert) {
    /** @type {Map<string, { css: string, rgb: number[] }>} */
    const known = new Map();
    /** @param {string} name */
    const of = (name) => {
        let colour = known.get(name);
        if (colour === undefined) {
            const css = lookUp(name) || /** @type {Record<string, string>} */ (LIGHT)[name];
            if (css === undefined) {
                throw new Error(`token "${name}" found, one of ${Object.keys(LIGHT).join(', ')} expected`);
            }
            colour = { css, rgb: convert(css) };
            known.set(name, colour);
        }
        return colour;
    };
    return {
        css: (name) => of(name).css,
        pixel: (name) => pixelOf(of(name).rgb),
        textOn: (name) => {
            const ground = of(name).rgb;
            const isInk = contrast(of('ink').rgb, ground) >= contrast(of('sheet').rgb, ground);
            return of(isInk ? 'ink' : 'sheet').css;
        },
        faint: (name, alpha) => `rgb(${of(name).rgb.join(' ')} / ${alpha})`,
    };
}

/** The opaque colour in the byte order of little-endian machines. @param {number[]} rgb */
function pixelOf([red, green, blue]) {
    return ((255 << 24) | (blue << 16) | (green << 8) | red) >>> 0;
}

/** Contrast ratio, 1 to 21. Source: Web Content Accessibility Guidelines 2.2, "contrast ratio". @param {number[]} a @param {number[]} b */
export function contrast(a, b) {
    const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y);
    return (high + 0.05) / (low + 0.05);
}

/** Relative luminance, same source. @param {number[]} rgb */
function luminance(rgb) {
    const [red, green, blue] = rgb.map((byte) => {
        const value = byte / 255;
        return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** Six-digit colours. @param {string} css */
export function hexToRgb(css) {
    const value = parseInt(css.slice(1), 16);
    return [value >> 16, (value >> 8) & 255, value & 255];
}

/** Any CSS colour, by drawing it. @param {string} css */
function toRgb(css) {
    if (/^#[0-9a-f]{6}$/i.test(css)) {
        return hexToRgb(css);
    }
    const canvas = document.createElement('canvas');
    canvas.width = canvas.height = 1;
    const context = canvas.getContext('2d');
    if (context === null) {
        throw new Error('no drawing surface to read a colour');
    }
    context.fillStyle = css;
    context.fillRect(0, 0, 1, 1);
    return [...context.getImageData(0, 0, 1, 1).data.slice(0, 3)];
}
