// Finds the executable to start. Nothing here may be steered by the opened folder: the setting has machine scope,
// and entries of PATH that are not full paths (which would depend on the folder) are passed over.
const fs = require('node:fs');
const path = require('node:path');

const executable = process.platform === 'win32' ? 'nclanguage.exe' : 'nclanguage';

/** True for a file that may be run. */
function canRun(file) {
  try {
    fs.accessSync(file, process.platform === 'win32' ? fs.constants.F_OK : fs.constants.X_OK);
    return fs.statSync(file).isFile();
  } catch {
    return false;
  }
}

/**
 * The server to start: the one set, else the one bundled for this platform, else the one on PATH.
 * @param {string} configured value of nclanguage.serverPath, may be empty
 * @param {string} extensionPath folder of the extension
 * @returns {{ path: string } | { problem: string }}
 */
function findServer(configured, extensionPath) {
  if (configured) {
    if (!path.isAbsolute(configured)) {
      return { problem: `The setting nclanguage.serverPath must be a full path; it is "${configured}".` };
    }
    return canRun(configured)
      ? { path: configured }
      : { problem: `The setting nclanguage.serverPath names "${configured}", which is not a file that can be run.` };
  }
  const bundled = path.join(extensionPath, 'server', `${process.platform}-${process.arch}`, executable);
  if (canRun(bundled)) return { path: bundled };
  for (const folder of (process.env.PATH ?? '').split(path.delimiter)) {
    const candidate = path.join(folder, executable);
    if (path.isAbsolute(folder) && canRun(candidate)) return { path: candidate };
  }
  return { problem: 'The program "nclanguage" was not found on the PATH. Install it, or set its full path.' };
}

module.exports = { findServer };
