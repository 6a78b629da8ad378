#!/usr/bin/env bash
# Installs R where it is missing, then runs the benchmarks. Arguments go to the program: [FOLDER [WORD]].
set -euo pipefail
cd "$(dirname "$0")"
for package in r-base-core r-cran-survival r-cran-npsurv; do
  if ! dpkg -s "$package" >/dev/null 2>&1; then
    echo "installing $package"
    apt-get install -y -q "$package"
  fi
done
exec dotnet run -c Release -- "$@"
