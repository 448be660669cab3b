#!/usr/bin/env bash
# Writes what the assemblies offer into PublicAPI.Unshipped.txt, to be read in review. Run it after adding, changing or removing a public member.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
for project in Heaveline; do
    list=src/$project/PublicAPI.Unshipped.txt
    printf '#nullable enable\n' >"$list"
    found=$(dotnet build "src/$project" --no-incremental -nologo -v q -p:TreatWarningsAsErrors=false -p:WarningsNotAsErrors=RS0016 2>&1 |
        sed -nE "s/.*RS0016: Symbol '(.*)' is not part of the declared public API.*/\1/p" | LC_ALL=C sort -u)
    printf '%s\n' "$found" >>"$list"
done
wc -l src/*/PublicAPI.Unshipped.txt
