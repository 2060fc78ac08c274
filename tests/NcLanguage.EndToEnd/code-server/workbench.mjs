// The server side of the VS Code workbench: installs the extension into a folder of its own, starts, and stops again.
import { execFileSync, spawn } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';

const quiet = {
  'workbench.startupEditor': 'none',
  'workbench.tips.enabled': false,
  // The browser's default saves after a second, and so hides whether an edit has come.
  'files.autoSave': 'off',
  'telemetry.telemetryLevel': 'off',
  'extensions.ignoreRecommendations': true,
  'update.mode': 'none',
  'window.commandCenter': false,
  'workbench.layoutControl.enabled': false,
  'security.workspace.trust.startupPrompt': 'never',
  'security.workspace.trust.banner': 'never',
};

/** Starts the workbench on a free port of this machine. The job names the folders, the .vsix and the settings. */
export async function launch(job) {
  const entry = path.join(job.workbench, 'node_modules/code-server/out/node/entry.js');
  const data = path.join(job.scratch, 'user-data');
  const extensions = path.join(job.scratch, 'extensions');
  const folders = ['--user-data-dir', data, '--extensions-dir', extensions];
  // Both must exist before an extension is installed.
  fs.mkdirSync(path.join(data, 'User'), { recursive: true });
  fs.mkdirSync(path.join(data, 'Machine'), { recursive: true });
  fs.mkdirSync(extensions, { recursive: true });
  fs.writeFileSync(path.join(data, 'User/settings.json'), JSON.stringify({ ...quiet, ...job.userSettings }));
  fs.writeFileSync(path.join(data, 'Machine/settings.json'), JSON.stringify(job.machineSettings ?? {}));
  // Its own configuration file stays in the scratch folder too.
  const env = { ...process.env, XDG_CACHE_HOME: path.join(job.scratch, 'cache'), ...job.environment, CODE_SERVER_CONFIG: path.join(job.scratch, 'config.yaml') };
  // Set inside an editor's terminal, it would hand the call to that editor.
  delete env.VSCODE_IPC_HOOK_CLI;
  execFileSync(process.execPath, [entry, ...folders, '--install-extension', job.vsix], { env, stdio: ['ignore', 'ignore', 'inherit'] });

  const trust = job.restricted ? [] : ['--disable-workspace-trust'];
  const child = spawn(
    process.execPath,
    [entry, '--auth', 'none', '--bind-addr', '127.0.0.1:0', ...folders, '--disable-telemetry', '--disable-update-check', ...trust],
    { env, detached: true, stdio: ['ignore', 'pipe', 'pipe'] },
  );
  let log = '';
  const authority = await new Promise((resolve, reject) => {
    const timer = setTimeout(() => reject(new Error(`the workbench did not start:\n${log}`)), 120_000);
    const read = (text) => {
      log += text;
      const address = /listening on http:\/\/(127\.0\.0\.1:\d+)/.exec(log);
      if (address) {
        clearTimeout(timer);
        resolve(address[1]);
      }
    };
    child.stdout.setEncoding('utf8').on('data', read);
    child.stderr.setEncoding('utf8').on('data', read);
    child.on('exit', (code) => reject(new Error(`the workbench ended with ${code}:\n${log}`)));
  });
  return {
    authority,
    log: () => log,
    async stop() {
      const ended = new Promise((resolve) => child.once('exit', resolve));
      // The whole group that was started here: its extension host and file watcher too.
      process.kill(-child.pid, 'SIGTERM');
      await Promise.race([ended, new Promise((resolve) => setTimeout(resolve, 5_000))]);
      try {
        process.kill(-child.pid, 'SIGKILL');
      } catch {
        // Already gone.
      }
    },
  };
}
