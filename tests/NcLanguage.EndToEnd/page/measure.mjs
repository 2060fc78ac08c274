// measure.mjs PAGE.html: how long a motion view takes to open, and how many steps a second it draws. Prints figures; judges nothing.
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { launch } from './browser.mjs';

const url = pathToFileURL(path.resolve(process.argv[2])).href;
const browser = await launch();
try {
  const page = await browser.newPage({ viewport: { width: 1600, height: 1000 } });
  for (let i = 0; i < 3; i++) {
    const before = Date.now();
    await page.goto(url);
    // The page draws in its first frame; two frames later that has been shown.
    await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
    console.log(`open and first picture: ${Date.now() - before} ms`);
  }

  /** Presses a key so often, one press a frame. */
  const rate = (key, presses, more = {}) =>
    page.evaluate(async ([key, presses, more]) => {
      const frame = () => new Promise((done) => requestAnimationFrame(done));
      await frame();
      const times = [];
      let before = performance.now();
      for (let i = 0; i < presses; i++) {
        document.body.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, ...more }));
        await frame();
        times.push(performance.now() - before);
        before = performance.now();
      }
      times.sort((a, b) => a - b);
      const sum = times.reduce((a, b) => a + b);
      return `${((1000 * presses) / sum).toFixed(0)} a second; median ${times[presses >> 1].toFixed(1)} ms, slowest ${times.at(-1).toFixed(1)} ms`;
    }, [key, presses, more]);

  const at = (share) => page.evaluate((share) => {
    const slider = document.getElementById('slider');
    slider.value = Math.round(slider.max * share);
    slider.dispatchEvent(new Event('input'));
    return new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
  }, share);

  for (const share of [0, 0.5, 0.9]) {
    await at(share);
    console.log(`steps on from ${share * 100} %: ${await rate('ArrowRight', 200)}`);
    console.log(`steps back: ${await rate('ArrowLeft', 200)}`);
  }
  await page.evaluate(() => {
    window.shares = Array.from({ length: 30 }, (_, i) => ((i * 7919) % 100) / 100);
  });
  const jumps = [];
  for (let i = 0; i < 15; i++) {
    const before = Date.now();
    await at(((i * 7919) % 100) / 100);
    jumps.push(Date.now() - before);
  }
  console.log(`jumps by the slider, two frames each: median ${jumps.sort((a, b) => a - b)[7]} ms, slowest ${jumps.at(-1)} ms`);
  console.log(`zoom: ${await rate('+', 5)}`);
  console.log(`pan: ${await rate('ArrowRight', 15, { shiftKey: true })}`);
} finally {
  await browser.close();
}
