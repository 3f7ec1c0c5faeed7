// Measures how long drawing takes, with the documents of make-demo.js: node time.js [plant|large]
// For each step the processor time of the page's main thread (what the map costs) and the time on the clock (which other
// work on the machine lengthens), as median and longest of the rounds. A timing is never a test.

import { argv, stdout } from 'node:process';
import { serve } from './serve.js';
import { withPage } from './browser.js';

const ROUNDS = 9;
const size = argv[2] ?? 'large';
const { port, close } = await serve(0);
await withPage(async ({ open, evaluate, send }) => {
    await send('Performance.enable', { timeDomain: 'threadTicks' });
    /** Processor time of the main thread so far, milliseconds. */
    const thread = async () => {
        const { metrics } = await send('Performance.getMetrics');
        const found = /** @type {{ name: string, value: number }[]} */ (metrics).find(({ name }) => name === 'TaskDuration');
        return (found?.value ?? NaN) * 1000;
    };
    /** @param {string} text @param {string} expression @param {number} rounds */
    const time = async (text, expression, rounds) => {
        const processor = [];
        const clock = [];
        for (let round = 0; round < rounds; round++) {
            const before = await thread();
            clock.push(Number(await evaluate(`(async () => { const t = performance.now(); ${expression}; return performance.now() - t; })()`)));
            processor.push((await thread()) - before);
        }
        stdout.write(`${text.padEnd(44)} ${summary(processor)} processor, ${summary(clock)} clock\n`);
    };
    await open(`http://127.0.0.1:${port}/map-tests/demo.html?size=${size}&wait`);
    await time('bytes to first drawing, cold', 'start(); await drawn()', 1);
    await time('bytes to first drawing, again', 'start(); await drawn()', ROUNDS);
    await time('sheet drawn again', 'const d = drawn(); map.redraw(); await d', ROUNDS);
    await time('focus moved', 'map.focus("03.2"); await frame(); map.focus("07"); await frame()', ROUNDS);
    await time('lens set', 'const d = drawn(); colour(); await d', ROUNDS);
    await time('measure changed, laid out before', 'const d = drawn(); swap(); await d', ROUNDS);
    await send('Emulation.setEmulatedMedia', { features: [{ name: 'prefers-reduced-motion', value: 'reduce' }] });
    await time('zoom in without a move', 'const d = drawn(); map.zoomTo("03"); await d', ROUNDS);
    await time('zoom out without a move', 'const d = drawn(); map.zoomTo(null); await d', ROUNDS);
});
close();

/** @param {number[]} times */
function summary(times) {
    const sorted = [...times].sort((a, b) => a - b);
    const median = sorted[sorted.length >> 1].toFixed(1).padStart(6);
    return `${median} ms (longest ${sorted[sorted.length - 1].toFixed(1)})`;
}
