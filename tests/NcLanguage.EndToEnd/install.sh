#!/usr/bin/env bash
# Installs what the end-to-end tests need: Neovim, Vim with ALE, Emacs with eglot, Kate on a screen of its own, the shells zsh and fish, Chromium and the tools that read PDF
# (poppler-utils) from Debian, the VS Code workbench (code-server) from npm, built from its sources where a plain install would
# download binaries from elsewhere, and the linker and the zlib that publishing as Native AOT takes (g++, binutils, zlib1g-dev).
# For Debian 12 with Node 20 and root (or sudo). Safe to run again: what is there already is left alone.
#   NCLANGUAGE_E2E_CACHE   folder for the workbench and its driver (default ~/.cache/nclanguage-e2e)
set -euo pipefail

here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
cache=${NCLANGUAGE_E2E_CACHE:-$HOME/.cache/nclanguage-e2e}
root=()
if [ "$(id -u)" -ne 0 ]; then root=(sudo); fi

packages=(neovim vim vim-ale emacs-nox elpa-eglot kate kate5-data xvfb xauth dbus dbus-daemon openbox imagemagick chromium poppler-utils fonts-dejavu-core ripgrep zsh fish python3 make g++ binutils zlib1g-dev)
missing=()
for package in "${packages[@]}"; do
  dpkg-query -W -f '${Status}' "$package" 2>/dev/null | grep -q 'ok installed' || missing+=("$package")
done
if [ ${#missing[@]} -gt 0 ]; then
  echo "apt: ${missing[*]}"
  "${root[@]}" apt-get update -qq
  "${root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "${missing[@]}" >/dev/null
fi

"$here/code-server/install-workbench.sh" "$cache"

# What packages the VS Code extension and checks the grammar, exactly as locked.
client=$here/../../editor-clients/vscode
if [ ! "$client/node_modules/.package-lock.json" -nt "$client/package-lock.json" ]; then
  echo "npm: editor-clients/vscode"
  (cd "$client" && npm ci --ignore-scripts --no-audit --no-fund --loglevel=error)
  touch "$client/node_modules/.package-lock.json"
fi
echo "editors ready in $cache"
