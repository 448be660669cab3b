#!/usr/bin/env bash
# Builds the program twice, from a clone and from an archive without .git, in folders of different names, and compares what is ours, symbols included.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
. eng/setup.sh
trial=$(mktemp -d)
trap 'rm -rf "$trial"' EXIT
built() {
    dotnet build "$trial/$1/src/Heaveline.Cli" -c Release -v q -nologo -p:RunAnalyzers=false >"$trial/log" 2>&1 || { cat "$trial/log"; exit 3; }
    mv "$trial/$1/src/Heaveline.Cli/bin/Release/net10.0" "$trial/$2"
}
git clone -q . "$trial/source"
built source clone
mkdir "$trial/another folder"
git archive HEAD | tar -x -C "$trial/another folder"
built "another folder" archive
differs=0
for project in Heaveline Heaveline.Files Heaveline.Press Heaveline.Web Heaveline.Cli; do
    for ending in dll pdb; do
        cmp "$trial/clone/$project.$ending" "$trial/archive/$project.$ending" || differs=1
    done
done
[ $differs = 0 ] && echo "same-bytes: clone and archive, in folders of different names, make the same five assemblies and symbols."
