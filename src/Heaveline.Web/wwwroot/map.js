// Map panels: bands between levels as nested outlines, so that no seam shows between them, lines with their numbers in place, hatching.

import { ContourField } from "./contours.js";
import { settle } from "./names.js";
import { zoneKind } from "./plot.js";
import { even, extremes, print } from "./scales.js";
import { put, round, say, wide } from "./svg.js";

let drawn = 0; // patterns are named after the map they belong to

/** Levels in steps of 1, 2 or 5 times a power of ten, counted from the middle. */
export function levelsOf(low, high, middle, most = 10) {
    const zero = middle ?? 0;
    return even(low - zero, high - zero, most).map(step => Number((zero + step).toPrecision(12))).filter(level => level > low && level < high);
}

/**
 * How the bands between some levels are shaded: from −1, the coolest, over 0 at the middle to 1, the warmest; a share from 0 to 1 where there is no
 * middle.
 */
export function shadesOf(levels, middle) {
    const bands = levels.length + 1;
    if (middle === null || middle === undefined) return Array.from({ length: bands }, (_, i) => bands > 1 ? i / (bands - 1) : 0);
    const below = levels.filter(level => level <= middle + 1e-9).length;
    // As deep on one side as on the other for the same number of levels.
    const most = Math.max(1, below, bands - below);
    return Array.from({ length: bands }, (_, i) => (i < below ? i - below : i - below + 1) / most);
}

const colour = (shade, diverges) =>
    `color-mix(in srgb, var(--map-${diverges && shade > 0 ? "warm" : "cool"}) ${round(100 * Math.abs(shade))}%, var(--map-middle))`;

/** What a map is drawn from: levels that its values cross, their shades, its field. */
export function prepare(panel) {
    const { grid } = panel, [low, high] = extremes(grid.values);
    panel.own = panel.marks.find(mark => mark.isHere)?.y ?? null;
    const given = panel.levels ?? [];
    panel.extremes = [low, high];
    // The middle stays among the levels where all values lie on one side of it.
    const chosen = () => [...new Set([...levelsOf(low, high, panel.middle), ...(panel.middle === null ? [] : [panel.middle])])].sort((a, b) => a - b);
    panel.cuts = !Number.isFinite(low) ? [] : given.length > 0 ? given : chosen();
    panel.shades = shadesOf(panel.cuts, panel.middle);
    panel.zoned = (panel.zones ?? []).map(zone => ({ ...zone, inside: unrun(zone.runs, grid.values.length) }));
    panel.missing = grid.values.some((value, n) => Number.isNaN(value) && !panel.zoned.some(zone => zone.inside[n]));
}

// Lengths of runs, outside first.
function unrun(runs, length) {
    const inside = new Float32Array(length);
    let at = 0;
    runs.forEach((run, k) => { inside.fill(k % 2, at, at + run); at += run; });
    return inside;
}

/** Draws a map's ground: shades, hatching, lines and their numbers; the rooms of the numbers are taken. */
export function drawMap(svg, panel, picture, taken) {
    const mine = `map-${++drawn}`, { grid } = panel, x = panel.x.scale, y = panel.y.scale;
    patterns(svg, mine);
    const xs = Array.from(grid.xs, x.at), ys = Array.from(grid.ys, y.at), field = new ContourField(xs, ys, grid.values);
    const box = { x: round(picture.left), y: round(panel.top), width: round(picture.right - picture.left), height: round(panel.height) };
    const ground = put(svg, "g", { class: "ground" });
    if (panel.missing) put(ground, "rect", { ...box, fill: `url(#${mine}-missing)` });
    for (const zone of panel.zoned) {
        const d = pathOf(new ContourField(xs, ys, zone.inside).regions(1e-3)); // as far as the nodes around that have a value
        put(ground, "path", { d, class: "zone-ground" });
        put(ground, "path", { d, fill: `url(#${mine}-${zoneKind(zone.isBetter)})` });
    }
    const diverges = panel.middle !== null && panel.middle !== undefined;
    [-Infinity, ...panel.cuts].forEach((level, k) => {
        if (panel.cuts[k] < panel.extremes[0] || level > panel.extremes[1]) return;
        put(ground, "path", { d: pathOf(field.regions(level)), "fill-rule": "evenodd" }).style.fill = colour(panel.shades[k], diverges);
    });
    // Fine rules over the worse side: it reads in grey.
    if (diverges) put(ground, "path", { d: pathOf(field.regions(panel.middle)), fill: `url(#${mine}-warm)`, "fill-rule": "evenodd" });
    if (panel.hatch) {
        const d = pathOf([...field.regions(panel.hatch.from), ...field.regions(panel.hatch.to)]);
        put(ground, "path", { d, fill: `url(#${mine}-hatch)`, "fill-rule": "evenodd", class: "same" });
    }
    const levels = put(svg, "g", { class: "levels" }), numbers = [];
    for (const level of panel.cuts) {
        const runs = field.lines(level), isMiddle = diverges && Math.abs(level - panel.middle) < 1e-9 * Math.max(1, Math.abs(level));
        if (runs.length === 0) continue;
        const kind = isMiddle ? "level middle" : diverges && level < panel.middle ? "level below" : "level";
        put(levels, "path", { d: pathOf(runs, false), class: kind });
        for (const run of runs.sort((a, b) => b.length - a.length).slice(0, 2)) numbers.push({ level, run, isMiddle });
    }
    key(svg, panel, picture, mine, diverges);
    return () => number(svg, numbers, box, picture, taken);
}

// On its own line, off everything else, nearest the middle of the map.
function number(svg, numbers, box, picture, taken) {
    const group = put(svg, "g", { class: "numbers" });
    for (const { level, run, isMiddle } of numbers) {
        if (length(run) < 40) continue;
        const text = print(level), half = wide(text, picture.size, isMiddle ? "bold" : "") / 2 + 3;
        const away = ([x, y]) => Math.abs(x - box.x - .62 * box.width) / box.width + Math.abs(y - box.y - box.height / 2) / box.height;
        const inside = ([x, y]) => x - half > box.x + 2 && x + half < box.x + box.width - 2 && y > box.y + 10 && y < box.y + box.height - 10;
        const places = run.filter(inside).sort((a, b) => away(a) - away(b)).map(([x, y]) => [x - half, y - 9, x + half, y + 9]);
        const room = settle(places, taken);
        if (room) say(group, text, (room[0] + room[2]) / 2, room[1] + 13.5, isMiddle ? "halo strong" : "halo", "middle");
    }
}

const length = run => run.slice(1).reduce((sum, [x, y], i) => sum + Math.hypot(x - run[i][0], y - run[i][1]), 0);

const pathOf = (runs, closed = true) =>
    runs.map(run => run.map(([x, y], i) => `${i === 0 ? "M" : "L"}${round(x)} ${round(y)}`).join("") + (closed ? "Z" : "")).join("");

// What differs in meaning differs in its lines, not in its colour alone.
function patterns(svg, mine) {
    const defs = put(svg, "defs");
    const pattern = (name, side, d, turn = null) => {
        const size = { width: side, height: side, patternUnits: "userSpaceOnUse", patternTransform: turn };
        const made = put(defs, "pattern", { id: `${mine}-${name}`, ...size });
        put(made, "path", { d, class: `rule ${name}` });
    };
    pattern("warm", 6, "M0 3H6");
    pattern("hatch", 8, "M0 4H8", "rotate(-45)");
    pattern("missing", 7, "M0 3.5H7", "rotate(-45)");
    pattern("better", 9, "M4.5 2.5V6.5M2.5 4.5H6.5");
    pattern("worse", 9, "M2.5 2.5L6.5 6.5M6.5 2.5L2.5 6.5");
    pattern("neither", 6, "M0 3H6M3 0V6");
}

// The scale of shades, each band as wide as the next: all of given levels, so that maps side by side bear the same one, else those that are reached.
function key(svg, panel, picture, mine, diverges) {
    const { key: { words, entries }, cuts, extremes: [low, high] } = panel, { line } = picture, group = put(svg, "g", { class: "key" });
    let y = panel.top - panel.key.height - line * panel.heading.length - 6 + line;
    for (const text of words) { say(group, text, 0, y - 3, "strong"); y += line; }
    const isGiven = (panel.levels ?? []).length > 0;
    const bands = [...cuts.keys(), cuts.length].filter(k => isGiven || ((k === 0 || cuts[k - 1] < high) && (k === cuts.length || cuts[k] > low)));
    const full = Math.min(picture.width - 20, 640), each = bands.length > 0 ? Math.min(84, full / bands.length) : 0;
    y -= 10;
    bands.forEach((k, i) => {
        const place = { x: round(10 + i * each), y, width: round(each), height: 13 };
        put(group, "rect", place).style.fill = colour(panel.shades[k], diverges);
        if (diverges && panel.shades[k] > 0) put(group, "rect", { ...place, fill: `url(#${mine}-warm)` });
        if (i > 0) say(group, print(cuts[k - 1]), 10 + i * each, y + 27, diverges && cuts[k - 1] === panel.middle ? "strong" : "", "middle");
    });
    if (bands.length > 0) put(group, "rect", { x: 10, y, width: round(each * bands.length), height: 13, class: "frame" });
    y += 38;
    for (const { kind, words: text, x, row } of entries) {
        put(group, "rect", { x, y: y + 20 * row, width: 20, height: 13, fill: `url(#${mine}-${kind})` });
        put(group, "rect", { x, y: y + 20 * row, width: 20, height: 13, class: "frame" });
        say(group, text, x + 26, y + 11 + 20 * row);
    }
}
