#!/usr/bin/env bash
# Publishes the program, the runtime and all compiled ahead into one image, and times whole processes from start to result: heaveline describe of one car at all its loads, 21 runs, median.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
out=${1:-artifacts/heaveline}
dotnet publish src/Heaveline.Cli -c Release -o "$out" -v q -nologo -p:PublishReadyToRun=true -p:PublishReadyToRunComposite=true -r linux-x64 --self-contained true -p:RestoreLockedMode=false -p:NuGetLockFilePath=obj/publish.lock.json
car=examples/garage/fern-saloon.yaml
"$out/heaveline" describe "$car" >/dev/null
for command in "describe $car" "pass $car"; do
    times=()
    for _ in $(seq 21); do
        from=$(date +%s%N)
        "$out/heaveline" $command >/dev/null
        times+=($((($(date +%s%N) - from) / 1000)))
    done
    printf 'heaveline %s: median %s µs of 21 whole processes\n' "$command" "$(printf '%s\n' "${times[@]}" | sort -n | sed -n 11p)"
done
