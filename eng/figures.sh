#!/usr/bin/env bash
# Draws the figures of the pages and the example report anew. Tests hold docs/figures/*.svg and examples/reports/*.html to these lines, byte for byte.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
mkdir -p docs/figures examples/reports
exec >/dev/null

./run describe examples/garage/fern-saloon.yaml --figure docs/figures/load-states.svg
./run describe examples/garage/fern-saloon.yaml --load "four up with luggage" --modes --figure docs/figures/modes.svg
./run pass examples/garage/fern-saloon.yaml --speed "50 km/h" --load "four up with luggage" --figure docs/figures/pass.svg
./run rule examples/garage/fern-saloon.yaml --load driver --figure docs/figures/map.svg
./run rule examples/garage/fern-saloon.yaml --load driver --rule wheelbase-same-body --figure docs/figures/map-wheelbase.svg
./run compare examples/garage/fern-saloon.yaml examples/garage/fern-saloon-cured.yaml --load "four up with luggage" --figure docs/figures/compare.svg
./run compare examples/garage/fern-saloon.yaml examples/garage/fern-saloon-cured.yaml --speed "20 km/h, 30 km/h, 40 km/h, 50 km/h, 60 km/h, 70 km/h, 80 km/h" --load "four up with luggage" --figure docs/figures/speeds.svg
./run plan examples/garage/fern-saloon.yaml --load driver --change examples/garage/fern-saloon-cured.yaml --figure docs/figures/card.svg
./run plank examples/garage/fern-saloon.yaml --load driver --figure docs/figures/planks.svg
./run film examples/films/grey-saloon-25.yaml examples/films/red-saloon-25.yaml --at "school hump" --figure docs/figures/seen.svg
./run report examples/garage/fern-saloon.yaml examples/garage/fern-saloon-cured.yaml --load "four up with luggage" --parts finding,compare,why,cost --title "Does the cure cure?" --date "1 May 2026" --out examples/reports/fern-saloon-cured.html
