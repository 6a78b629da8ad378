#!/usr/bin/env bash
# Shows the whole product on an invented school: starts it, pushes three years of synthetic records over gRPC, computes
# trends, writes the weekly report's mail, and says what was planted and what was found.
# Usage: bash deploy/demo.sh [--once] [OPTION...]
#   --once   stop everything and end after printing planted against found; without it the pages stay up until Ctrl-C
#   others   go to "fleettrend demo" as they are
#   FLEETTREND_DATA   data folder, default data/demo in this tree
set -euo pipefail
caller=$PWD
cd "$(dirname "${BASH_SOURCE[0]}")/.."
. deploy/require.sh

started=$SECONDS
say() { echo "[$((SECONDS - started)) s] $*"; }

require_dotnet
[ -n "${FLEETTREND_DATABASE:-}" ] || require_postgres

say "Building (Release); the first time also fetches packages"
dotnet build src/FleetTrend.Cli -c Release -v quiet -nologo </dev/null
say "Built"

data=${FLEETTREND_DATA:-$PWD/data/demo}
case $data in /*) ;; *) data=$caller/$data ;; esac
mkdir -p "$data"
export FLEETTREND_DATA=$data

# exec: signals reach the program itself, which stops its PostgreSQL on Ctrl-C and SIGTERM.
exec dotnet artifacts/bin/FleetTrend.Cli/release/fleettrend.dll demo "$@"
