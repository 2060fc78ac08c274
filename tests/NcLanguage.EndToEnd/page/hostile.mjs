// hostile.mjs JOB.json: opens pages in Chromium and writes what is on them as JSON. It judges nothing.
import fs from 'node:fs';
import { pathToFileURL } from 'node:url';
import { launch } from './browser.mjs';

const job = JSON.parse(fs.readFileSync(process.argv[2], 'utf8'));
const browser = await launch();
const all = [];
for (const file of job.pages) {
  const seen = { dialogs: 0, errors: [], requests: [] };
  const page = await browser.newPage({ viewport: { width: 1600, height: 1000 } });
  page.on('pageerror', (error) => seen.errors.push(error.message));
  page.on('dialog', (dialog) => {
    seen.dialogs++;
    dialog.dismiss();
  });
  page.on('request', (request) => seen.requests.push(request.url()));
  await page.goto(pathToFileURL(file).href);
  await page.waitForTimeout(500);
  seen.text = await page.evaluate(() => document.documentElement.innerText ?? document.documentElement.textContent);
  seen.owned = await page.evaluate(() => globalThis.owned ?? null);
  seen.images = await page.evaluate(() => document.querySelectorAll('img, iframe, object, embed').length);
  seen.handlers = await page.evaluate(() => [...document.querySelectorAll('*')].filter((element) => [...element.attributes].some((attribute) => attribute.name.startsWith('on'))).length);
  seen.addresses = await page.evaluate(() => [...document.querySelectorAll('[href], [src]')].map((element) => element.getAttribute('href') ?? element.getAttribute('src')).filter((address) => !address.startsWith('#')));
  all.push(seen);
}
await browser.close();
console.log(JSON.stringify(all));
