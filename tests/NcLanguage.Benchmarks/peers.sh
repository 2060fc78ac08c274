#!/usr/bin/env bash
# Measures our server beside general-purpose ones in one run and writes the table into README.md.
#   peers.sh [--million] [--exe NCLANGUAGE] [--to FILE]
# Installs clangd and tree-sitter's C library (apt), TypeScript 7 and tree-sitter's grammar of C (npm) where they are missing, the latter into
#   NCLANGUAGE_PEERS_CACHE   default ~/.cache/nclanguage-peers
# Without --exe the native executable is published first. Some six minutes, with --million some twenty. Nothing else should run meanwhile.
set -euo pipefail

here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
root=$(cd "$here/../.." && pwd)
cache=${NCLANGUAGE_PEERS_CACHE:-$HOME/.cache/nclanguage-peers}
readme=$root/README.md
exe=
sizes=()
while [ $# -gt 0 ]; do
  case $1 in
    --million) sizes+=(--million) ;;
    --exe) exe=$(realpath "$2"); shift ;;
    --to) readme=$(realpath "$2"); shift ;;
    *) sed -n '2,6s/^# //p' "${BASH_SOURCE[0]}"; exit 2 ;;
  esac
  shift
done

as_root=()
if [ "$(id -u)" -ne 0 ]; then as_root=(sudo); fi
missing=()
for package in clangd libtree-sitter-dev gcc libc6-dev; do
  dpkg-query -W -f '${Status}' "$package" 2>/dev/null | grep -q 'ok installed' || missing+=("$package")
done
if [ ${#missing[@]} -gt 0 ]; then
  echo "apt: ${missing[*]}" >&2
  "${as_root[@]}" apt-get update -qq
  "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "${missing[@]}" >/dev/null
fi

mkdir -p "$cache"
typescript=$cache/node_modules/@typescript/typescript-linux-x64/lib/tsc
grammar=$cache/node_modules/tree-sitter-c/src
if [ ! -x "$typescript" ] || [ ! -f "$grammar/parser.c" ]; then
  echo "npm: typescript, tree-sitter-c" >&2
  npm install --prefix "$cache" --ignore-scripts --no-audit --no-fund --loglevel=error typescript@7.0.2 tree-sitter-c@0.20.7 >&2
fi
parser=$cache/libpeer-c.so
[ -f "$parser" ] || gcc -O2 -shared -fPIC -o "$parser" -I "$grammar" "$grammar/parser.c" -ltree-sitter

if [ -z "$exe" ]; then
  dotnet publish "$root/src/NcLanguage.Cli" -c Release -r linux-x64 -o "$cache/ours" --nologo -v q >&2
  exe=$cache/ours/nclanguage
fi
dotnet build "$here" -c Release --nologo -v q >&2

table=$(mktemp)
trap 'rm -f "$table"' EXIT
{
  echo "One run on $(date +%Y-%m-%d), $(sed -n 's/^model name[^:]*: //p' /proc/cpuinfo | head -1), $(nproc) cores, $(awk '/MemTotal/ { printf "%.0f", $2 / 1048576 }' /proc/meminfo) GB of memory:"
  echo "$(clangd --version | sed -n 's/.*\(clangd version [0-9.]*\).*/\1/p;q'), TypeScript $("$typescript" --version | awk '{ print $2 }'), taking turns with ours. Lines are some 20 to 30 characters long; our programs run with stock,"
  echo 'four clamps and two tools. Median, in brackets the 95th percentile, and × the slowest of our first three programs; the fourth calls a subprogram every 200 holes. Keys (a letter, a new line, a line deleted) and'
  echo '1,000 lines pasted are at the beginning, in the middle and at the end; each is taken back, which counts as well; words that change all that follows lie half a second apart; where the second look at a large program finds nothing else, the first findings were all. The others run as installed, with the pauses they make before they look at a change.'
  echo
  "$here/bin/Release/net10.0/NcLanguage.Benchmarks" peers "$exe" "${sizes[@]}" --clangd "$(command -v clangd)" --typescript "$typescript" --tree-sitter "$parser"
} > "$table"
cat "$table"

awk -v table="$table" '
  /<!-- peers: / { print; print ""; while ((getline line < table) > 0) print line; print ""; skip = 1 }
  /<!-- \/peers -->/ { skip = 0 }
  !skip { print }' "$readme" > "$readme.new"
cat "$readme.new" > "$readme" && rm "$readme.new"
