// motion-view.mjs JOB.json: opens a motion view in Chromium, uses it as people do, and writes what was seen as JSON. It judges nothing.
// The job names the page, another page with a frame that holds it, and a folder for pictures.
import fs from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { launch } from './browser.mjs';

const job = JSON.parse(fs.readFileSync(process.argv[2], 'utf8'));
const seen = { errors: [], dialogs: 0, requests: [] };
const browser = await launch();

async function open(options = {}) {
  const page = await browser.newPage({ viewport: { width: 1600, height: 1000 }, ...options });
  page.on('pageerror', (error) => seen.errors.push(error.message));
  page.on('console', (message) => message.type() === 'error' && seen.errors.push(message.text()));
  page.on('dialog', (dialog) => {
    seen.dialogs++;
    dialog.dismiss();
  });
  page.on('request', (request) => seen.requests.push(request.url()));
  await page.goto(pathToFileURL(job.page).href);
  await rest(page);
  return page;
}

const rest = (page) => page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));

/** What the page says of the block in hand. */
const told = (page) => page.evaluate(() => ({
  heading: document.getElementById('block-heading').textContent,
  block: document.getElementById('block-text').textContent,
  line: document.getElementById('line').textContent,
  slider: Number(document.getElementById('slider').value),
  spokenSlider: document.getElementById('slider').getAttribute('aria-valuetext'),
  facts: Object.fromEntries([...document.querySelectorAll('#block-facts dt')].filter((dt) => !dt.hidden).map((dt) => [dt.textContent, dt.nextElementSibling.textContent])),
}));

async function press(page, ...keys) {
  for (const key of keys) await page.keyboard.press(key);
  await rest(page);
  return told(page);
}

/** How many different colours a view shows: a picture has many, an empty canvas one. */
const colours = (page) => page.evaluate(() => [...document.querySelectorAll('canvas')].map((canvas) => {
  const pixels = new Uint32Array(canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height).data.buffer);
  return new Set(pixels).size;
}));

const picture = (page, name) => page.screenshot({ path: path.join(job.pictures, name) });

try {
  const page = await open({ colorScheme: 'light' });
  seen.title = await page.title();
  seen.scripts = await page.evaluate(() => document.querySelectorAll('script').length);
  seen.steps = await page.evaluate(() => Number(document.getElementById('slider').max));
  seen.texts = await page.evaluate(() => JSON.parse(document.getElementById('motion').textContent).steps.text.slice(0, 20));
  seen.colours = await colours(page);
  seen.tree = await page.locator('body').ariaSnapshot();
  seen.begin = await told(page);
  seen.threeOn = await press(page, 'ArrowRight', 'ArrowRight', 'ArrowRight');
  seen.oneBack = await press(page, 'ArrowLeft');
  seen.nextPart = await press(page, 'PageDown');
  seen.end = await press(page, 'End');
  seen.partBefore = await press(page, 'PageUp');
  seen.home = await press(page, 'Home');
  seen.oneMove = await press(page, 'ArrowDown');
  seen.contact = await press(page, 'Home', 'c');
  await page.waitForTimeout(400);
  seen.spoken = await page.locator('#spoken').textContent();
  await picture(page, 'motion-light.png');
  await page.locator('#closest button').first().click({ timeout: 2000 }).catch(() => {});
  seen.closest = await told(page);
  await page.locator('#holes button').nth(1).click({ timeout: 2000 }).catch(() => {});
  seen.secondHole = await told(page);
  await page.locator('#slider').focus();
  seen.onSlider = await press(page, 'Home', 'ArrowRight');
  await page.selectOption('#speed', '20');
  await page.locator('h1').click();
  seen.pressed = (await press(page, 'Home', 'Space')) && (await page.locator('#play').getAttribute('aria-pressed'));
  await page.waitForTimeout(600);
  // A short program has come to its end by then, and stopped by itself.
  if ((await page.locator('#play').getAttribute('aria-pressed')) === 'true') await press(page, 'Space');
  seen.ran = (await told(page)).slider;
  const before = await page.evaluate(() => document.querySelector('#plan-view canvas').toDataURL());
  await page.mouse.move(500, 700);
  await page.mouse.wheel(0, -400);
  await page.waitForTimeout(300);
  seen.zoomed = before !== (await page.evaluate(() => document.querySelector('#plan-view canvas').toDataURL()));
  await page.locator('#show input[value="clamps"]').uncheck();
  await rest(page);
  seen.ground = {};
  for (const theme of ['light', 'dark']) {
    await page.selectOption('#theme', theme);
    await rest(page);
    seen.ground[theme] = await page.evaluate(() => [
      getComputedStyle(document.documentElement).backgroundColor,
      [...document.querySelector('#plan-view canvas').getContext('2d').getImageData(2, 60, 1, 1).data].join(),
    ].join(' '));
  }
  await picture(page, 'motion-dark.png');
  seen.overhang = [];
  // Every word that is written into a picture, and every ring of a contact, with its place and the picture that comes to be seen. What is drawn over is forgotten: while the page
  // finds its size it is drawn more than once.
  await page.evaluate(() => {
    const { fillText, fillRect, arc, drawImage } = CanvasRenderingContext2D.prototype;
    const seenIn = new Map();
    window.drawn = { words: [], rings: [] };
    Object.assign(CanvasRenderingContext2D.prototype, {
      fillText(text, x, y) {
        window.drawn.words.push({ text, x, y, wide: this.measureText(text).width, on: this.canvas, in: () => seenIn.get(this.canvas) });
        fillText.call(this, text, x, y);
      },
      fillRect(x, y, ...rest) {
        if (x === 0 && y === 0) window.drawn.words = window.drawn.words.filter((word) => word.on !== this.canvas);
        fillRect.call(this, x, y, ...rest);
      },
      arc(x, y, radius, ...rest) {
        if (radius === 8 && this.canvas.isConnected) window.drawn.rings.push({ x, y, in: this.canvas });
        arc.call(this, x, y, radius, ...rest);
      },
      drawImage(image, ...rest) {
        seenIn.set(image, this.canvas);
        window.drawn.rings = window.drawn.rings.filter((ring) => ring.in !== this.canvas);
        drawImage.call(this, image, ...rest);
      },
    });
  });
  await page.locator('#show input[value="clamps"]').check();
  seen.underContact = [];
  for (const width of [390, 800, 1600]) {
    await page.evaluate(() => (window.drawn = { words: [], rings: [] }));
    await page.setViewportSize({ width, height: 800 });
    await rest(page);
    // All of the setup in view: where it is zoomed to, contacts may lie outside.
    await page.locator('h1').click();
    await press(page, '0');
    await rest(page);
    seen.ringsSeen = Math.min(seen.ringsSeen ?? Infinity, await page.evaluate(() => window.drawn.rings.length));
    seen.underContact.push(...await page.evaluate(() => window.drawn.words
      .filter((word) => word.text.startsWith('clamp') && window.drawn.rings.some((ring) => ring.in === word.in()
        && ring.x + 8 > word.x && ring.x - 8 < word.x + word.wide && ring.y + 8 > word.y - 10 && ring.y - 8 < word.y))
      .map((word) => `${word.text}, ${window.innerWidth} wide`)));
    seen.overhang.push(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth));
    await picture(page, `motion-${width}.png`);
    // On a narrow page the words of a block are of many heights: a step must not undo what somebody zoomed to.
    if (width === 390 && seen.steps < 1000) {
      const looks = () => page.evaluate(() => [...document.querySelectorAll('canvas')].flatMap((canvas) => [...canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height).data]));
      // Keys go to the page, not to the chooser of colours used last.
      await page.locator('h1').click();
      await press(page, 'End', '+', '+', '+');
      const zoomed = await looks();
      for (const key of ['Home', 'ArrowRight', 'End']) await press(page, key);
      const now = await looks();
      // The same picture, but for the rounding of an edge here and there.
      seen.kept = zoomed.filter((value, i) => Math.abs(value - now[i]) > 40).length < zoomed.length / 1000;
    }
  }
  // In a window of a small laptop: how far the bar of the slider, which stays in view, covers the views.
  await page.setViewportSize({ width: 900, height: 700 });
  await page.evaluate(() => window.scrollTo(0, 0));
  await rest(page);
  seen.covered = await page.evaluate(() => document.getElementById('stage').getBoundingClientRect().bottom - document.getElementById('run').getBoundingClientRect().top);
  seen.columnsOut = await page.evaluate(() => {
    const table = document.querySelector('#holes-section .scroll');
    return table.scrollWidth - table.clientWidth;
  });
  // Where the system prescribes colours, a clamp is still hatched beside the words that explain it, as it is in the views.
  await page.emulateMedia({ forcedColors: 'active' });
  seen.hatchInForcedColours = await page.evaluate(() => getComputedStyle(document.querySelector('.sample.clamp')).backgroundImage);
  await page.emulateMedia({ forcedColors: 'none' });
  // Across the paper: what the lines mean is said in one row, with the hatching of clamps.
  await page.setViewportSize({ width: 1032, height: 700 });
  await page.emulateMedia({ media: 'print' });
  seen.keyOnPaper = await page.evaluate(() => ({
    rows: new Set([...document.querySelectorAll('#show label')].filter((label) => label.offsetHeight > 0).map((label) => Math.round(label.getBoundingClientRect().top))).size,
    adjust: getComputedStyle(document.querySelector('.sample.clamp')).printColorAdjust,
  }));
  await page.emulateMedia({ media: 'screen' });
  await page.pdf({ path: path.join(job.pictures, 'motion.pdf'), preferCSSPageSize: true });
  await page.close();

  // Inside another page: lines come and go as messages.
  const outer = await browser.newPage();
  await outer.goto(pathToFileURL(job.frame).href);
  const inner = outer.frames().find((frame) => frame !== outer.mainFrame());
  await inner.waitForSelector('#slider');
  await outer.evaluate((line) => document.querySelector('iframe').contentWindow.postMessage({ line }, '*'), job.line);
  await outer.waitForTimeout(300);
  seen.followed = await told(inner);
  seen.echoes = await outer.evaluate(() => window.lines.length);
  await outer.evaluate(() => document.querySelector('iframe').contentWindow.postMessage({ line: 'x' }, '*'));
  await inner.evaluate(() => document.getElementById('forward').click());
  await outer.waitForTimeout(300);
  seen.sent = await outer.evaluate(() => window.lines);
  await outer.close();
} catch (error) {
  seen.failure = String(error?.stack ?? error);
} finally {
  await browser.close();
}
console.log(JSON.stringify(seen));
