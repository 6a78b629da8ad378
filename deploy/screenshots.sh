#!/usr/bin/env bash
# Makes the pictures of README.md anew, with Chromium, from a demo of its own on ports and a data folder of its own.
# Usage: bash deploy/screenshots.sh         starts the demo, takes the pictures, stops it
#        bash deploy/screenshots.sh URL     takes them from a demo that is up, such as http://127.0.0.1:5080
#   FLEETTREND_TEST_CHROMIUM   Chromium, default /usr/bin/chromium
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
. deploy/require.sh

most_bytes=120000
require_chromium
chromium=${FLEETTREND_TEST_CHROMIUM:-/usr/bin/chromium}
scratch=$(mktemp -d)
demo=

end() {
    if [ -n "$demo" ]; then
        kill -TERM "$demo" 2>/dev/null && wait "$demo" || true # it stops its PostgreSQL
    fi
    rm -rf "$scratch"
}
trap end EXIT

pages=${1:-}
if [ -z "$pages" ]; then
    pages=http://127.0.0.1:5180
    FLEETTREND_DATA=$scratch FLEETTREND_HTTP_ADDRESS=127.0.0.1:5180 FLEETTREND_GRPC_ADDRESS=127.0.0.1:5181 \
        FLEETTREND_WORKER_ADDRESS=127.0.0.1:5182 bash deploy/demo.sh >"$scratch/demo.log" 2>&1 &
    demo=$!
    until grep -aq "The pages stay up" "$scratch/demo.log"; do
        if ! kill -0 "$demo" 2>/dev/null; then
            tail -20 "$scratch/demo.log" >&2
            echo "The demo ended before its pages were up." >&2
            exit 1
        fi
        sleep 2
    done
fi

# shoot NAME HEIGHT PATH
shoot() {
    local picture=deploy/pictures/$1.png
    if ! "$chromium" --headless --no-sandbox --hide-scrollbars --user-data-dir="$scratch/chromium" --window-size="820,$2" \
        --screenshot="$picture" "$pages$3" >"$scratch/chromium.log" 2>&1; then
        tail -5 "$scratch/chromium.log" >&2
        exit 1
    fi
    local bytes
    bytes=$(stat -c %s "$picture")
    echo "$picture: $bytes bytes"
    if [ "$bytes" -gt "$most_bytes" ]; then
        echo "$picture is larger than $most_bytes bytes." >&2
        exit 1
    fi
}

# The aircraft that the first page says to pull in.
first=$(curl -fsS "$pages/")
mark=$(grep -o 'Look list of [A-Z0-9-]*' <<<"$first" | head -1 | cut -d' ' -f4)
mkdir -p deploy/pictures
shoot this-week 700 /
shoot aircraft 760 "/aircraft/$mark"
shoot locations 740 /locations
