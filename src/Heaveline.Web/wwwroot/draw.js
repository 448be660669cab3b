// A picture that is laid out (see plot.js) as SVG: axes, spans, curves, points and words. Colours come by class from the style sheet, so that light,
// dark and forced colours need no second drawing.

import { drawMap } from "./map.js";
import { settle, spread } from "./names.js";
import { put, round, say, way, wide } from "./svg.js";

const dashes = { Solid: null, Dashed: "7 4", Dotted: "1.5 3.5", DashDot: "8 3 1.5 3" };
const most = 1600; // points of a curve that are drawn, at most

export const inked = ink => `ink-${ink.toLowerCase()}`;

/** Draws a picture into an empty element. */
export function draw(svg, picture) {
    put(svg, "defs");
    bands(svg, picture);
    picture.panels.forEach((panel, i) => {
        const { x: { scale: x }, y: { scale: y } } = panel;
        const group = put(svg, "g", { class: "panel", "data-panel": i });
        Object.assign(group.dataset, { xFrom: x.low, xTo: x.high, yFrom: y.low, yTo: y.high });
        panel.taken = [];
        const numbers = panel.kind === "map" ? drawMap(group, panel, picture, panel.taken) : null;
        axes(group, panel, picture);
        classes(group, panel);
        ribbons(group, panel);
        curves(group, panel, picture);
        limits(group, panel, picture);
        marks(group, panel, picture);
        names(group, panel, picture);
        for (const { letter, x, y } of panel.letters) say(group, letter, x, y + 4.5, "quiet strong halo", "middle");
        for (const note of panel.notes) say(group, note.text, panel.x.scale.at(note.x), panel.y.scale.at(note.y) + 4, "quiet halo");
        numbers?.();
    });
}

// Spans shaded over the panels that share an axis, named over the first of them; those of a panel alone are named inside it.
function bands(svg, picture) {
    const shared = picture.panels.filter(panel => panel.shared), { size } = picture;
    let labelled = -Infinity;
    for (const band of shared.length > 0 ? picture.sheet.bands : []) {
        for (const panel of shared) shade(svg, panel, band);
        if (!band.label) continue;
        const [x0, x1] = [band.from, band.to].map(shared[0].x.scale.at), half = wide(band.label, size) / 2;
        const middle = Math.min(picture.width - half - 2, Math.max((x0 + x1) / 2, labelled + half + 10, half + 2));
        say(svg, band.label, middle, shared[0].top - picture.line * shared[0].heading.length - 10, "quiet", "middle");
        labelled = middle + half;
    }
    for (const panel of picture.panels) for (const band of panel.bands) {
        shade(svg, panel, band);
        const [x0, x1] = [band.from, band.to].map(panel.x.scale.at);
        if (band.label && x1 - x0 > wide(band.label, size) + 4) say(svg, band.label, (x0 + x1) / 2, panel.bottom - 7, "quiet halo", "middle");
    }
}

function shade(svg, panel, band) {
    const { scale } = panel.x, x0 = Math.max(scale.from, scale.at(Math.max(band.from, scale.low))), x1 = Math.min(scale.to, scale.at(band.to));
    const box = { x: round(x0), y: panel.top, width: round(x1 - x0), height: panel.height, class: band.shade === "Grey" ? "shaded deep" : "shaded" };
    if (x1 > x0) put(svg, "rect", box);
}

function axes(svg, panel, picture) {
    const { left, right, line } = picture, x = panel.x.scale, y = panel.y.scale, grid = put(svg, "g", { class: "grid" });
    const isMap = panel.kind === "map";
    panel.heading.forEach((words, k) => say(svg, words, 0, panel.top - 8 - line * (panel.heading.length - 1 - k), "strong"));
    for (const at of panel.ticksY.fine) put(grid, "path", { d: `M${left - 3} ${round(y.at(at))}H${left}`, class: "mark" });
    for (const { at, text } of panel.ticksY.main) {
        const place = round(y.at(at));
        if (!isMap) put(grid, "path", { d: `M${left} ${place}H${right}`, class: at === 0 ? "zero" : null });
        put(grid, "path", { d: `M${left - 5} ${place}H${left}`, class: "mark" });
        say(svg, text, left - 8, place + 4.5, "tick y", "end");
    }
    for (const at of panel.ticksX.fine) put(grid, "path", { d: `M${round(x.at(at))} ${panel.bottom}v3`, class: "mark" });
    for (const { at, text } of panel.ticksX.main) {
        const place = round(x.at(at));
        if (!isMap) put(grid, "path", { d: `M${place} ${panel.top}V${panel.bottom}` });
        put(grid, "path", { d: `M${place} ${panel.bottom}v5`, class: "mark" });
        const half = wide(text, picture.size) / 2;
        if (panel.isFoot) say(svg, text, Math.min(picture.width - half - 1, Math.max(half + 1, place)), panel.bottom + 19, "tick x", "middle");
    }
    put(svg, "rect", { x: left, y: panel.top, width: round(right - left), height: panel.height, class: "frame" });
    panel.footing.forEach((words, k) => say(svg, words, left, panel.bottom + 37 + line * k));
}

// Classes that border on one another: every second one shaded, each with its letter where it is widest open to the left.
function classes(svg, panel) {
    panel.letters = [];
    if (panel.borders.length === 0) return;
    const x = panel.x.scale, y = panel.y.scale, inside = value => Math.min(panel.bottom, Math.max(panel.top, y.at(value)));
    const borders = panel.borders.map(({ xs, ys, above, below }) => ({ xs: Array.from(xs, x.at), ys: Array.from(ys, inside), above, below }))
        .sort((a, b) => b.ys[0] - a.ys[0]);
    const flat = at => ({ xs: borders[0].xs, ys: borders[0].xs.map(() => at) });
    const lines = [flat(panel.bottom), ...borders, flat(panel.top)], letters = [borders[0].below, ...borders.map(border => border.above)];
    letters.forEach((letter, k) => {
        const [low, high] = [lines[k], lines[k + 1]];
        const d = way([...low.xs, ...[...high.xs].reverse()], [...low.ys, ...[...high.ys].reverse()], true);
        if (k % 2 === 0) put(svg, "path", { d, class: "shaded" });
        const share = .03, at = line => (1 - share) * line.ys[0] + share * line.ys.at(-1);
        if (at(low) - at(high) > 13) panel.letters.push({ letter, x: low.xs[0] + share * (low.xs.at(-1) - low.xs[0]), y: (at(low) + at(high)) / 2 });
    });
    for (const border of borders) put(svg, "path", { d: way(border.xs, border.ys), class: "limit" });
}

function ribbons(svg, panel) {
    const x = panel.x.scale, y = panel.y.scale, inside = value => Math.min(panel.bottom, Math.max(panel.top, y.at(value)));
    for (const { xs, lows, highs, ink } of panel.ribbons) {
        const along = [...Array.from(xs, x.at), ...Array.from(xs, x.at).reverse()];
        const heights = [...Array.from(lows, inside), ...Array.from(highs, inside).reverse()];
        put(svg, "path", { d: way(along, heights, true), class: `ribbon ${inked(ink)}` });
    }
}

function curves(svg, panel, picture) {
    const clip = `clip-${Math.random().toString(36).slice(2)}`, group = put(svg, "g", { "clip-path": `url(#${clip})`, class: "curves" });
    const box = { x: picture.left, y: panel.top - 1, width: round(picture.right - picture.left), height: panel.height + 2 };
    put(put(put(svg, "defs"), "clipPath", { id: clip }), "rect", box);
    for (const curve of panel.curves) {
        const [xs, ys] = thinned(Array.from(curve.xs, panel.x.scale.at), Array.from(curve.ys, panel.y.scale.at));
        const width = round(1.6 * curve.width);
        const line = { d: way(xs, ys), class: `curve ${inked(curve.ink)}`, "stroke-width": width, "stroke-dasharray": dashes[curve.dash] };
        // Over shades a curve has an edge of its own, so that it is seen on all of them.
        if (panel.kind === "map") put(group, "path", { d: line.d, class: "under", "stroke-width": round(width + 2.4) });
        put(group, "path", line);
    }
}

// Of a long curve the first, least, greatest and last of each small stretch: no peak is lost.
function thinned(xs, ys) {
    if (xs.length <= most) return [xs, ys];
    const each = Math.ceil(4 * xs.length / most), keptX = [], keptY = [];
    for (let from = 0; from < xs.length; from += each) {
        const to = Math.min(xs.length, from + each);
        let low = from, high = from, gap = -1;
        for (let i = from; i < to; i++) {
            if (!Number.isFinite(ys[i])) gap = i;
            if (ys[i] < ys[low] || !Number.isFinite(ys[low])) low = i;
            if (ys[i] > ys[high] || !Number.isFinite(ys[high])) high = i;
        }
        for (const i of [...new Set([from, low, high, ...(gap < 0 ? [] : [gap]), to - 1])].sort((a, b) => a - b)) {
            keptX.push(xs[i]);
            keptY.push(ys[i]);
        }
    }
    return [keptX, keptY];
}

function limits(svg, panel, picture) {
    const { left, right, size } = picture, x = panel.x.scale, y = panel.y.scale;
    for (const limit of panel.limits) {
        const at = round((limit.upright ? x : y).at(limit.at)), room = wide(limit.label, size);
        if (limit.upright ? at < left - 1 || at > right + 1 : at < panel.top - 1 || at > panel.bottom + 1) continue;
        put(svg, "path", { d: limit.upright ? `M${at} ${panel.top}V${panel.bottom}` : `M${left} ${at}H${right}`, class: "limit" });
        const places = [];
        if (limit.upright) {
            const start = at + 4 + room <= right ? at + 4 : at - 4 - room;
            for (let row = 0; row < 6; row++) places.push([start, panel.top + 2 + 15 * row, start + room, panel.top + 17 + 15 * row]);
        } else {
            for (const end of [right - 4, right - 134, right - 264]) for (const top of [at - 16, at + 1]) {
                if (top >= panel.top && top + 15 <= panel.bottom) places.push([end - room, top, end, top + 15]);
            }
        }
        const place = settle(places, panel.taken);
        if (place) say(svg, limit.label, place[0], place[1] + 12, "quiet halo");
    }
}

function marks(svg, panel, picture) {
    const x = panel.x.scale, y = panel.y.scale, { size } = picture, set = panel.marks.map(mark => ({ ...mark, px: x.at(mark.x), py: y.at(mark.y) }));
    for (const { px, py } of set) panel.taken.push([px - 6, py - 6, px + 6, py + 6]);
    for (const mark of set) {
        const { px, py } = mark, group = put(svg, "g", { class: `mark-at ${inked(mark.ink)}${mark.isHere ? " here" : ""}` });
        // How far a value may lie off: a bar up and down.
        if (mark.low !== null && mark.low !== undefined) {
            const top = Math.max(panel.top, y.at(mark.high)), bottom = Math.min(panel.bottom, y.at(mark.low));
            put(group, "rect", { x: round(px - 4), y: round(top), width: 8, height: round(Math.max(1, bottom - top)), class: "doubt" });
        }
        symbol(group, mark.symbol, round(px), round(py), mark.isHere ? 7 : 4.5);
        if (!mark.label) continue;
        const room = wide(mark.label, size, mark.isHere ? "bold" : "") + 2, side = [[px + 11, py - 8], [px - 11 - room, py - 8]];
        const over = [[px - room / 2, py - 23], [px - room / 2, py + 8]];
        const aslant = [[px + 11, py - 24], [px + 11, py + 8], [px - 11 - room, py - 24], [px - 11 - room, py + 8]];
        const fits = ([left, top]) =>
            left >= picture.left - 2 && left + room <= picture.width && top >= panel.top - 12 && top + 16 <= panel.bottom + 4;
        const places = [...(panel.kind === "map" ? [...side, ...over] : [...over, ...side]), ...aslant].filter(fits)
            .map(([left, top]) => [left, top, left + room, top + 16]);
        const place = settle(places, panel.taken);
        if (place) say(group, mark.label, place[0], place[1] + 12.5, mark.isHere ? "halo strong" : "halo");
    }
}

// Shapes differ, so that no colour is needed to tell them apart.
export function symbol(svg, kind, x, y, r) {
    const s = .9 * r;
    if (kind === "Dot" || kind === "Ring") return put(svg, "circle", { cx: x, cy: y, r, class: kind === "Dot" ? "full" : "open" });
    const d = {
        Square: `M${x - s} ${y - s}h${2 * s}v${2 * s}h${-2 * s}Z`, Triangle: `M${x} ${y - 1.2 * s}L${x + 1.1 * s} ${y + .8 * s}H${x - 1.1 * s}Z`,
        Diamond: `M${x} ${y - 1.3 * s}L${x + 1.3 * s} ${y}L${x} ${y + 1.3 * s}L${x - 1.3 * s} ${y}Z`,
        Cross: `M${x - s} ${y - s}l${2 * s} ${2 * s}m0 ${-2 * s}l${-2 * s} ${2 * s}`,
    }[kind];
    return put(svg, "path", { d, class: kind === "Diamond" || kind === "Cross" ? "open" : "full" });
}

function names(svg, panel, picture) {
    const { right, line, sheet } = picture, named = [];
    for (const curve of panel.curves) {
        if (curve.words.length === 0) continue;
        let last = curve.ys.length - 1;
        while (last > 0 && !Number.isFinite(curve.ys[last])) last--;
        const at = Math.min(panel.bottom, Math.max(panel.top, panel.y.scale.at(curve.ys[last])));
        if (Number.isFinite(at)) named.push({ curve, at, tall: (line - 1) * curve.words.length });
    }
    spread(named, panel.top - 6, panel.bottom + 6 + (sheet.panels.length === 1 ? 8 : 0));
    for (const { curve, y, tall } of named) {
        curve.words.forEach((words, k) => say(svg, words, right + 7, y - tall / 2 + (line - 1) * (k + .8), `name ${inked(curve.ink)}`));
    }
}
