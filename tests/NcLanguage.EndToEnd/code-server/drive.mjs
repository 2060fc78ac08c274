// Drives the VS Code workbench in a headless browser, as a person would, and tells on stdout (one JSON object) what was
// seen. It asserts nothing: the test that started it does.
//   node drive.mjs JOB.json
// The job: see the fields read below. Times in milliseconds.
import fs from 'node:fs';
import path from 'node:path';
import { createRequire } from 'node:module';
import { motionSteps } from './motion-steps.mjs';
import { steps, wait } from './steps.mjs';
import { launch } from './workbench.mjs';

const job = JSON.parse(fs.readFileSync(process.argv[2], 'utf8'));
const { chromium } = createRequire(path.join(job.workbench, 'package.json'))('playwright-core');
const seen = {};

const workbench = await launch(job);
const browser = await chromium.launch({
  executablePath: job.chromium,
  args: ['--headless=new', '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'],
});
let page;
try {
  page = await browser.newPage({ viewport: job.view ?? { width: 1440, height: 900 } });
  page.setDefaultTimeout(wait);
  const payload = JSON.stringify([['openFile', `vscode-remote://${workbench.authority}${job.file}`]]);
  await page.goto(`http://${workbench.authority}/?folder=${encodeURIComponent(job.folder)}&payload=${encodeURIComponent(payload)}`, { waitUntil: 'commit' });
  // All of the workbench is loaded for this, which takes a machine under load minutes.
  await page.waitForSelector('.monaco-editor .view-line', { timeout: 300_000 });
  const all = { ...steps, ...motionSteps };
  for (const step of job.steps) await all[step.do](page, seen, step);
  seen.finished = true;
} catch (error) {
  seen.failure = String(error?.stack ?? error);
  if (page && job.failureScreenshot) await page.screenshot({ path: job.failureScreenshot }).catch(() => {});
} finally {
  await browser.close();
  await workbench.stop();
}
if (!seen.finished) seen.log = workbench.log().slice(-4000);
process.stdout.write(JSON.stringify(seen));
