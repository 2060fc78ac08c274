#!/usr/bin/env bash
# install-workbench.sh FOLDER: the VS Code workbench and the browser driver, under FOLDER/workbench-VERSION.
# The steps stand in place of code-server's own post-install script, which downloads prebuilt binaries.
set -euo pipefail

code_server=4.100.3
playwright=1.52.0
folder=${1:?usage: install-workbench.sh FOLDER}
target=$folder/workbench-$code_server-$playwright
if [ -f "$target/.complete" ]; then exit 0; fi

# Built beside and renamed at the end, so that an interrupted install is never taken for a whole one.
work=$target.partial
rm -rf "$work" "$target"
mkdir -p "$work"
cd "$work"
export npm_config_yes=true npm_config_audit=false npm_config_fund=false npm_config_loglevel=error
# Node's headers: Debian's packages have them under /usr; without this node-gyp would download them.
prefix=$(dirname "$(dirname "$(readlink -f "$(command -v node)")")")
export npm_config_nodedir=$prefix

echo '{ "private": true }' > package.json
echo "npm: code-server $code_server, playwright-core $playwright"
npm install --ignore-scripts "code-server@$code_server" "playwright-core@$playwright"
npm_config_build_from_source=true npm rebuild argon2

cd node_modules/code-server/lib/vscode
npm install --ignore-scripts --omit=dev
mkdir -p node_modules/@vscode/ripgrep/bin
ln -sfn "$(command -v rg)" node_modules/@vscode/ripgrep/bin/rg
npm rebuild @vscode/spdlog node-pty native-watchdog
ln -sfn node_modules node_modules.asar
ln -sfn code-server bin/remote-cli/code-linux.sh
ln -sfn browser.sh bin/helpers/browser-linux.sh
(cd extensions && npm install --ignore-scripts --omit=dev)

cd "$folder"
touch "$work/.complete"
mv "$work" "$target"
