#!/usr/bin/env bash
# Installs R where it is missing, then runs the benchmarks. Arguments go to the program: [FOLDER [WORD]].
set -euo pipefail
cd "$(dirname "$0")"
missing=()
for package in r-base-core r-cran-survival r-cran-npsurv; do
  dpkg -s "$package" >/dev/null 2>&1 || missing+=("$package")
done
if [ ${#missing[@]} -gt 0 ]; then
  echo "installing ${missing[*]}"
  apt-get update -q # a stale list names versions that the archive no longer holds
  apt-get install -y -q "${missing[@]}"
fi
exec dotnet run -c Release -- "$@"
