#!/usr/bin/env bash
# Publishes the program for one system after the other, a folder and an archive each in artifacts/published: eng/publish.sh [SYSTEM …], by themselves linux-x64,
# win-x64 and osx-arm64. For the system of this machine, if it is not Windows, the program in front is the native one (src/Heaveline.Native: wants gcc or, on
# macOS, clang, and the header files of zlib); it cannot be made from elsewhere, so the others get the whole program alone.
# The packages must weigh no more than 40 MB, and licences, notices and the bill of materials lie in each. What follows cars in films is a download of its own,
# the folder "camera" to be put beside the program: OpenCV alone weighs as much as all else, and is there for linux-x64.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
. eng/setup.sh
. eng/systems.sh
out=$PWD/artifacts/published
[ $# -gt 0 ] || set -- $systems
mkdir -p "$out"
for system in "$@"; do
    name=heaveline-$version-$system
    folder=$out/$name
    rm -rf "$folder" "$folder".tar.gz "$folder".zip
    native=()
    [ "$system" != "$here" ] || with_native
    dotnet publish src/Heaveline.Cli -r "$system" "${options[@]}" "${native[@]}" -o "$folder"
    same_packages
    mkdir -p "$folder/examples"
    cp -R examples/garage examples/parts examples/roads "$folder/examples"
    for file in LICENSE THIRD-PARTY-NOTICES.txt FONT-LICENSE.txt bill-of-materials.json; do
        cmp "$folder/$file" "$(source_of $file)"
    done
    case $system in
        win-*) archive=$folder.zip; (cd "$out" && zip -q -r -X "$archive" "$name") ;;
        *) archive=$folder.tar.gz; tar -C "$out" -czf "$archive" "$name" ;;
    esac
    weigh "$archive"
done

case " $* " in *" linux-x64 "*)
    part=$out/heaveline-camera-$version-linux-x64
    rm -rf "$part" "$part".tar.gz
    dotnet publish src/Heaveline.Camera -r linux-x64 --self-contained false "${options[@]}" -o "$part/camera"
    mv "$part/camera/Heaveline.Camera" "$part/camera/heaveline-camera"
    cp LICENSE src/Heaveline.Camera/THIRD-PARTY-NOTICES.txt eng/licences/Apache-2.0.txt "$part/camera"
    tar -C "$part" -czf "$part".tar.gz camera
    printf '%s: %d MB\n' "${part#"$PWD/"}.tar.gz" $(($(wc -c <"$part".tar.gz) / 1000000)) ;;
esac
