#!/usr/bin/env bash
# Holds the native program to the other: the same command lines go to heaveline and to Heaveline.Cli of one published folder (eng/publish.sh), each in a folder of
# its own, and what they print, how they end and what they write must be equal, byte for byte. Then what is the native one's own: that serve becomes the program
# with the pages, which hears its signals, and that it says so when that one is missing or of another version. With qemu-x86_64 on the path, an old processor too.
# Not part of ./test: the native program is made by a compiler that a fresh machine has not.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
. eng/setup.sh
. eng/systems.sh
folder=$PWD/artifacts/published/heaveline-$version-$here
[ "${1:-}" = --again ] || eng/publish.sh "$here"
trial=$(mktemp -d)
trap 'rm -rf "$trial"' EXIT
failed=0
wrong() { echo "native: $*" >&2; failed=$((failed + 1)); }

# Command lines: those of the list, and for every example car what is kept of it.
lines() {
    grep -v '^#' eng/native-lines.txt | grep .
    local car pass
    for car in examples/garage/*.yaml; do
        echo "describe $car --json"
        pass=$(sed -nE "s|.*\[\"$(basename "$car" .yaml)\"\] = \"(.*)\",|\1|p" tests/Heaveline.Tests/Cli/KeptAnswers.cs | sed 's|\\"|"|g')
        [ -n "$pass" ] || wrong "no road is kept for $car"
        echo "pass $car $pass --json"
    done
}

# The drives of Larch Lane, which are made from their seeds.
dotnet run -c Release --project bench/Heaveline.Bench -- lane "$trial/larch-lane"

for side in native whole; do
    mkdir "$trial/$side"
    cp -R examples docs "$trial/larch-lane" "$trial/$side"
    (
        cd "$trial/$side"
        sed -E '0,/wheelbase: .*/s//wheelbase: 2.6/' examples/garage/fern-saloon.yaml >bad-unit.yaml
        sed -E '0,/wheelbase:/s//wheelbaes:/' examples/garage/fern-saloon.yaml >bad-key.yaml
        printf 'car: [one, {two: "three\n' >bad-yaml.yaml
        printf 'car: \377\376\000\n' >bad-bytes.yaml
    )
done
count=0
while read -r line; do
    eval "words=($line)"
    for side in native whole; do
        program=$folder/heaveline
        [ $side = native ] || program=$folder/Heaveline.Cli
        rc=0
        # Both in a folder of the same name, since words may hold it.
        mv "$trial/$side" "$trial/here"
        (cd "$trial/here" && timeout 120 "$program" "${words[@]}" >said 2>remarks </dev/null) || rc=$?
        mv "$trial/here" "$trial/$side"
        echo "$rc" >"$trial/$side/rc"
        [ "$rc" -le 3 ] || wrong "'$line' ended in $rc on the $side program"
    done
    if ! diff -r "$trial/native" "$trial/whole" >"$trial/differs"; then
        wrong "'$line' differs:"
        head -c 2000 "$trial/differs" >&2
        rm -rf "$trial/whole"
        cp -R "$trial/native" "$trial/whole"
    fi
    count=$((count + 1))
done < <(lines)
echo "native: $count command lines went to both programs."

# The pages: started through the native program, asked for, ended by a signal.
serves() {
    local ending=$1 pid address rc=0
    shift
    "$folder/heaveline" serve "$trial/native/examples/garage" --port 0 "$@" >"$trial/served" 2>&1 &
    pid=$!
    for _ in $(seq 100); do grep -q '^Stop with' "$trial/served" && break; sleep 0.2; done
    address=$(sed -nE 's/^The pages are at //p' "$trial/served" | sed s/0\.0\.0\.0/127.0.0.1/)
    [ "$(basename "$(readlink "/proc/$pid/exe" 2>/dev/null || echo Heaveline.Cli)")" != heaveline ] || wrong "serve $* is still the native program"
    rm -f "$trial/page"
    curl -sSkL -o "$trial/page" "$address" 2>>"$trial/served" || true
    grep -qi '<html' "$trial/page" || { wrong "serve $* gave no page"; cat "$trial/served" >&2; }
    kill -s "$ending" "$pid"
    wait "$pid" || rc=$?
    [ "$rc" = 0 ] || wrong "serve $* ended in $rc after SIG$ending"
}
serves TERM
serves TERM --tls
grep -q 'SHA-256 fingerprint' "$trial/served" || wrong "serve --tls prints no fingerprint"
serves TERM --open-to 0.0.0.0
grep -q 'after typing this code' "$trial/served" || wrong "serve --open-to prints no code"

mkdir "$trial/alone"
cp "$folder/heaveline" "$trial/alone"
"$trial/alone/heaveline" serve >"$trial/said" 2>&1 && wrong "serve without the program with the pages succeeds" || [ $? = 3 ] || wrong "it ends in another code than 3"
grep -q 'is not beside this one' "$trial/said" || wrong "a missing program with the pages is not told"
cp "$folder/Heaveline.Cli" "$trial/alone"
cp "$folder/YamlDotNet.dll" "$trial/alone/Heaveline.Cli.dll"
"$trial/alone/heaveline" serve >"$trial/said" 2>&1 && wrong "serve with another version succeeds" || [ $? = 3 ] || wrong "it ends in another code than 3"
grep -q "unpack all of Heaveline anew" "$trial/said" || wrong "another version is not told"

if [ "$here" = linux-x64 ] && command -v qemu-x86_64 >/dev/null; then
    [ "$(qemu-x86_64 -cpu Nehalem "$folder/heaveline" describe examples/garage/fern-saloon.yaml 2>&1 | cksum)" = \
        "$("$folder/Heaveline.Cli" describe examples/garage/fern-saloon.yaml 2>&1 | cksum)" ] || wrong "a processor without AVX2 is not served"
    echo "native: a processor without AVX2 was tried."
else
    echo "native: a processor without AVX2 was not tried (no qemu-x86_64)."
fi
[ $failed = 0 ] && echo "native: all equal."
