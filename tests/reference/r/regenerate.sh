#!/usr/bin/env bash
# Makes every reference case again from its R script. With --check it fails where the result differs from the committed files.
# Needs Debian's r-base-core, r-cran-survival, r-cran-kmsurv, r-cran-mass and r-cran-epitools.
set -euo pipefail
cd "$(dirname "$0")"
for script in *.R; do
  case "$script" in
    golden.R|*_functions.R) ;; # sourced by the others
    *) echo "== $script"; Rscript --vanilla "$script" ;;
  esac
done
if [ "${1:-}" = --check ]; then
  changed=$(git status --porcelain -- ..)
  if [ -n "$changed" ]; then
    echo "The regenerated reference files differ from the committed ones:" >&2
    echo "$changed" >&2
    git --no-pager diff --stat -- .. >&2
    exit 1
  fi
  echo "Reference files equal the committed ones."
fi
