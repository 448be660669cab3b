#!/usr/bin/env bash
# Times whole processes from start to result, 21 in turn of each program and command, median: the native program and the whole one of a published folder
# (eng/publish.sh makes it, if it is not there), and ./run, which looks first whether anything has changed. Says the machine and its load.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
. eng/systems.sh
folder=artifacts/published/heaveline-$version-$here
[ -x "$folder/heaveline" ] || eng/publish.sh "$here" >&2
car=examples/garage/fern-saloon.yaml
./run --version >/dev/null
echo "$(date +%F), $(nproc) cores, $(sed -nE 's/^model name.*: //p' /proc/cpuinfo | head -1), load $(cut -d' ' -f1-3 /proc/loadavg)"
echo
echo "| command | native, ms | whole, ms | ./run, ms |"
echo "|---|--:|--:|--:|"
for command in "--version" "describe $car" "pass $car" "rule $car --load driver"; do
    rm -f artifacts/startup.*
    for _ in $(seq 21); do
        for program in "$folder/heaveline" "$folder/Heaveline.Cli" ./run; do
            from=$(date +%s%N)
            "$program" $command >/dev/null
            echo $((($(date +%s%N) - from) / 1000)) >>"artifacts/startup.${program##*/}"
        done
    done
    printf '| %s |' "${command/"$car"/CAR}"
    for program in heaveline Heaveline.Cli run; do
        sort -n "artifacts/startup.$program" | awk 'NR == 11 { printf " %.1f |", $1 / 1000 }'
    done
    echo
done
rm -f artifacts/startup.*
echo
echo "load at the end: $(cut -d' ' -f1-3 /proc/loadavg)"
