#!/usr/bin/env bash
# Builds the program twice, from a clone and from an archive without .git, in folders of different names, and compares what is ours, symbols included.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
. eng/setup.sh
trial=$(mktemp -d)
trap 'rm -rf "$trial"' EXIT
git clone -q . "$trial/clone"
mkdir -p "$trial/another/archive"
git archive HEAD | tar -x -C "$trial/another/archive"
for folder in clone another/archive; do
    dotnet build "$trial/$folder/src/Heaveline.Cli" -c Release -v q -nologo -p:RunAnalyzers=false >"$trial/log" 2>&1 || { cat "$trial/log"; exit 3; }
done
differs=0
for project in Heaveline Heaveline.Files Heaveline.Press Heaveline.Web Heaveline.Cli; do
    for ending in dll pdb; do
        file=src/Heaveline.Cli/bin/Release/net10.0/$project.$ending
        cmp "$trial/clone/$file" "$trial/another/archive/$file" || differs=1
    done
done
[ $differs = 0 ] && echo "same-bytes: clone and archive make the same five assemblies and symbols."
