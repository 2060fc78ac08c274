// Chromium without a window, by the driver that install.sh puts beside the workbench.
import { createRequire } from 'node:module';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';

/** The folder with the driver in node_modules. */
function driverFolder() {
  if (process.env.NCLANGUAGE_E2E_WORKBENCH) return process.env.NCLANGUAGE_E2E_WORKBENCH;
  const cache = process.env.NCLANGUAGE_E2E_CACHE || path.join(os.homedir(), '.cache', 'nclanguage-e2e');
  const found = fs.readdirSync(cache).find((name) => name.startsWith('workbench-') && fs.existsSync(path.join(cache, name, '.complete')));
  if (!found) throw new Error(`no driver in ${cache}: run tests/NcLanguage.EndToEnd/install.sh`);
  return path.join(cache, found);
}

export async function launch() {
  const require = createRequire(path.join(driverFolder(), 'package.json'));
  const { chromium } = require('playwright-core');
  return chromium.launch({ executablePath: process.env.NCLANGUAGE_E2E_CHROMIUM || '/usr/bin/chromium', args: ['--no-sandbox'] });
}
