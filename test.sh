#!/usr/bin/env bash
# Builds everything, checks the format, runs all tests. Prints as its last line: N passed, N failed (, N skipped).
# The tests of the map need Node.js 20 or later, those of the pages a Chromium: both are installed from the system's packages where that is
# allowed.
set -uo pipefail
cd "$(dirname "$0")"
export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1

step() {
  printf '== %s\n' "$1"
  shift
  "$@" || { printf '%s failed\n0 passed, 1 failed\n' "$*"; exit 1; }
}

# name of the command, then names of the packages that bring it
bring() {
  local command=$1
  shift
  if ! command -v "$command" >/dev/null && command -v apt-get >/dev/null && [ "$(id -u)" -eq 0 ]; then
    printf '== installing %s\n' "$*"
    (apt-get update -q && DEBIAN_FRONTEND=noninteractive apt-get install -y -q --no-install-recommends "$@") >/dev/null
  fi
}
bring chromium chromium
bring npm nodejs npm

step "tools" dotnet tool restore
step "format" dotnet csharpier check .
step "build" dotnet build Plenum.slnx -c Release --nologo -v quiet

printf '== tests\n'
rm -rf TestResults
dotnet test --solution Plenum.slnx -c Release --no-build --no-ansi --report-trx --results-directory TestResults "$@"
rc=$?
counts=$(
  grep -ho '<Counters [^>]*' TestResults/*.trx 2>/dev/null |
    awk '{ for (i = 2; i <= NF; i++) { split($i, a, /="|"/); n[a[1]] += a[2] } }
         END { printf "%d %d %d", n["passed"], n["failed"] + n["error"] + n["timeout"] + n["aborted"], n["notExecuted"] }'
)
read -r passed failed skipped <<<"${counts:-0 0 0}"
if [ "$rc" -ne 0 ] && [ "$failed" -eq 0 ]; then failed=1; fi

printf '== map\n'
if command -v npm >/dev/null; then
  cd src/Plenum.Web/map-tests || exit 1
  map=$(npm ci --ignore-scripts --no-audit --no-fund 2>&1 && npm run -s check 2>&1 && npm test 2>&1)
  maprc=$?
  cd ../../..
  mappassed=$(awk '/^(#|ℹ) pass /{print $3}' <<<"$map")
  mapfailed=$(awk '/^(#|ℹ) fail /{print $3}' <<<"$map")
  if [ "$maprc" -ne 0 ]; then
    printf '%s\n' "$map"
    rc=1
    [ "${mapfailed:-0}" -gt 0 ] || mapfailed=1
  fi
  printf 'map: %d passed, %d failed\n' "${mappassed:-0}" "${mapfailed:-0}"
  passed=$((passed + ${mappassed:-0}))
  failed=$((failed + ${mapfailed:-0}))
else
  printf 'Node.js is not here and cannot be installed: the tests of the map are skipped.\n'
  skipped=$((skipped + 1))
fi
if [ "${CI:-}" = true ] && [ "$skipped" -gt 0 ]; then
  printf 'Under CI no test may be skipped.\n'
  rc=1
fi
if [ "$skipped" -gt 0 ]; then
  printf '%d passed, %d failed, %d skipped\n' "$passed" "$failed" "$skipped"
else
  printf '%d passed, %d failed\n' "$passed" "$failed"
fi
[ "$rc" -eq 0 ] && [ "$failed" -eq 0 ] && [ "$passed" -gt 0 ]
