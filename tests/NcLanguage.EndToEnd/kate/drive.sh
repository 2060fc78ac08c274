#!/bin/bash
# drive.sh FILE LINE PICTURE: opens a program in Kate on a screen of its own (xvfb), takes a picture every two seconds until the
# ground of lines with an error shows, and prints how many points have which colour: "COUNT #RRGGBB" each line. It judges nothing.
#   started as: xvfb-run -a … dbus-run-session -- bash drive.sh FILE LINE PICTURE
set -u
export QT_QPA_PLATFORM=xcb LANG=C.UTF-8
mkdir -p "$XDG_RUNTIME_DIR" && chmod 700 "$XDG_RUNTIME_DIR"
openbox & windows=$!
kate -n "$1" --line "$2" > "$HOME/kate.log" 2>&1 & kate=$!
colours() { convert "$3" -format %c histogram:info: | sed -nE 's/^ *([0-9]+): .*(#[0-9A-F]{6}).*/\1 \2/p'; }
for _ in $(seq 30); do
  sleep 2
  import -window root "$3"
  # Kate draws lines with an error on this ground in its light colours.
  if colours "$@" | awk '$2 == "#FFE5E5" && $1 > 1000 { found = 1 } END { exit !found }'; then break; fi
done
colours "$@"
kill $kate $windows
