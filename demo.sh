#!/usr/bin/env bash
# The main job on the invented plant: its files in, every measure out. Leaves the project in out/kestrel-bay.plenum.
set -euo pipefail
cd "$(dirname "$0")"
export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1
dotnet build src/Plenum.Cli -c Release --nologo -v quiet
plenum() { dotnet src/Plenum.Cli/bin/Release/net10.0/plenum.dll "$@"; }
project=out/kestrel-bay.plenum
mkdir -p out
rm -f "$project" out/kestrel-bay.plenum-columns

plenum new "$project"
plenum import "$project" samples/kestrel-bay
printf '\n--- What the audit finds\n'
plenum check "$project" | sed -n '1,40p' || true
printf '\n--- The breakdown to level 2\n'
plenum tree "$project" --level 2
printf '\n--- The control accounts\n'
plenum accounts "$project"
printf '\n--- Where it will end\n'
plenum forecast "$project"
printf '\nThe project is %s. Ask it yourself:\n  dotnet src/Plenum.Cli/bin/Release/net10.0/plenum.dll accounts %s --by unit\n' "$project" "$project"
