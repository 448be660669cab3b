#!/usr/bin/env bash
# Builds the program twice, from a clone and from an archive without .git, and compares what is ours, symbols included. In one folder after the other:
# what the compiler of pages writes holds the full path of each page, which no map of paths reaches, so Heaveline.Web alone depends on the folder's name.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
. eng/setup.sh
trial=$(mktemp -d)
trap 'rm -rf "$trial"' EXIT
built() {
    dotnet build "$trial/source/src/Heaveline.Cli" -c Release -v q -nologo -p:RunAnalyzers=false >"$trial/log" 2>&1 || { cat "$trial/log"; exit 3; }
    mv "$trial/source/src/Heaveline.Cli/bin/Release/net10.0" "$trial/$1"
    rm -rf "$trial/source"
}
git clone -q . "$trial/source"
built clone
mkdir "$trial/source"
git archive HEAD | tar -x -C "$trial/source"
built archive
differs=0
for project in Heaveline Heaveline.Files Heaveline.Press Heaveline.Web Heaveline.Cli; do
    for ending in dll pdb; do
        cmp "$trial/clone/$project.$ending" "$trial/archive/$project.$ending" || differs=1
    done
done
[ $differs = 0 ] && echo "same-bytes: clone and archive make the same five assemblies and symbols."
