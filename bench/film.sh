#!/usr/bin/env bash
# Follows a car through five seconds of 1080p at 60 frames a second beside the decoding of the same film alone, the least of the rounds: bench/film.sh [ROUNDS].
# Processor time of everything that was started, and time on the clock. Wants the camera part built (dotnet build src/Heaveline.Camera -c Release) and FFmpeg.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
rounds=${1:-5}
camera=src/Heaveline.Camera/bin/Release/net10.0/Heaveline.Camera
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
"$camera" draw examples/garage/fern-saloon.yaml --to "$work/pass.mp4" >"$work/marks.json"
# One pass after the other: the car leaves the picture and is found anew.
ffmpeg -nostdin -y -loglevel error -stream_loop 9 -i "$work/pass.mp4" -t 5 -c copy "$work/film.mp4"
numbers() { sed -nE "s/.*\"$1\":\[([^]]*)\].*/\1/p" "$work/marks.json"; }
marks=(--at "$(numbers at)" --front "$(numbers front)" --rear "$(numbers rear)" --box "$(numbers box)")

# least COMMAND …: least processor time and time on the clock of the rounds, s.
least() {
    TIMEFORMAT='%U %S %R'
    for _ in $(seq "$rounds"); do { time "$@" >"$work/out" 2>"$work/said"; } 2>&1; done | awk '
        NR == 1 || $1 + $2 < cpu { cpu = $1 + $2 } NR == 1 || $3 < clock { clock = $3 } END { print cpu, clock }'
}
read -r decode_cpu decode_clock < <(least ffmpeg -nostdin -loglevel error -i "$work/film.mp4" -vf format=gray -f rawvideo -)
read -r follow_cpu follow_clock < <(least "$camera" track "$work/film.mp4" "${marks[@]}")
grep -q '^heaveline film track' "$work/out"
frames=$(ffprobe -v error -select_streams v:0 -show_entries stream=nb_frames -of csv=p=0 "$work/film.mp4")
awk -v f="$frames" -v dc="$decode_cpu" -v dt="$decode_clock" -v fc="$follow_cpu" -v ft="$follow_clock" 'BEGIN {
    printf "| %d frames | processor, s | clock, s |\n|---|--:|--:|\n", f
    printf "| decoded alone | %.2f | %.2f |\n| followed | %.2f | %.2f |\n| ratio | %.1f | %.1f |\n", dc, dt, fc, ft, fc / dc, ft / dt }'
