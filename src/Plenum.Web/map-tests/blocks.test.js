import assert from 'node:assert/strict';
import { test } from 'node:test';
import { drawBlocks, rasterBox } from '../wwwroot/map/blocks.js';
import { Flag, readLens } from '../wwwroot/map/data.js';
import { frameOf } from '../wwwroot/map/frame.js';
import { layOut } from '../wwwroot/map/layout.js';
import { makeFill } from '../wwwroot/map/patterns.js';
import { showLens } from '../wwwroot/map/scene.js';
import { hexToRgb, tokensFrom } from '../wwwroot/map/tokens.js';
import { encodeLens } from './encode.js';
import { branch, pack, projectOf } from './generated.js';

const TOKENS = tokensFrom(() => '', hexToRgb);
const CLASSES = ['fav4', 'neu', 'none'].map((fill) => ({ word: fill, fill }));

/**
 * Draws a map whose strips are 1 000 pixels wide.
 * @param {import('./encode.js').Element[]} elements @param {number[]} classOf
 * @param {{ findings?: boolean, mix?: boolean }} [kind]
 */
function draw(elements, classOf, { findings = false, mix = false } = {}) {
    const layout = layOut(projectOf(elements), 'budget');
    const lens = { name: '', classes: CLASSES, findings };
    const shown = showLens(layout, lens, readLens(encodeLens(classOf, CLASSES.length, { mix })));
    const frame = frameOf({ width: 1204, levels: 6, atLevel: 1, zoomed: false, compact: false, unit: 1 });
    const style = /** @type {import('../wwwroot/map/scene.js').Style} */ ({
        tokens: TOKENS,
        scale: 1,
        unit: 1,
        fills: CLASSES.map((lensClass) => makeFill(lensClass, TOKENS, 1)),
        finding: makeFill({ word: '', fill: 'unf2' }, TOKENS, 1),
    });
    const scene = { layout, shown, style, frame, view: { from: 0, to: 1 } };
    const { width, height } = rasterBox(scene);
    const raster = { width, height, pixels: new Uint32Array(width * height) };
    const { singles, blocks } = drawBlocks(scene, raster);
    const named = new Map(['sheet', 'fav4', 'neu', 'none', 'unf2', 'unf4'].map((name) => [TOKENS.pixel(name), name]));
    /** @param {number} x @param {number} row @param {number} [down] from the top of the strip */
    const at = (x, row, down = 5) => named.get(raster.pixels[(frame.tops[row] - frame.tops[0] + down) * width + x]);
    return { at, singles, blocks, frame, width };
}

test('A_block_has_the_colour_of_its_class_and_a_seam_at_its_right', () => {
    const { at, width } = draw([branch(1, '1'), pack(2, '1.1', 400), pack(2, '1.2', 600)], [1, 0, 2]);
    assert.equal(width, 1000);
    assert.deepEqual([at(500, 0), at(10, 1), at(398, 1), at(399, 1), at(400, 1)], ['neu', 'fav4', 'fav4', 'sheet', 'none']);
});

test('A_finished_package_runs_down_through_the_strips_without_a_break', () => {
    const { at, frame } = draw([branch(1, '1'), pack(2, '1.1', 400), pack(2, '1.2', 600)], [1, 0, 2]);
    for (let row = 1; row < frame.tops.length; row++) {
        assert.equal(at(10, row, 0), 'fav4');
        assert.equal(at(10, row, -1), row === 1 ? 'sheet' : 'fav4');
    }
});

test('Blocks_below_2_4_pixels_are_summed_and_blocks_from_there_on_stand_singly', () => {
    const wide = Array.from({ length: 400 }, (_, i) => pack(2, `1.${i + 1}`, 10));
    assert.equal(draw([branch(1, '1'), ...wide], [1, ...wide.map(() => 0)]).singles.length, 401);
    const narrow = Array.from({ length: 420 }, (_, i) => pack(2, `1.${i + 1}`, 10));
    assert.equal(draw([branch(1, '1'), ...narrow], [1, ...narrow.map(() => 0)]).singles.length, 1);
});

test('A_column_of_narrow_blocks_shows_favourable_above_and_the_rest_below', () => {
    const packages = Array.from({ length: 2000 }, (_, i) => pack(2, `1.${i + 1}`, 10));
    const { at, blocks } = draw([branch(1, '1'), ...packages], [1, ...packages.map((_, i) => (i % 2 === 0 ? 0 : 2))]);
    assert.equal(blocks, 2001);
    for (let x = 1; x < 999; x += 7) {
        assert.deepEqual([at(x, 1, 0), at(x, 1, 12), at(x, 1, 16), at(x, 1, 27)], ['fav4', 'fav4', 'none', 'none']);
    }
});

test('A_parent_of_a_mix_is_divided_by_what_is_below_it', () => {
    const { at } = draw([branch(1, '1'), pack(2, '1.1', 500), pack(2, '1.2', 500)], [1, 0, 2], { mix: true });
    assert.deepEqual([at(700, 0, 0), at(700, 0, 9), at(700, 0, 10), at(700, 0, 19)], ['fav4', 'fav4', 'none', 'none']);
});

test('A_finding_has_a_bar_of_three_pixels_where_the_lens_shows_findings', () => {
    const elements = [branch(1, '1'), pack(2, '1.1', 400, { flags: Flag.package | Flag.finding }), pack(2, '1.2', 600)];
    const marked = draw(elements, [1, 0, 2], { findings: true });
    assert.deepEqual([0, 2, 3].map((down) => marked.at(10, 1, down)), ['unf4', 'unf4', 'fav4']);
    assert.equal(marked.at(500, 1, 0), 'none');
    assert.equal(draw(elements, [1, 0, 2]).at(10, 1, 0), 'fav4');
});
