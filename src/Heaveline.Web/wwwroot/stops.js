// The places of a group of panels that can be read, and what is said of them.

import { place as where, reading as digits } from "./scales.js";

/** Finds the places of a group: the nodes of a map, the points of curves on one axis, or else single marks. */
export function stopsOf(group) {
    const [first] = group;
    if (first.grid) {
        group.stops = Object.assign([...first.grid.xs], { grid: true, xs: Array.from(first.grid.xs), ys: Array.from(first.grid.ys) });
        return;
    }
    const { low, high } = first.x.scale, inside = x => x >= low && x <= high;
    for (const panel of group) panel.read = panel.curves.filter(curve => curve.xs.length > 2);
    const places = new Set();
    for (const panel of group) for (const { xs, ys } of panel.read) xs.forEach((x, k) => { if (inside(x) && Number.isFinite(ys[k])) places.add(x); });
    group.stops = places.size > 0
        ? [...places].sort((a, b) => a - b).map(x => ({ x, y: NaN }))
        : group.flatMap(panel => panel.marks.map(mark => ({ x: mark.x, y: mark.y, mark, panel }))).sort((a, b) => a.x - b.x || a.y - b.y);
}

const closest = (values, value) => {
    let low = 0, high = values.length - 1;
    while (high - low > 1) {
        const middle = (low + high) >> 1;
        if (values[middle] <= value) low = middle; else high = middle;
    }
    return value - values[low] <= values[high] - value ? low : high;
};

/** The place nearest to a value along x, and of a map or of marks also up; px and py, where they are known, are the same in pixels. */
export function nearest(group, x, y, px = null, py = null) {
    const { stops } = group;
    if (stops.grid) return { i: closest(stops.xs, x), j: closest(stops.ys, y) };
    if (px !== null && stops[0]?.mark) {
        const far = ({ panel, x: a, y: b }) => Math.hypot(panel.x.scale.at(a) - px, panel.y.scale.at(b) - py);
        return { i: stops.reduce((best, stop, k) => far(stop) < far(stops[best]) ? k : best, 0) };
    }
    // On a logarithmic axis the middle between two points is that of their logarithms.
    const inner = group[0].x.scale.isLog ? Math.log10 : value => value;
    return { i: Math.max(0, closest(stops.map(stop => inner(stop.x)), inner(x))) };
}

/** The value of a curve at a place, straight between its points; NaN beside them. */
export function valueAt({ xs, ys }, x) {
    if (!(x >= xs[0] && x <= xs.at(-1))) return NaN;
    const k = closest(xs, x), i = xs[k] <= x ? Math.min(k, xs.length - 2) : k - 1;
    if (xs[k] === x) return ys[k];
    return ys[i] + (x - xs[i]) / (xs[i + 1] - xs[i]) * (ys[i + 1] - ys[i]);
}

const united = (number, unit) => unit ? `${number} ${unit}` : number;

const change = (from, to) => `${to >= from ? "+" : ""}${digits(to - from)}`;

/** The values of a group at a place: of each panel its curves, or the mark itself. */
export function valuesAt(group, i) {
    const stop = group.stops[i];
    if (stop.mark) return [{ panel: stop.panel, curve: { name: stop.mark.label, ink: stop.mark.ink }, value: stop.mark.y }];
    return group.flatMap(panel => panel.read.map(curve => ({ panel, curve, value: valueAt(curve, stop.x) })))
        .filter(one => Number.isFinite(one.value));
}

/** What is read off a chart, in words. */
export function chartWords(group, at, anchor) {
    const { x } = group[0], here = group.stops[at.i], of = values => {
        const panels = [...new Set(values.map(one => one.panel))];
        const named = ({ panel, curve }) => curve.name && curve.name !== panel.y.label ? `${curve.name} ` : "";
        return panels.map(panel => {
            const mine = values.filter(one => one.panel === panel);
            return `${panel.title || panel.y.label}${mine.some(named) ? ":" : ""} `
                + mine.map(one => named(one) + united(one.text, panel.y.unit)).join(", ");
        }).join("; ");
    };
    if (!anchor) {
        return `${x.label} ${united(where(here.x), x.unit)}: ${of(valuesAt(group, at.i).map(one => ({ ...one, text: digits(one.value) })))}.`;
    }
    const there = group.stops[anchor.i], before = valuesAt(group, anchor.i), after = valuesAt(group, at.i);
    const both = after.flatMap(one => {
        const former = here.mark ? before[0] : before.find(other => other.curve === one.curve);
        return former && former.panel === one.panel ? [{ ...one, text: change(former.value, one.value) }] : [];
    });
    return `Measured from ${x.label} ${where(there.x)} to ${united(where(here.x), x.unit)}, `
        + `${united(where(Math.abs(here.x - there.x)), x.unit)} apart: ${of(both)}.`;
}

/** The value of a map at a node. */
export const nodeAt = ({ grid }, { i, j }) => grid.values[j * grid.xs.length + i];

/** The value of a node, or why there is none, in few words. */
export function nodeShort(panel, at) {
    const value = nodeAt(panel, at), node = at.j * panel.grid.xs.length + at.i;
    return Number.isNaN(value) ? panel.zoned.find(zone => zone.inside[node])?.label ?? "not computed" : united(digits(value), panel.value.unit);
}

/** What stands at a node of a map: its value and what that means, or why there is none. */
export function nodeWords(panel, at) {
    const value = nodeAt(panel, at);
    if (Number.isNaN(value)) return nodeShort(panel, at);
    const verdict = !panel.hatch ? "" : value < panel.hatch.from ? ", better" : value > panel.hatch.to ? ", worse" : `, ${panel.hatch.label}`;
    return `${nodeShort(panel, at)} ${panel.value.label}${verdict}`;
}

/** How a place of a map stands against the car's own value at the same speed, in per cent; null where either has none. */
export function against(panel, at) {
    if (panel.own === null || panel.own === undefined) return null;
    const { ys } = panel.grid, k = closest(ys, panel.own), j = Math.max(0, Math.min(ys.length - 2, ys[k] <= panel.own ? k : k - 1));
    const share = (panel.own - ys[j]) / (ys[j + 1] - ys[j]), low = nodeAt(panel, { i: at.i, j }), high = nodeAt(panel, { i: at.i, j: j + 1 });
    const own = share === 0 ? low : share === 1 ? high : low + share * (high - low), here = nodeAt(panel, at);
    return share < 0 || share > 1 || !(own > 0) || Number.isNaN(here) ? null : 100 * (here / own - 1);
}

export const percent = share => `${share < -.5 ? "−" : share > .5 ? "+" : ""}${Math.abs(share).toFixed(0)} %`;

/** What is read off a map, in words. */
export function mapWords([panel], at, anchor) {
    const { x, y, grid } = panel;
    const place = one => `${x.label} ${united(where(grid.xs[one.i]), x.unit)}, ${y.label} ${united(where(grid.ys[one.j]), y.unit)}`;
    if (anchor) {
        const from = nodeAt(panel, anchor), to = nodeAt(panel, at);
        return `Measured from ${place(anchor)} to ${place(at)}: ${nodeWords(panel, anchor)}, then ${nodeWords(panel, at)}`
            + (from > 0 && to > 0 ? `; ${percent(100 * (to / from - 1))}.` : ".");
    }
    const share = against(panel, at);
    return `${place(at)}: ${nodeWords(panel, at)}` + (share === null ? "." : `; ${percent(share)} against this car's own ${where(panel.own)}.`);
}
