// Map panels of a chart: bands between levels, contour lines, hatching, as the printed figures have them.
// Values between the grid's places run straight.

import { lines } from "./lines.js";

// Levels in steps of 1, 2 or 5 times a power of ten, counted from the middle.
export function levelsOf(low, high, middle, most = 10) {
    const rough = (high - low) / most;
    if (!(rough > 0)) return { from: low, to: high, step: 1, values: [] };
    const power = 10 ** Math.floor(Math.log10(rough));
    const step = [1, 2, 5, 10].map(k => k * power).find(s => s >= rough * .999);
    const zero = middle ?? 0;
    const first = Math.ceil((low - zero) / step + 1e-9), last = Math.floor((high - zero) / step - 1e-9);
    const values = [];
    for (let k = first; k <= last; k++) values.push(Number((zero + k * step).toPrecision(12)));
    return { from: values[0] ?? low, to: values.at(-1) ?? high, step, values };
}

/** Least and greatest of some numbers, those that are none left out. */
export function extremes(values) {
    let low = Infinity, high = -Infinity;
    for (const value of values) {
        if (value < low) low = value;
        if (value > high) high = value;
    }
    return [low, high];
}

// Whether given levels are a scale of their own, not even steps.
const uneven = levels => levels.length > 1 && levels.slice(2)
    .some((level, i) => Math.abs(level - 2 * levels[i + 1] + levels[i]) >= 1e-9 * Math.abs(level));

/** Where a value lies among given levels: 0 at the first, 1 at the second, straight between them and on past the ends. */
export function rank(levels, value) {
    let i = 0;
    while (i < levels.length - 2 && levels[i + 1] <= value) i++;
    return i + (value - levels[i]) / (levels[i + 1] - levels[i]);
}

// Slanting lines over the places whose value lies in a range; 45°, eight pixels apart.
function hatch(xs, ys, z, hatched, size) {
    const between = (places, at) => {
        let i = 0;
        while (i < places.length - 2 && places[i + 1] <= at) i++;
        return [i, (at - places[i]) / (places[i + 1] - places[i])];
    };
    const value = (x, y) => {
        const [i, u] = between(xs, x), [j, v] = between(ys, y);
        return (z[j][i] * (1 - u) + z[j][i + 1] * u) * (1 - v) + (z[j + 1][i] * (1 - u) + z[j + 1][i + 1] * u) * v;
    };
    const width = xs.at(-1) - xs[0], height = ys.at(-1) - ys[0];
    const lineX = [], lineY = [], ratio = size.width / size.height, apart = 8 / size.width, step = 1 / size.height;
    for (let c = -1 / ratio; c < 1; c += apart) {
        let open = null, last = null;
        for (let t = 0; t <= 1 + step; t += step) {
            const share = c + t / ratio;
            const inside = t <= 1 && share >= 0 && share <= 1 && (() => {
                const v = value(xs[0] + share * width, ys[0] + t * height);
                return v >= hatched.from && v <= hatched.to;
            })();
            if (inside) {
                last = [xs[0] + share * width, ys[0] + t * height];
                open ??= last;
            } else if (open) {
                if (last !== open) { lineX.push(open[0], last[0], null); lineY.push(open[1], last[1], null); }
                open = null;
            }
        }
    }
    return { x: lineX, y: lineY };
}

// The traces of a map: shades first, then lines below, on and above the middle, then hatching.
export function mapTraces(panel, xs, ys, flat, ink, axes, size, heading) {
    xs = Array.from(xs); ys = Array.from(ys);
    const columns = xs.length, z = Array.from({ length: ys.length }, (_, row) => Array.from(flat.subarray(row * columns, (row + 1) * columns)));
    const given = panel.levels ?? [];
    let [low, high] = extremes(flat);
    if (!(high > low)) { low = Number.isFinite(low) ? low - .5 : 0; high = low + 1; }
    // Levels that are a scale of their own, ratios for instance, are shaded by their place in it: each band as deep as the next.
    const own = uneven(given), inner = own ? v => rank(given, v) : v => v;
    [low, high] = [inner(low), inner(high)];
    const middle = panel.middle === null || panel.middle === undefined ? null : inner(panel.middle);
    const levels = own
        ? { from: 0, to: given.length - 1, step: 1, values: given.map((_, i) => i).filter(i => i > low && i < high), shown: i => given[i] }
        : given.length > 1
            ? { from: given[0], to: given.at(-1), step: given[1] - given[0], values: given }
            : levelsOf(low, high, middle);
    // Both sides of the middle are shaded to the same depth for the same distance: the scale of shades runs as far below it as above.
    const steps = middle === null ? 0 : Math.max(1, Math.ceil(Math.max(high - middle, middle - low) / levels.step - 1e-9));
    const scale = middle === null
        ? { start: levels.from, end: levels.to, colours: [[0, ink.mapMiddle], [1, ink.mapCool]] }
        : {
            start: middle - steps * levels.step, end: middle + steps * levels.step,
            colours: [[0, ink.mapCool], [.5, ink.mapMiddle], [1, ink.mapWarm]],
        };
    const word = v => !panel.hatch ? "" : v < panel.hatch.from ? "better" : v > panel.hatch.to ? "worse" : panel.hatch.label;
    const words = own || panel.hatch
        ? z.map(row => row.map(v => Number.isNaN(v) ? ""
            : [...(own ? [`${panel.value.label} ${Number(v.toPrecision(3))} ${panel.value.unit}`.trim()] : []), ...(panel.hatch ? [word(v)] : [])]
                .join("<br>")))
        : undefined;
    const hover = [
        `${panel.x.label} %{x:.3g} ${panel.x.unit}`,
        `${panel.y.label} %{y:.3g} ${panel.y.unit}`,
        ...(own ? [] : [`${panel.value.label} %{z:.3g} ${panel.value.unit}`]),
        ...(words ? ["%{text}"] : []),
    ].map(line => line.trim()).join("<br>");
    const shared = { type: "contour", x: xs, y: ys, z, xaxis: axes.x, yaxis: axes.y, autocontour: false, connectgaps: false };
    const shades = {
        ...shared, z: own ? z.map(row => row.map(inner)) : z, text: words, hovertemplate: hover + "<extra></extra>", zauto: false,
        zmin: scale.start - levels.step, zmax: scale.end + levels.step, colorscale: scale.colours, showscale: false,
        contours: {
            coloring: levels.values.length > 0 ? "fill" : "heatmap", showlines: false,
            start: scale.start, end: scale.end, size: levels.step,
        },
        line: { smoothing: 0, width: 0 },
    };
    const line = (contours, style) => ({
        ...shared, hoverinfo: "skip", showscale: false, showlegend: false,
        contours: { coloring: "none", showlabels: true, labelfont: { color: ink.text, size: 11 }, ...contours },
        line: { color: ink.mapLine, smoothing: 0, ...style },
    });
    const contours = (values, style) => values.length === 0 ? []
        : own ? values.map(i => line({ type: "constraint", operation: "=", value: given[i] }, style))
            : [line({ start: values[0], end: values.at(-1), size: levels.step }, style)];
    const on = middle === null ? () => false : v => Math.abs(v - middle) < 1e-9 * Math.max(1, Math.abs(v));
    const data = [
        shades,
        ...contours(levels.values.filter(v => middle !== null && v < middle && !on(v)), { width: .7, dash: "dash" }),
        ...contours(levels.values.filter(v => (middle === null || v > middle) && !on(v)), { width: .7 }),
        ...contours(levels.values.filter(on), { width: 1.8 }),
    ];
    if (panel.hatch) {
        data.push({
            type: "scatter", mode: "lines", ...hatch(xs, ys, z, panel.hatch, size), xaxis: axes.x, yaxis: axes.y,
            hoverinfo: "skip", showlegend: false, line: { color: ink.mapHatch, width: .6 }, connectgaps: false,
        });
    }
    return { data, ...bar(panel, low, high, levels, scale, ink, axes, heading, inner) };
}

// The scale of shades: a strip above the map, as far as the map's own values reach.
function bar(panel, low, high, levels, scale, ink, axes, heading, inner) {
    const at = value => (value - low) / (high - low) * .92 + .04;
    const place = { xref: axes.x + " domain", yref: axes.y + " domain", ysizemode: "pixel", yanchor: 1 };
    const edges = [low, ...levels.values, high];
    const shapes = edges.slice(1).map((to, i) => ({
        type: "rect", ...place, x0: at(edges[i]), x1: at(to), y0: BAR.low, y1: BAR.high, line: { width: 0 },
        fillcolor: shadeOf((edges[i] + to) / 2, i, edges.length - 2, levels, scale),
    }));
    shapes.push({
        type: "rect", ...place, x0: at(low), x1: at(high), y0: BAR.low, y1: BAR.high,
        line: { color: ink.mapLine, width: .8 }, fillcolor: "rgba(0,0,0,0)",
    });
    const hatched = panel.hatch && [inner(panel.hatch.from), inner(panel.hatch.to)];
    if (hatched && hatched[0] < high && hatched[1] > low) {
        shapes.push({
            type: "rect", ...place, x0: at(Math.max(low, hatched[0])), x1: at(Math.min(high, hatched[1])), y0: BAR.low, y1: BAR.high,
            line: { color: ink.mapHatch, width: .8, dash: "dot" }, fillcolor: "rgba(0,0,0,0)",
        });
    }
    const text = { xref: place.xref, yref: place.yref, y: 1, showarrow: false, captureevents: false, font: { size: 11.5, color: ink.text } };
    const every = levels.values.length > 9 ? 2 : 1;
    const middle = Math.max(0, levels.values.findIndex(v => Math.abs(v - (scale.start + scale.end) / 2) < 1e-9));
    const notes = levels.values.filter((_, i) => (i - middle) % every === 0)
        .map(v => ({ ...text, text: String(levels.shown ? levels.shown(v) : v), x: at(v), xanchor: "center", yanchor: "top", yshift: BAR.low }));
    notes.push({
        ...text, text: heading(panel.value), x: 0, xanchor: "left", yanchor: "bottom", yshift: BAR.high + 1,
        font: { size: 12.5, color: ink.text },
    });
    return { shapes, notes };
}

// Pixels above the map's upper edge.
const BAR = { low: 38, high: 50 };

/** Room over a map for its scale and the heading of its upright axis, millimetres of paper. */
export const mapRoom = 24;

// The shade that the map gives a band between two levels: that of its middle, the scale taken half a step past the first and the last level.
function shadeOf(value, band, last, levels, scale) {
    const middle = band === 0 ? levels.values[0] - levels.step / 2 : band === last ? levels.values[band - 1] + levels.step / 2 : value;
    const from = scale.start - levels.step / 2, to = scale.end + levels.step / 2;
    const share = Math.min(1, Math.max(0, ((levels.values.length > 0 ? middle : value) - from) / (to - from)));
    const stop = scale.colours.findLastIndex(([at]) => at <= share), next = Math.min(stop + 1, scale.colours.length - 1);
    if (next === stop) return scale.colours[stop][1];
    return mixed(
        scale.colours[stop][1], scale.colours[next][1],
        (share - scale.colours[stop][0]) / (scale.colours[next][0] - scale.colours[stop][0]));
}

function mixed(one, other, share) {
    const [a, b] = [one, other].map(hex => parseInt(hex.slice(1), 16));
    return `rgb(${[16, 8, 0].map(bits => Math.round(((a >> bits) & 255) * (1 - share) + ((b >> bits) & 255) * share)).join(",")})`;
}

// Names beside a narrow map are broken into lines of about so many letters.
const narrowLine = 11;

/** A name as it stands beside a map. */
export function nameLines(name, narrow) {
    return narrow ? lines(name, narrowLine, words => words.length) : [name];
}

/** Room to the right of a map for the names of its lines, pixels. */
export function nameRoom(panels, narrow) {
    const names = panels.flatMap(panel => panel.traces.flatMap(trace => nameLines(trace.name ?? "", narrow)));
    const longest = Math.max(0, ...names.map(line => line.length));
    return 14 + 6.6 * longest;
}

/** Moves the names at the ends of curves apart where they would cover one another, each as little as it can. */
export function spreadNames(notes, axis, ys, height) {
    const names = notes.filter(note => note.yref === axis && note.xshift === 6).map(note => ({
        note, at: (note.y - ys[0]) / (ys.at(-1) - ys[0]) * height, tall: 15 * note.text.split("<br>").length,
    }));
    names.sort((a, b) => a.at - b.at || a.tall - b.tall);
    // Groups that touch are set about the middle of their places, and joined with the next as long as that one is touched too.
    const groups = [];
    for (const name of names) {
        let group = { names: [name], tall: name.tall, middle: name.at };
        while (groups.length > 0 && groups.at(-1).middle + groups.at(-1).tall / 2 > group.middle - group.tall / 2) {
            const below = groups.pop(), all = [...below.names, ...group.names];
            group = { names: all, tall: below.tall + group.tall, middle: all.reduce((sum, n) => sum + n.at, 0) / all.length };
        }
        groups.push(group);
    }
    for (const group of groups) {
        let low = group.middle - group.tall / 2;
        for (const name of group.names) {
            name.note.yshift = low + name.tall / 2 - name.at;
            low += name.tall;
        }
    }
}
