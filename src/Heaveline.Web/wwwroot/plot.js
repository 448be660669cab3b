// A sheet (structure and numbers, see ChartSheet) laid out for a width: where every panel stands, its axes and what room its words need.

import { beside } from "./names.js";
import { lines } from "./lines.js";
import { wide } from "./svg.js";
import { extremes, range, scale, ticks } from "./scales.js";

const millimetre = 4.2; // pixels for a millimetre of paper: judged by eye
const line = 16; // pixels from line to line

export const heading = axis => axis.unit ? `${axis.label} (${axis.unit})` : axis.label;

/** The panels of a sheet with the numbers that belong to them. */
export function read(sheet, numbers) {
    let at = 0;
    const take = n => numbers.subarray(at, at += n);
    return sheet.panels.map(panel => {
        const grid = panel.kind === "map" && { xs: take(panel.columns), ys: take(panel.rows), values: take(panel.columns * panel.rows) };
        const ribbons = (panel.ribbons ?? []).map(one => ({ ...one, xs: take(one.n), lows: take(one.n), highs: take(one.n) }));
        const all = panel.traces.map(one => ({ ...one, xs: take(one.n), ys: take(one.n) }));
        // Borders of classes are lettered between the lines, not named at their ends.
        const curves = all.filter(one => !one.above), borders = all.filter(one => one.above);
        return { bands: [], limits: [], marks: [], notes: [], ...panel, grid, ribbons, curves, borders };
    });
}

/** Lays a sheet out; 'prepare' finds the levels of a map. */
export function lay(sheet, numbers, width, prepare) {
    const panels = read(sheet, numbers), narrow = width < 560, size = narrow ? 12 : 13;
    const shared = panels.filter(panel => panel.shared), sharedX = shared.length > 0 ? rangeX(shared) : null;
    const right = Math.max(14, beside(panels.flatMap(panel => panel.curves), narrow ? 84 : Math.max(110, .16 * width), size));
    let left = narrow ? 30 : 36;
    for (const panel of panels) {
        if (panel.grid) prepare(panel);
        panel.height = Math.round((panel.height ?? tall(panel, shared)) * millimetre * Math.min(1, Math.max(.8, width / 700)));
        panel.rangeX = panel.grid ? [panel.grid.xs[0], panel.grid.xs.at(-1)] : panel.shared ? sharedX : rangeX([panel]);
        panel.rangeY = panel.grid ? [panel.grid.ys[0], panel.grid.ys.at(-1)] : rangeY(panel);
        panel.ticksY = ticks(panel.y.log, ...panel.rangeY, Math.max(3, Math.floor(panel.height / 25)));
        for (const { text } of panel.ticksY.main) left = Math.max(left, Math.ceil(wide(text, size)) + 12);
    }
    // A page that is not yet laid out may give a chart hardly any width: it is drawn anew when it is.
    const labelled = sheet.bands.some(band => band.label) && shared.length > 0, end = Math.max(left + 20, width - right);
    let top = 4;
    const last = panels.findLastIndex(panel => panel.shared);
    panels.forEach((panel, i) => {
        if (labelled && panel === shared[0]) top += line;
        panel.heading = lines(panel.title ? `${panel.title}: ${heading(panel.y)}` : heading(panel.y), width - 8, words => wide(words, size, "bold"));
        panel.key = panel.kind === "map" ? keyOf(panel, width, size) : { height: 0 };
        panel.top = top + panel.key.height + line * panel.heading.length + 6;
        panel.bottom = panel.top + panel.height;
        panel.x = { ...panel.x, scale: scale(panel.x.log, ...panel.rangeX, left, end) };
        panel.y = { ...panel.y, scale: scale(panel.y.log, ...panel.rangeY, panel.bottom, panel.top) };
        panel.isFoot = !panel.shared || i === last;
        panel.ticksX = ticks(panel.x.log, ...panel.rangeX, Math.max(3, Math.floor((end - left) / 58)));
        panel.footing = panel.isFoot ? lines(heading(panel.x), width - left, words => wide(words, size)) : [];
        top = panel.bottom + (panel.isFoot ? 26 + line * panel.footing.length : 6) + 8;
    });
    return { sheet, panels, groups: groups(panels), width, height: top, left, right: end, narrow, size, line, labelled };
}

// Millimetres of paper where the figure says none: the first of several panels is what it is about, decades on both axes ask for height.
function tall(panel, shared) {
    return panel.kind === "map" ? 92 : panel.x.log && panel.y.log ? 70 : panel === shared[0] && shared.length > 1 ? 44 : panel.y.log ? 44 : 32;
}

// Panels that are read at one place: those on the shared axis together, every other alone.
function groups(panels) {
    const shared = panels.filter(panel => panel.shared), list = [];
    for (const panel of panels) {
        if (!panel.shared) list.push([panel]);
        else if (panel === shared[0]) list.push(shared);
    }
    return list;
}

function rangeX(panels) {
    const own = panels.flatMap(panel => [...panel.curves.map(curve => curve.xs), ...panel.ribbons.map(ribbon => ribbon.xs)]);
    const marks = panels.flatMap(panel => panel.marks.map(mark => mark.x));
    return range(panels[0].x, extremes(...own, marks), marks.length > 0 && own.every(xs => xs.length <= 2) ? .04 : 0);
}

function rangeY(panel) {
    const usable = values => panel.y.log ? values.filter(value => value > 0) : values;
    return range(panel.y, extremes(
        ...[...panel.curves, ...panel.borders].map(curve => usable(curve.ys)),
        ...panel.ribbons.flatMap(ribbon => [usable(ribbon.lows), usable(ribbon.highs)]),
        usable(panel.marks.map(mark => mark.y))), .06);
}

/** The pattern of a zone. */
export const zoneKind = isBetter => isBetter === true ? "better" : isBetter === false ? "worse" : "neither";

// Over a map stand the heading of its shades, the shades with their levels, and what is hatched, in as many lines as the width asks for.
function keyOf(panel, width, size) {
    const entries = [];
    if (panel.hatch) entries.push({ kind: "hatch", words: panel.hatch.label });
    for (const { isBetter, label } of panel.zones ?? []) entries.push({ kind: zoneKind(isBetter), words: label });
    if (panel.missing) entries.push({ kind: "missing", words: "not computed" });
    let x = 0, row = 0;
    for (const entry of entries) {
        const room = 26 + wide(entry.words, size) + 18;
        if (x > 0 && x + room > width) { x = 0; row++; }
        Object.assign(entry, { x, row });
        x += room;
    }
    const words = lines(heading(panel.value), width - 8, text => wide(text, size, "bold"));
    const rows = entries.length > 0 ? row + 1 : 0;
    return { entries, words, height: line * words.length + 20 + 18 + rows * 20 + 10 };
}
