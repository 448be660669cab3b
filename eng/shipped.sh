#!/usr/bin/env bash
# Writes what goes out beside every program and package: THIRD-PARTY-NOTICES.txt and bill-of-materials.json (CycloneDX). Run it after a package was added or
# got another version; the packages must be restored. The tool that makes the bill is named in .config/dotnet-tools.json.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
. eng/setup.sh
packages=${NUGET_PACKAGES:-$HOME/.nuget/packages}
lock=src/Heaveline.Cli/packages.lock.json
bill=bill-of-materials.json
notices=THIRD-PARTY-NOTICES.txt

dotnet restore src/Heaveline.Cli -v q -nologo
dotnet tool restore >/dev/null
dotnet dotnet-CycloneDX src/Heaveline.Cli/Heaveline.Cli.csproj -o . -fn $bill -F UnsafeJson -ns -dpr -ed -sn heaveline >/dev/null
# The same packages make the same bytes: no time of day.
sed -i '/^ *"timestamp": /d' $bill

# NAME VERSION of every package that goes out, from the lock file.
shipped() {
    awk -F'"' '/^      "/ { name = $2 } /"type": "Project"/ { name = "" } /"resolved"/ { if (name != "") print name, $4 }' $lock | LC_ALL=C sort -f
}
line() { printf '%s\n' "--------------------------------------------------------------------------------"; }
# field NAME FILE: an element of a package's description.
field() { tr '\r\n' '  ' <"$2" | sed -nE "s/.*<$1[^>]*>([^<]*)<\/$1>.*/\1/p"; }
mit='Permission is hereby granted, free of charge, to any person obtaining a copy of this software and associated documentation files (the
"Software"), to deal in the Software without restriction, including without limitation the rights to use, copy, modify, merge, publish,
distribute, sublicense, and/or sell copies of the Software, and to permit persons to whom the Software is furnished to do so, subject to the
following conditions:

The above copyright notice and this permission notice shall be included in all copies or substantial portions of the Software.

THE SOFTWARE IS PROVIDED "AS IS", WITHOUT WARRANTY OF ANY KIND, EXPRESS OR IMPLIED, INCLUDING BUT NOT LIMITED TO THE WARRANTIES OF
MERCHANTABILITY, FITNESS FOR A PARTICULAR PURPOSE AND NONINFRINGEMENT. IN NO EVENT SHALL THE AUTHORS OR COPYRIGHT HOLDERS BE LIABLE FOR ANY
CLAIM, DAMAGES OR OTHER LIABILITY, WHETHER IN AN ACTION OF CONTRACT, TORT OR OTHERWISE, ARISING FROM, OUT OF OR IN CONNECTION WITH THE
SOFTWARE OR THE USE OR OTHER DEALINGS IN THE SOFTWARE.'
{
    echo "Heaveline goes out together with the works below; each stands under its own licence. What is said of a package is taken from the package itself."
    echo "The letters of figures and pages are HeavelineSans, made from Inter: FONT-LICENSE.txt (SIL Open Font License 1.1)."
    shipped | while read -r name version; do
        folder=$packages/$(tr '[:upper:]' '[:lower:]' <<<"$name")/$version
        about=$(ls "$folder"/*.nuspec)
        licence=$(field license "$about")
        rights=$(field copyright "$about")
        echo; line; echo "$name $version"; line
        echo "Authors: $(field authors "$about")"
        [ -z "$rights" ] || echo "$rights"
        echo "Licence: $licence"
        echo
        case $licence in
            MIT) echo "$mit" ;;
            Apache-2.0) cat eng/licences/Apache-2.0.txt ;;
            BSD-3-Clause | PostgreSQL) cat "eng/licences/$licence.txt" ;;
            # Its own file, and beside it those of what it holds.
            LICENSE.txt) cat "$folder"/LICENSE*.txt ;;
            *) echo "shipped: the licence '$licence' of $name has no text here." >&2; exit 1 ;;
        esac
    done
    echo; line; echo "The native libraries inside SkiaSharp and HarfBuzzSharp"; line; echo
    cat "$packages"/skiasharp.nativeassets.linux.nodependencies/"$(shipped | sed -n 's/^SkiaSharp.NativeAssets.Linux.NoDependencies //p')"/THIRD-PARTY-NOTICES.txt
} | tr -d '\r' | sed 's/[[:space:]]*$//' >$notices
wc -l $notices $bill
