#!/usr/bin/env bash
# Builds everything and runs every test. Closes with "N passed, N failed"; a test that is skipped, a project that does
# not build or does not end, and a project without tests count as failed.
# Usage: bash deploy/test.sh [PROJECT...]   (part of a test project's name; default: all)
#   FLEETTREND_TEST_POSTGRES=container|local|given   which PostgreSQL the integration tests must use
#   FLEETTREND_TEST_CHROMIUM=PATH                     the browser of the browser tests; default Debian's
#   FLEETTREND_TEST_FILTER=EXPRESSION                only the tests that match, as dotnet test --filter takes it
#   CONFIGURATION=Debug|Release                      default Debug
set -uo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.." || exit 1
. deploy/require.sh

configuration=${CONFIGURATION:-Debug}
project_minutes_max=25
filter=()
[ -z "${FLEETTREND_TEST_FILTER:-}" ] || filter=(--filter "$FLEETTREND_TEST_FILTER")
results=$(mktemp -d)
trap 'rm -rf "$results"' EXIT

passed=0
failed=0
finish() {
    echo
    echo "$passed passed, $failed failed"
    [ "$failed" = 0 ] && [ "$passed" -gt 0 ]
    exit
}
stop_with() {
    echo "$1" >&2
    failed=$((failed + 1))
    finish
}

require_dotnet || stop_with "No .NET SDK."
require_postgres || stop_with "No PostgreSQL server programs."

mapfile -t all < <(find tests -name '*Tests.csproj' -not -path '*/artifacts/*' | sort)
projects=()
for project in "${all[@]}"; do
    [ $# = 0 ] && projects+=("$project")
    for name in "$@"; do
        [[ $(basename "$project" .csproj) == *"$name"* ]] && projects+=("$project")
    done
done
[ ${#projects[@]} -gt 0 ] || stop_with "No test project is called so: $*"
if [[ "${projects[*]}" == *IntegrationTests* ]]; then require_chromium || stop_with "No Chromium."; fi

echo "Building ($configuration)"
started=$SECONDS
built=(FleetTrend.sln)
[ $# = 0 ] || built=("${projects[@]}")
for target in "${built[@]}"; do
    dotnet build "$target" -c "$configuration" -v quiet -nologo </dev/null || stop_with "The build of $target failed."
done
echo "Built in $((SECONDS - started)) s"

# The counters of a .trx file: counter NAME FILE
counter() {
    sed -n "s/.*<Counters [^>]*\\b$1=\"\\([0-9]*\\)\".*/\\1/p" "$2" | head -1
}

number=0
for project in "${projects[@]}"; do
    number=$((number + 1))
    name=$(basename "$project" .csproj)
    echo "[$number/${#projects[@]}] $name"
    started=$SECONDS
    log=$results/$name.log
    trx=$results/$name.trx
    # --no-build: the projects run one after the other and must not compete with a build for the processors.
    timeout --kill-after=30 "${project_minutes_max}m" \
        dotnet test "$project" -c "$configuration" --no-build -nologo "${filter[@]}" \
        --results-directory "$results" --logger "trx;LogFileName=$name.trx" >"$log" 2>&1 </dev/null
    code=$?
    project_passed=0
    project_failed=0
    if [ -s "$trx" ]; then
        total=$(counter total "$trx")
        project_passed=$(counter passed "$trx")
        project_failed=$((total - project_passed)) # not run is not passed
    fi
    if [ "$code" != 0 ] && [ "$project_failed" = 0 ]; then
        project_failed=1
        [ "$code" = 124 ] && echo "  did not end within $project_minutes_max minutes"
    elif [ $((project_passed + project_failed)) = 0 ]; then
        project_failed=1
        echo "  has no tests"
    fi
    grep -E 'Integration tests run on|is not to be had as' "$log" | sed 's/^.*Tests: /  /'
    if [ "$project_failed" != 0 ]; then
        sed 's/^/  | /' "$log" | tail -150
    fi
    echo "  $project_passed passed, $project_failed failed, $((SECONDS - started)) s"
    passed=$((passed + project_passed))
    failed=$((failed + project_failed))
done
finish
